using CsCheck;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Hints;
using HealthNotes.Tests.Grammar.Properties;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Hints;

/// <summary>Computed values behind what was written.</summary>
public class HintTests
{
    private static readonly FeatureSettings Us = FeatureSettings.Default with { Units = UnitsShown.Us };

    private static readonly PlaceRange Everything = new(new Place(0, 0), new Place(int.MaxValue, 0));

    /// <summary>The hint stands where <c>|</c> is drawn.</summary>
    [Theory]
    [InlineData("  hr 18/15s| chest", "= 72/min")]
    [InlineData("  rr <8/30s| asleep", "< 16/min")]
    [InlineData("  weight 83.2-55.9kg|  # held", "= 27.3 kg")]
    [InlineData("  lump L-flank like golf-ball| firm", "≈ 42.7 mm")] // USGA and R&A: at least 42.67 mm
    [InlineData("  temp 104F| rectal", "= 40 °C")] // SI definition: C = (F - 32) / 1.8
    [InlineData("  weight 1lb|", "= 0.454 kg")] // NIST: 0.45359237 kg exactly
    [InlineData("  lump chin 0.5x0.25in|", "= 12.7 mm x 6.4 mm")] // 16 CFR 500.19: 25.4 mm
    [InlineData("  glucose 80mg/dL|", "= 4.4 mmol/L")] // Veterinary Partner (VIN), Oursler: 80 mg/dL is 4.4 mmol/L
    [InlineData("  18:00 water 1floz|", "= 30 mL")] // NIST: 29.5735295625 mL
    [InlineData("  hr 18/15s|\r", "= 72/min")]
    [InlineData("  recheck ear L in 2w|", "= Wed 2026-12-09")]
    [InlineData("  due flea comb in 1mo|", "= Fri 2026-12-25")]
    public void A_value_is_followed_by_what_follows_from_it(string line, string label)
    {
        Cursor at = Cursor.In("pet Marlow\nspecies dog\n2026-11-25 check\n" + line);
        HintText hint = Assert.Single(HintFeature.In(at.Document, Everything, FeatureSettings.Default));
        Assert.Equal((at.Place, label), (hint.Place, hint.Label));
        Assert.Contains(hint.Kind, HintKinds.All);
    }

    [Theory]
    [InlineData("  temp 40C|", "= 104 °F")]
    [InlineData("  lump chin like us-quarter|", "≈ 0.96 in")] // US Mint: 24.26 mm, 0.955 in
    [InlineData("  weight 83.2-55.9kg|", "= 60.2 lb")]
    [InlineData("  glucose 4.44mmol/L|", "= 80 mg/dL")]
    public void The_readers_units_are_used(string line, string label)
    {
        Cursor at = Cursor.In("pet Marlow\nspecies dog\n2026-11-25 check\n" + line);
        HintText hint = Assert.Single(HintFeature.In(at.Document, Everything, Us));
        Assert.Equal((at.Place, label), (hint.Place, hint.Label));
        Cursor noted = Cursor.In("pet Marlow\nspecies dog\nunits us\n2026-11-25 check\n" + line);
        Assert.Equal(label, Assert.Single(HintFeature.In(noted.Document, Everything, FeatureSettings.Default)).Label);
    }

    [Theory]
    [InlineData("  hr 72")]
    [InlineData("  weight 21.4kg")]
    [InlineData("  temp 38.6C")]
    [InlineData("  lump L-flank 12mm")]
    [InlineData("  crt 1.5s")]
    [InlineData("  bcs 5/9")]
    [InlineData("  recheck ear L 2026-12-09")]
    [InlineData("  gave benazepril 5mg")] // no weighing
    [InlineData("  hr 18/")]
    [InlineData("  hr ")]
    [InlineData("")]
    [InlineData("  # hr 18/15s")]
    [InlineData("  > hr 18/15s 🐶 e\u0301")]
    public void What_is_on_the_line_is_not_said_again(string line) =>
        Assert.Empty(HintFeature.In(Cursor.Note("pet Marlow\nspecies dog\n2026-11-25 check\n" + line), Everything, FeatureSettings.Default));

    [Fact]
    public void A_dose_is_held_against_the_last_weighing_before_it()
    {
        Document note = Cursor.Note("""
            pet Marlow
            species dog
            med benazepril 5mg every 24h from 2026-01-20
            2026-02-01 log
              weight 20kg
            2026-03-01 log
              07:00 gave benazepril 5mg
              07:10 gave drops 2 drop
            2026-04-01 log
              weight 25kg
            """);
        Assert.Equal(
            [(2, "0.2 mg/kg"), (6, "0.25 mg/kg")],
            HintFeature.In(note, Everything, FeatureSettings.Default).Where(hint => hint.Kind == HintKinds.Dose).Select(hint => (hint.Place.Line, hint.Label)));
        string tooltip = HintFeature.In(note, Everything, FeatureSettings.Default).First(hint => hint.Place.Line == 6).Tooltip;
        Assert.Equal("5mg at 20 kg, weighed on 2026-02-01: 0.25 mg/kg. A fact, not a judgement.", tooltip);
    }

