using CsCheck;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Hints;
using HealthNotes.Tests.Grammar.Properties;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Hints;

/// <summary>The computed values behind what was written.</summary>
public class HintTests
{
    private static HintText[] All(string text, FeatureSettings? settings = null)
    {
        Document document = Cursor.Note(text);
        return [.. HintFeature.In(document, new PlaceRange(new Place(0, 0), new Place(int.MaxValue, 0)), settings ?? FeatureSettings.Default)];
    }

    private static string[] Labels(string text, UnitsShown units = UnitsShown.AsNoted) =>
        [.. All(text, FeatureSettings.Default with { Units = units }).Select(hint => hint.Label)];

    [Theory]
    [InlineData("hr 18/15s", "= 72/min")]
    [InlineData("hr ~18/15s", "≈ 72/min")]
    [InlineData("temp 101.5F", "= 38.6 °C")]
    [InlineData("weight 83.2-55.9kg", "= 27.3 kg")]
    [InlineData("weight 47lb 3oz", "= 21.4 kg")]
    [InlineData("lump L-flank 0.5in soft", "= 12.7 mm")]
    [InlineData("glucose 148mg/dL", "= 8.2 mmol/L")]
    [InlineData("recheck ear L in 2w", "= Fri 2026-12-04")]
    [InlineData("due worming in 1w", "= Fri 2026-11-27")]
    public void What_follows_is_shown(string line, string label) => Assert.Equal([label], Labels($"2026-11-20 check\n  {line}"));

    [Theory]
    [InlineData("carprofen 75mg 8am", "= gave carprofen 75 mg, 08:00")]
    [InlineData("gave carprofen 75mg 8am", "= gave carprofen 75 mg, 08:00")]
    [InlineData("gave cephalexin 500mg 08:00 20:00", "= gave cephalexin 500 mg, 08:00; gave cephalexin 500 mg, 20:00")]
    [InlineData("gave no carprofen", "= missed carprofen")]
    [InlineData("limping LF", "= gait LF limping")]
    [InlineData("right ear red", "= ear R red")]
    [InlineData("no fleas", "= coat no fleas")]
    [InlineData("belly not bloated", "= belly no bloated")]
    [InlineData("temp 38.6 rectal", "= temp 38.6 C rectal")]
    [InlineData("T 38.6C P 84 R 20", "= temp 38.6 C; hr 84; rr 20")]
    [InlineData("SRR 20", "= rr 20 asleep")]
    [InlineData("cough 2x after the stairs", "remark: \"after the stairs\"")]
    [InlineData("limping xyzzy", "= gait limping, remark: \"xyzzy\"")]
    public void What_was_read_is_shown_where_it_is_more_than_the_letters(string line, string label) =>
        Assert.Equal([label], All($"2026-11-20 check\n  {line} # calm").Where(hint => hint.Kind == HintKinds.Reading).Select(hint => hint.Label));

    [Theory]
    [InlineData("07:30 gave carprofen 75mg")]
    [InlineData("missed carprofen we were away")]
    [InlineData("skip ear no one to hold him")]
    [InlineData("eye no discharge")]
    [InlineData("vomit none")]
    [InlineData("lump L-flank @lower 12mm soft")]
    [InlineData("stool 2x soft")]
    public void A_line_that_says_it_itself_has_no_reading(string line) => Assert.DoesNotContain(All($"2026-11-20 check\n  {line}"), hint => hint.Kind == HintKinds.Reading);

    [Theory]
    [InlineData("hr 72")]
    [InlineData("temp 38.6C")]
    [InlineData("weight 26kg")]
    [InlineData("crt <2s")]
    [InlineData("gums pink")]
    [InlineData("lump L-flank 12x9mm")]
    [InlineData("due worming 2026-12-01")]
    [InlineData("gave benazepril 5mg")]
    [InlineData("ate 3/4")]
    public void What_is_on_the_line_already_is_not(string line) => Assert.Empty(Labels($"2026-11-20 check\n  {line}"));

    [Fact]
    public void An_object_is_shown_as_about_with_its_source()
    {
        HintText hint = Assert.Single(All("2026-11-20 check\n  lump L-flank like pea firm"));
        Assert.Matches("^≈ [0-9.]+ mm$", hint.Label);
        Assert.Contains("between 7 mm and 10 mm. Source: ", hint.Tooltip, StringComparison.Ordinal);
    }

    [Fact]
    public void Units_follow_the_reader()
    {
        Assert.Equal(["= 101.5 °F"], Labels("2026-11-20 check\n  temp 38.6C", UnitsShown.Us));
        Assert.Equal(["= 101.5 °F"], Labels("species dog\nunits us\n2026-11-20 check\n  temp 38.6C"));
        Assert.Empty(Labels("species dog\nunits us\n2026-11-20 check\n  temp 38.6C", UnitsShown.Metric));
        Assert.Equal(["= 60.2 lb"], Labels("2026-11-20 check\n  weight 83.2-55.9kg", UnitsShown.Us));
    }

