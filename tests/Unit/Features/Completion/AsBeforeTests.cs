namespace HealthNotes.Tests.Features.Completion;

/// <summary>Lines and rests of lines that this note has had before.</summary>
public class AsBeforeTests
{
    private const string Logs =
        "species dog\nmed gabapentin 200mg oral every 8h from 2026-09-14\n" +
        "2026-09-15 log\n  07:00 alert bright\n  07:05 ate all\n  07:10 gave gabapentin 200mg oral\n  07:20 T 38.5C rectal\n  21:00 rr 6/15s asleep\n  21:10 stool 1x soft brown\n" +
        "2026-09-16 log\n";

    [Theory]
    [InlineData("  07:00 |", "alert bright")]
    [InlineData("  07:00 al|", "alert bright")]
    [InlineData("  alert bright\n  |", "ate all")] // it followed such a line
    [InlineData("  21:05 |", "stool soft brown 1x")]
    [InlineData("  12:00 poo|", "stool soft brown 1x")]
    public void A_line_that_was_written_before_is_offered_whole(string line, string label) =>
        Assert.Equal("as on 2026-09-15", Offered.Item(Logs + line, label).Detail);

    [Fact]
    public void A_measured_number_is_never_repeated()
    {
        Assert.Equal(Logs + "  07:15 temp ", Offered.Taking(Logs + "  07:15 |", "temp"));
        Assert.DoesNotContain(Offered.At(Logs + "  07:15 |").Items, item => item.Edit.NewText.Contains("38.5", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("  12:00 |")] // none of the day before is near
    [InlineData("  07:00 alert dull\n  07:05 |")] // it is written already
    [InlineData("\n2026-09-17 check\n  |")] // a check is looked at anew
    public void Otherwise_nothing_is_taken_over(string line) => Assert.DoesNotContain("alert bright", Offered.Labels(Logs + line));

    [Fact]
    public void In_a_check_only_the_way_of_measuring_is()
    {
        Assert.Equal("/15s asleep", Offered.Labels(Logs + "\n2026-09-17 check\n  rr 7|")[0]);
        Assert.DoesNotContain("as on", Offered.At(Logs + "\n2026-09-17 check\n  stool |").Items[0].Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void A_dose_comes_from_its_plan_alone()
    {
        string[] doses = [.. Offered.At(Logs.Replace("med gabapentin 200mg oral every 8h from 2026-09-14\n", "", StringComparison.Ordinal) + "  07:10 |").Items.Select(item => item.Edit.NewText)];
        Assert.DoesNotContain(doses, dose => dose.Contains("200mg", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("  rr 7|", "/15s asleep", "  rr 7/15s asleep")]
    [InlineData("  rr 7/|", "/15s asleep", "  rr 7/15s asleep")]
    [InlineData("  T 38|", "C rectal", "  T 38C rectal")]
    [InlineData("  T 38.2C |", "rectal", "  T 38.2C rectal")]
    [InlineData("  BM soft |", "brown", "  BM soft brown")]
    public void Behind_a_number_the_line_goes_on_as_before(string line, string first, string expected)
    {
        Assert.Equal(first, Offered.Labels(Logs + line)[0]);
        Assert.Equal(Logs + expected, Offered.Taking(Logs + line, first));
    }

    [Theory]
    [InlineData("lump L-flank 12mm soft\n2026-10-20 log\n  lump L-flank gone", "lump L-flank |", "gone")]
    [InlineData("ear L red, since the swim", "ear L |", "red since the swim")]
    [InlineData("gums pale", "gums |", "pale")] // a reason to phone
    public void Neither_an_end_nor_a_remark_nor_a_reason_to_phone_is_repeated(string before, string line, string label) =>
        Assert.NotEqual(label, Offered.Labels($"species dog\n2026-10-04 log\n  {before}\n2026-11-01 log\n  {line}")[0]);
}
