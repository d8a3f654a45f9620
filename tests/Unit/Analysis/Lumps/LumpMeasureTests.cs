using System.Collections.Immutable;
using HealthNotes.Analysis;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Lumps;

namespace HealthNotes.Tests.Analysis.Lumps;

/// <summary>Volumes, doubling times, changes and lives, compared with published worked examples.</summary>
public class LumpMeasureTests
{
    private const string Head = "pet Marlow\nspecies dog\nborn 2017-03\n";

    /// <summary>Standard geometry: pi/6 x 10 x 8 x 6 = 251.3 mm³; a ball of 10 mm is pi/6 x 1000 = 523.6 mm³.</summary>
    [Theory]
    [InlineData(new[] { 10, 8, 6 }, 251.327, VolumeShape.Ellipsoid)]
    [InlineData(new[] { 10, 8 }, 335.103, VolumeShape.Spheroid)]
    [InlineData(new[] { 10 }, 523.599, VolumeShape.Sphere)]
    public void Volumes(int[] diameters, double expected, VolumeShape shape)
    {
        var volume = LumpVolume.Of([.. diameters.Select(d => (decimal)d)]);
        Assert.Equal(expected, volume.CubicMillimetres, 3);
        Assert.Equal(shape, volume.Shape);
    }

    /// <summary>Lam, Hong Kong Respiratory Medicine 2006: 8 to 64 units from day 3 to day 6 are three doublings of one day.</summary>
    [Fact]
    public void Three_doublings_in_three_days_take_a_day_each() => Assert.Equal(1, DoublingTime.Days(8, 64, 3)!.Value, 10);

    /// <summary>A question page of a radiology society: a diameter 26 % larger is a volume doubled (1.26³ = 2.0004).</summary>
    [Fact]
    public void A_diameter_of_26_percent_more_is_a_volume_doubled() => Assert.Equal(100, DoublingTime.OfDiameters(10m, 12.6m, 100)!.Value, 1);

    [Theory]
    [InlineData(10, 10, 5)]
    [InlineData(10, 9, 5)]
    [InlineData(10, 20, 0)]
    [InlineData(0, 20, 5)]
    public void What_does_not_grow_does_not_double(double before, double after, double days) => Assert.Null(DoublingTime.Days(before, after, days));

    /// <summary>cRECIST v1.0 as summarised by AAHA; exactly 20 % and exactly 30 % count as met. The 5 mm are RECIST 1.1's.</summary>
    [Theory]
    [InlineData(100, 100, 70, ResponseCategory.Partial)]
    [InlineData(100, 100, 70.1, ResponseCategory.Stable)]
    [InlineData(100, 100, 120, ResponseCategory.Progressive)]
    [InlineData(100, 100, 119.9, ResponseCategory.Stable)]
    [InlineData(100, 50, 60, ResponseCategory.Progressive)]
    [InlineData(100, 20, 24, ResponseCategory.Partial)] // 20 % but only 4 mm
    [InlineData(100, 20, 25, ResponseCategory.Progressive)]
    [InlineData(100, 60, 0, ResponseCategory.Complete)]
    public void Response_categories(double start, double smallest, double now, ResponseCategory expected) =>
        Assert.Equal(expected, TargetResponse.Of((decimal)start, (decimal)smallest, (decimal)now));

    /// <summary>Sizes of things: the objects table (Codex canned pea sizes from memory, USDA for grapes, USGA and R&amp;A for golf balls).</summary>
    [Theory]
    [InlineData("like pea", 7, 10, false)]
    [InlineData("like grape", 15, 20, false)]
    [InlineData("like golf-ball", 42.67, 43, false)]
    [InlineData("12mm", 12, 12, true)]
    [InlineData("12x9mm", 12, 12, true)]
    [InlineData("9x12mm", 12, 12, true)]
    [InlineData("1.2cm", 12, 12, true)]
    [InlineData("0.5in", 12.7, 12.7, true)]
    [InlineData("~10mm", 9, 11, true)]
    [InlineData("<10mm", 0, 10, true)]
    [InlineData(">10mm", 10, -1, true)]
    public void A_size_is_as_exact_as_it_was_written(string written, double low, double high, bool measured)
    {
        LumpSize size = Assert.Single(LifeOf($"2026-10-01 log\n  lump L-flank {written}\n").Sizes);
        Assert.Equal((decimal)low, size.Low);
        Assert.Equal(high < 0 ? null : (decimal?)high, size.High);
        Assert.Equal(measured, size.IsMeasured);
        Assert.True(size.HandLow <= size.Low && !(size.HandHigh < size.High));
    }

    [Theory]
    [InlineData("10mm", "14mm", ChangeVerdict.Larger)]
    [InlineData("14mm", "10mm", ChangeVerdict.Smaller)]
    [InlineData("10mm", "13mm", ChangeVerdict.CannotTell)] // exactly what two measurements may be off
    [InlineData("10mm", "12mm", ChangeVerdict.CannotTell)]
    [InlineData("60mm", "71mm", ChangeVerdict.CannotTell)] // Ranganathan et al. 2018: one rater's limits were 12 mm and more
    [InlineData("60mm", "75mm", ChangeVerdict.Larger)]
    [InlineData("like pea", "11mm", ChangeVerdict.CannotTell)]
    [InlineData("like pea", "like grape", ChangeVerdict.Larger)]
    [InlineData("like pea", "like chickpea", ChangeVerdict.CannotTell)]
    [InlineData("<10mm", ">20mm", ChangeVerdict.Larger)]
    [InlineData(">10mm", "20mm", ChangeVerdict.CannotTell)]
    [InlineData("5mm", "<20mm", ChangeVerdict.CannotTell)]
    public void What_the_hand_can_tell(string before, string after, ChangeVerdict expected) =>
        Assert.Equal(expected, ChangeOf(LifeOf($"2026-08-01 log\n  lump L-flank {before}\n2026-10-01 log\n  lump L-flank {after}\n")).Verdict);

