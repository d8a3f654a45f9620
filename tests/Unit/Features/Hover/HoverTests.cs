using HealthNotes.Features.Documents;
using HealthNotes.Features.Hover;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Hover;

/// <summary>The hover of a place.</summary>
public class HoverTests
{
    private const string Dog = """
        pet Marlow
        species dog
        sex male neutered
        born 2017-03-08
        usual rr 16-24 asleep per vet 2026-01-20
        call-if rr asleep >32 per vet 2026-01-20
        med benazepril 5mg every 24h

        """;

    private static string At(string marked, UnitsShown units = UnitsShown.AsNoted)
    {
        var cursor = Cursor.In(marked);
        HoverText? hover = HoverFeature.At(cursor.Document, cursor.Place, FeatureSettings.Default with { Units = units });
        Assert.NotNull(hover);
        return hover.Markdown;
    }

    private static string AtFirst(string lines) => At(Dog + "2026-11-20 check\n" + lines);

    [Fact]
    public void A_vital_tells_meaning_taking_normal_own_and_earlier_values()
    {
        string text = At(Dog + "2026-11-20 log\n  rr 6/15s asleep\n2026-11-22 log\n  rr 7/15s asleep\n  rr 30/15s panting\n2026-11-24 log\n  r|r 8/15s asleep");
        Assert.StartsWith("**rr**: ", text, StringComparison.Ordinal);
        Assert.Contains("**How to take it:** Watch the chest", text, StringComparison.Ordinal);
        Assert.Contains("asleep): 6 to 25 a minute.", text, StringComparison.Ordinal);
        Assert.Contains("*Source: Scansen, Clinician's Brief 2017.*", text, StringComparison.Ordinal);
        Assert.Contains("**Usual for this pet asleep:** 16 to 24 a minute, per vet 2026-01-20 (line 5).", text, StringComparison.Ordinal);
        Assert.Contains("**Phone the clinic asleep:** above 32 a minute, per vet 2026-01-20 (line 6).", text, StringComparison.Ordinal);
        Assert.Contains("8 × 60 / 15 = 32 a minute. One count more or less makes it 28 to 36.", text, StringComparison.Ordinal);
        Assert.Contains("**Before:** 2026-11-20 24 a minute · 2026-11-22 28 a minute.", text, StringComparison.Ordinal);
        Assert.Contains("4 a minute more than the last (2026-11-22). One count more or less explains as much.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_many_earlier_values_the_last_five_are_shown()
    {
        string text = At(Dog + string.Concat(Enumerable.Range(1, 7).Select(day => $"2026-11-0{day} log\n  temp 38.{day}C\n")) + "2026-11-20 log\n  tem|p 38.9C");
        Assert.DoesNotContain("2026-11-02", text, StringComparison.Ordinal);
        Assert.Contains("2026-11-03 38.3 °C", text, StringComparison.Ordinal);
        Assert.Contains("0.2 °C more than the last (2026-11-07)", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_temperature_difference_in_us_units_has_no_zero_point() =>
        Assert.Contains("1.8 °F more than the last", At(Dog + "2026-11-01 log\n  temp 38C\n2026-11-20 log\n  tem|p 39C", UnitsShown.Us), StringComparison.Ordinal);

    [Fact]
    public void A_half_typed_vital_already_tells_what_is_normal() =>
        Assert.Contains("6 to 25 a minute", AtFirst("  rr| "), StringComparison.Ordinal);

    [Fact]
    public void An_abbreviation_tells_what_it_stands_for() =>
        Assert.Contains("stands for `rr asleep`", AtFirst("  SR|R 6/15s"), StringComparison.Ordinal);

    [Theory]
    [InlineData("  gums pin|k", "**pink** (gums)", "as expected")]
    [InlineData("  gums pale|", "**pale** (gums)", "call the vet")]
    [InlineData("  gums whi|te moist", "**white** (gums)", "urgent")]
    public void A_describing_word_tells_its_meaning_and_level(string line, string word, string level)
    {
        string text = AtFirst(line);
        Assert.StartsWith(word, text, StringComparison.Ordinal);
        Assert.Contains($"**{level}**", text, StringComparison.Ordinal);
        Assert.Contains("*Source: ", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_site_tells_everyday_and_veterinary_names()
    {
        string text = AtFirst("  joint L-kn|ee free");
        Assert.StartsWith("**left knee**", text, StringComparison.Ordinal);
        Assert.Contains("stifle", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("208", "Upper left, premolar: place 8")]
    [InlineData("104", "Upper right, canine: place 4")]
    [InlineData("304", "Lower left, canine: place 4")]
    [InlineData("409", "Lower right, molar: place 9")]
    [InlineData("704", "Lower left, milk canine: place 4")]
    public void A_tooth_tells_where_it_stands(string number, string expected) =>
        Assert.Contains(expected, AtFirst($"  tooth |{number} tartar"), StringComparison.Ordinal);

    [Theory]
    [InlineData("  temp 101.|5F", "38.6 °C, or 101.5 °F.")]
    [InlineData("  crt <2|s", "Below 2 s.")]
    [InlineData("  weight 83.2-55|.9kg", "27.3 kg. As finely as the two were read, it may be out by 0.1 kg.")]
    [InlineData("  hr 18/1|5s", "18 counted in 15 s: 18 × 60 / 15 = 72 a minute. One count more or less makes it 68 to 76.")]
    [InlineData("  lump L-flank 12x9|mm soft", "12 mm x 9 mm, or 0.47 in x 0.35 in. The longest is compared.")]
    [InlineData("  ate 3/|4", "75% of the meal.")]
    [InlineData("  recheck ear L in 1|w", "Friday 27 November 2026")]
    public void A_value_tells_what_follows_from_it(string line, string expected) => Assert.Contains(expected, AtFirst(line), StringComparison.Ordinal);

    [Fact]
    public void A_date_tells_weekday_distance_and_age() =>
        Assert.Equal("**Friday 20 November 2026**, 5 days ago. Age on that day: 9 years 8 months.", At(Dog + "2026-11-|20 check"));

    [Fact]
    public void Before_birth_no_age_is_told() => Assert.DoesNotContain("Age", At(Dog + "2016-11-|20 check"), StringComparison.Ordinal);

    [Fact]
    public void Of_a_birth_the_age_today_is_told() => Assert.Contains("Age today: 9 years 8 months", At("species dog\nborn 2017-03|-08"), StringComparison.Ordinal);

    [Fact]
    public void A_medicine_tells_plan_dose_as_a_fact_and_when_it_was_given_before()
    {
        string text = At(Dog + "2026-11-20 log\n  weight 26kg\n  07:30 gave benazepril 5mg\n2026-11-24 log\n  gave bena|zepril 5mg");
        Assert.Contains("**Plan** (line 7): med benazepril 5mg every 24h", text, StringComparison.Ordinal);
        Assert.Contains("0.19 mg/kg. A fact, not a judgement.", text, StringComparison.Ordinal);
        Assert.Contains("**Given before this line:** 5mg 2026-11-20 07:30, 5 days ago (line 10).", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_medicine_of_the_opening_tells_when_it_was_last_given() =>
        Assert.Contains("**Last given:** 5mg 2026-11-24, yesterday", At(Dog.Replace("benaz", "ben|az", StringComparison.Ordinal) + "2026-11-24 log\n  gave benazepril 5mg"), StringComparison.Ordinal);

    [Fact]
    public void A_tag_tells_since_when_and_its_sizes_so_far()
    {
        string text = At(Dog + "2026-10-01 check\n  lump L-flank @lower 10mm\n  lump L-flank 30mm\n2026-11-01 check\n  lump L-flank @lower 12mm\n2026-11-20 check\n  lump L-flank @low|er 14mm");
        Assert.Contains("**First noted:** 2026-10-01, 55 days ago (line 9).", text, StringComparison.Ordinal);
        Assert.Contains("**Sizes so far:** 2026-10-01 10 mm · 2026-11-01 12 mm.", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("# a com|ment")]
    [InlineData("pet Mar|low")]
    [InlineData("|")]
    [InlineData("pet Marlow\n\n|\n")]
    [InlineData("2026-11-20 check\n  > he sha|kes his head")]
    [InlineData("2026-11-20 check\n  gums pink # by day|light")]
    [InlineData("2026-11-20 check\n |  gums pink")]
    [InlineData("2026-11-20 check\n  ask is it |well?")]
    [InlineData("2026-11-20 check\n  blah bl|ah")]
    public void Nothing_is_said_about_the_writers_own_words(string marked)
    {
        var cursor = Cursor.In(marked);
        Assert.Null(HoverFeature.At(cursor.Document, cursor.Place, FeatureSettings.Default));
    }

    [Fact]
    public void What_the_note_says_is_shown_and_never_acted_upon()
    {
        string text = At("species dog\nmed benazepril 5mg every 24h # <b>*x*</b>\n2026-11-20 log\n  ga|ve benazepril 5mg");
        Assert.DoesNotContain("<b>", text, StringComparison.Ordinal);
        Assert.Contains("\\<b\\>\\*x\\*", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hover_is_about_its_own_word_whatever_the_line_break()
    {
        const string text = "species dog\r\n2026-11-20 check\r\n  gums \ud83d\udc36 pink\r\n  ear e\u0301 brown";
        var document = Document.Open("file:///a.hnote", 1, text, Cursor.Today);
        Assert.Equal(new PlaceRange(new Place(2, 10), new Place(2, 14)), HoverFeature.At(document, new Place(2, 11), FeatureSettings.Default)?.Range);
        Assert.Equal(new PlaceRange(new Place(3, 9), new Place(3, 14)), HoverFeature.At(document, new Place(3, 99), FeatureSettings.Default)?.Range);
        Assert.Null(HoverFeature.At(Cursor.Note(""), new Place(7, 7), FeatureSettings.Default));
    }
}