    [Fact]
    public void A_dose_is_held_against_the_weight_of_its_day_and_not_judged()
    {
        HintText[] hints = [.. All("med benazepril 5mg every 24h\n2026-11-01 log\n  weight 26kg\n  gave benazepril 5mg\n2026-11-20 log\n  weight 25kg").Where(hint => hint.Kind == HintKinds.Dose)];
        Assert.Equal(["0.2 mg/kg", "0.19 mg/kg"], hints.Select(hint => hint.Label));
        Assert.Equal(["0.19 mg/kg"], All("2026-11-01 log\n  weight 26kg\n  gave benazepril 5mg\n2026-11-02 log\n  gave benazepril 5mg").Where(hint => hint.Kind == HintKinds.Dose).Select(hint => hint.Label));
        Assert.Equal("5mg at 26 kg, weighed on 2026-11-01: 0.19 mg/kg. A fact, not a judgement.", hints[1].Tooltip);
    }

    [Fact]
    public void An_entry_shows_the_days_since_the_one_of_its_kind_before()
    {
        HintText hint = Assert.Single(All("2026-11-01 check\n2026-11-18 log\n2026-11-20 check\n2026-11-20 check\nsometime check"));
        Assert.Equal(("19 d after the check before", new Place(2, 16)), (hint.Label, hint.Place));
        Assert.Equal("Days since the check before, 2026-11-01 (line 1).", hint.Tooltip);
    }

    [Fact]
    public void It_stands_behind_its_value_and_tells_how_it_came_about()
    {
        HintText hint = Assert.Single(All("2026-11-20 check\n  \ud83d\udc36\n  hr 18/15s chest # calm"));
        Assert.Equal(new Place(2, 11), hint.Place);
        Assert.Equal("18 counted in 15 s: 18 × 60 / 15 = 72 a minute. One count more or less makes it 68 to 76.", hint.Tooltip);
    }

    [Fact]
    public void Each_kind_has_a_switch()
    {
        const string text = "2026-11-01 check\n  weight 26kg\n2026-11-20 check\n  hr 18/15s\n  lump L-flank like pea\n  temp 101.5F\n  weight 83.2-55.9kg\n  gave benazepril 5mg\n  scooting";
        Assert.Equal(HintKinds.All.Order(), All(text).Select(hint => hint.Kind).Distinct().Order());
        HintSettings on = new();
        foreach ((string kind, HintSettings without) in new[]
        {
            (HintKinds.Rate, on with { Rates = false }), (HintKinds.Size, on with { Sizes = false }), (HintKinds.Conversion, on with { Conversions = false }),
            (HintKinds.Difference, on with { Differences = false }), (HintKinds.Dose, on with { Doses = false }), (HintKinds.Days, on with { Days = false }), (HintKinds.Reading, on with { Readings = false }),
        })
        {
            Assert.Equal(HintKinds.All.Where(k => k != kind).Order(), All(text, FeatureSettings.Default with { Hints = without }).Select(hint => hint.Kind).Distinct().Order());
        }
    }

    [Fact]
    public void Only_the_lines_of_the_range_are_told()
    {
        var cursor = Cursor.In("2026-11-20 check\n  hr 18/15s\n  ‹rr 8/30s\n  gums pi›nk\n  hr 19/15s");
        Assert.Equal(["= 16/min"], HintFeature.In(cursor.Document, cursor.Range, FeatureSettings.Default).Select(hint => hint.Label));
    }

    [Fact]
    public void A_part_says_the_same_as_the_whole_and_nothing_throws() => Soup.Note.ForAll(text =>
    {
        var document = Document.Open("file:///a.hnote", 1, text, Cursor.Today);
        var all = new PlaceRange(new Place(0, 0), new Place(int.MaxValue, 0));
        HintText[] whole = [.. HintFeature.In(document, all, FeatureSettings.Default)];
        HintText[] lines = [.. Enumerable.Range(0, document.Syntax.Lines.Length).SelectMany(line => HintFeature.In(document, PlaceRange.At(line, 0), FeatureSettings.Default))];
        Assert.Equal(whole, lines);
        Assert.All(whole, hint => Assert.True(hint.Place == document.Clamp(hint.Place) && hint.Label.Length > 0 && hint.Tooltip.Length > 0));
    }, iter: Effort.Times(1_000));

    /// <summary>All that is shown in a sample, for a person to read.</summary>
    [Fact]
    public void What_is_shown_in_a_sample()
    {
        string text = File.ReadAllText(Repository.PathOf("samples/tansy.hnote")).ReplaceLineEndings("\n");
        string[] lines = text.Split('\n');
        Snapshots.Match(string.Join('\n', All(text).Select(hint => $"{hint.Place.Line + 1}: {lines[hint.Place.Line].Trim()}  [{hint.Label}]  {hint.Tooltip}")), "tansy");
    }

    [Fact]
    public void A_part_that_waits_for_what_was_seen_says_how_to_look()
    {
        Assert.Equal("Lift the upper lip in daylight.", Assert.Single(All("2026-11-20 check\n  gums \n  gums pink")).Label);
        Assert.Empty(All("2026-11-20 log\n  gums "));
    }
}