    [Fact]
    public void An_entry_says_how_long_after_the_one_of_its_kind_it_is()
    {
        Document note = Cursor.Note("2026-11-01 check\n2026-11-03 log\n2026-11-04 check # late\n2026-11-04 check\n2026-11-02 log\n2026-11-09 log by owner\n");
        HintText[] hints = [.. HintFeature.In(note, Everything, FeatureSettings.Default)];
        Assert.Equal([(2, 16, "3 d after"), (5, 23, "7 d after")], hints.Select(hint => (hint.Place.Line, hint.Place.Character, hint.Label)));
        Assert.Equal("Days since the check before, 2026-11-01 (line 1).", hints[0].Tooltip);
        // asked for one line only, the same is said of it
        Assert.Equal([hints[1]], HintFeature.In(note, PlaceRange.At(5, 0), FeatureSettings.Default));
    }

    /// <summary>18 in 15 s is 72; 17 would be 68 and 19 would be 76.</summary>
    [Fact]
    public void The_tooltip_says_how_it_was_worked_out_and_how_sure_it_is()
    {
        Document note = Cursor.Note("2026-11-25 check\n  hr 18/15s\n  weight 83.2-55.9kg\n  lump chin like pea\n");
        Assert.Equal(
            [
                "18 counted in 15 s: 18 × 60 / 15 = 72 a minute. One count more or less makes it 68 to 76.",
                "83.2kg together, less 55.9kg alone: 27.3 kg. As finely as the two were read, it may be out by 0.1 kg.",
                "A green pea: about 8.5 mm, between 7 mm and 10 mm. Source: Codex Alimentarius, canned pea sieve sizes (from memory).",
            ],
            HintFeature.In(note, Everything, FeatureSettings.Default).Select(hint => hint.Tooltip));
    }

    [Theory]
    [InlineData(HintKinds.Rate)]
    [InlineData(HintKinds.Size)]
    [InlineData(HintKinds.Conversion)]
    [InlineData(HintKinds.Difference)]
    [InlineData(HintKinds.Dose)]
    [InlineData(HintKinds.Days)]
    public void Each_kind_has_its_switch(string kind)
    {
        Document note = Cursor.Note("species dog\n2026-11-01 check\n2026-11-25 check\n  hr 18/15s\n  lump chin like pea\n  temp 104F\n  weight 83.2-55.9kg\n  gave benazepril 5mg\n  recheck ear in 2d\n");
        HintSettings all = new();
        HintSettings off = kind switch
        {
            HintKinds.Rate => all with { Rates = false },
            HintKinds.Size => all with { Sizes = false },
            HintKinds.Conversion => all with { Conversions = false },
            HintKinds.Difference => all with { Differences = false },
            HintKinds.Dose => all with { Doses = false },
            _ => all with { Days = false },
        };
        HintText[] shown = [.. HintFeature.In(note, Everything, FeatureSettings.Default)];
        Assert.Contains(shown, hint => hint.Kind == kind);
        Assert.Equal(shown.Where(hint => hint.Kind != kind), HintFeature.In(note, Everything, FeatureSettings.Default with { Hints = off }));
    }

    [Fact]
    public void Only_the_lines_asked_for_are_looked_at()
    {
        Cursor at = Cursor.In("2026-11-25 check\n  hr 18/15s\n  rr‹ 8/30s\n  temp› 104F\n  hr 20/15s\n");
        Assert.Equal([2, 3], HintFeature.In(at.Document, at.Range, FeatureSettings.Default).Select(hint => hint.Place.Line));
    }

    [Fact]
    public void Nothing_throws_and_every_hint_stands_in_its_line() => Soup.Note.Sample(text =>
    {
        Document note = Document.Open("file:///a.hnote", 1, text, Cursor.Today);
        foreach (FeatureSettings settings in new[] { FeatureSettings.Default, Us })
        {
            HintText[] hints = [.. HintFeature.In(note, Everything, settings)];
            Assert.Equal(hints.OrderBy(hint => hint.Place), hints);
            Assert.All(hints, hint => Assert.Equal(hint.Place, note.Clamp(hint.Place)));
        }
    }, iter: Effort.Times(150));
}