    [Fact]
    public void A_doubling_time_is_told_with_what_the_hand_leaves_open()
    {
        SizeChange change = ChangeOf(LifeOf("2026-01-01 log\n  lump L-flank 10mm\n2026-04-11 log\n  lump L-flank 20mm\n"));
        (double days, double quickest, double? slowest) = change.Doubling!.Value;
        Assert.Equal(100 / 3d, days, 6); // three doublings of the volume in 100 days
        Assert.InRange(quickest, 1, days);
        Assert.InRange(slowest!.Value, days, 1_000);
        Assert.Equal(100, change.Percent);
        Assert.Equal(8, change.VolumeRatio!.Value, 6);
    }

    [Theory]
    [InlineData("10mm", "12mm")]
    [InlineData("<5mm", "30mm")]
    [InlineData("10mm", ">30mm")]
    [InlineData("30mm", "10mm")]
    public void A_doubling_time_is_not_told_where_it_cannot_be(string before, string after) =>
        Assert.Null(ChangeOf(LifeOf($"2026-08-01 log\n  lump L-flank {before}\n2026-10-01 log\n  lump L-flank {after}\n")).Doubling);

    [Fact]
    public void Volumes_worked_out_in_different_ways_are_not_compared()
    {
        SizeChange change = ChangeOf(LifeOf("2026-01-01 log\n  lump L-flank 10mm\n2026-04-11 log\n  lump L-flank 20x5mm\n"));
        Assert.Equal(8, change.VolumeRatio!.Value, 6);
    }

    [Fact]
    public void A_life_has_its_days_in_order_wherever_they_stand_in_the_file()
    {
        LumpLife life = LifeOf("""
            2026-10-01 log
              lump L-flank 14mm
            2026-08-01 visit
              lump L-flank 10mm sampled
            2026-09-01 log
              lump L-flank like pea
            2026-07-01 log
              lump L-flank
            """);
        Assert.Equal(["2026-07-01", "2026-10-01"], new[] { life.First.Day, life.Last.Day }.Select(day => day.ToString("yyyy-MM-dd")));
        Assert.Equal(["10mm", "like pea", "14mm"], life.Sizes.Select(size => size.Written));
        Assert.True(Assert.Single(life.Looks).Sampled);
        Assert.Null(life.Ended);
    }

    [Fact]
    public void A_lump_that_is_gone_and_back_has_two_lives()
    {
        const string Lines = "2026-07-01 log\n  lump L-flank 10mm\n2026-08-01 log\n  lump L-flank removed\n2026-08-15 log\n  lump L-flank gone\n2026-09-01 log\n  lump L-flank 4mm\n";
        ImmutableArray<LumpLife> lives = LumpLife.AllOf(CourseOf(Lines));
        Assert.Equal(2, lives.Length);
        Assert.Equal(("removed", 3), (lives[0].EndWord, lives[0].Lines.Length));
        Assert.Equal("4mm", Assert.Single(LifeOf(Lines).Sizes).Written);
        Assert.Null(LifeOf(Lines).Ended);
    }

    [Fact]
    public void One_slip_of_many_makes_no_growth()
    {
        Assert.Null(GrowthIn(12, 11, 12, 8, 12, 12, 12)); // one small reading
        Assert.Null(GrowthIn(12, 11, 12, 12, 16, 12)); // one large reading, not the last
        Assert.Null(GrowthIn(12, 12));
        Assert.Null(GrowthIn(12));
        Assert.Null(GrowthIn(20, 15, 10));
    }

    [Fact]
    public void Growth_is_confirmed_by_the_size_before_it()
    {
        Assert.Null(GrowthIn(10, 14)!.Confirmed);
        Assert.Equal(15m, GrowthIn(10, 15, 15)!.Confirmed!.Typical);
        Assert.Equal(16m, GrowthIn(8, 10, 12, 14, 16, 18)!.Confirmed!.Typical);
        Assert.Equal(10m, GrowthIn(20, 20, 20, 10, 10, 10, 16, 16)!.Change.Before.Typical); // the smaller stretch, not the first
    }

    private static SizeChange ChangeOf(LumpLife life) => new(life.Sizes[0], life.Sizes[^1]);

    private static SizeGrowth? GrowthIn(params int[] sizes) =>
        SizeGrowth.In(LifeOf(string.Concat(sizes.Select((size, month) => $"2026-{month + 1:00}-01 log\n  lump L-flank {size}mm\n"))).SizeOfEachDay);

    private static LumpLife LifeOf(string lines) => LumpLife.Of(CourseOf(lines))!;

    private static Course CourseOf(string lines)
    {
        NoteAnalysis analysis = MarkedFindings.Read(Head + lines);
        Assert.DoesNotContain(analysis.Findings, finding => finding.Level == HealthNotes.Analysis.Findings.FindingLevel.Error);
        return Assert.Single(analysis.Record.All("lump"));
    }
}
