using CsCheck;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Hover;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Tests.Grammar.Properties;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Hover;

/// <summary>What is said about a place of a note. Read on 2026-11-25.</summary>
public class HoverTests
{
    private const string Opening = "pet Marlow\nspecies dog\nborn 2017-03-10\nadult-weight 27kg\nusual rr 16-24 asleep per vet 2026-01-20\ncall-if rr asleep >32 per vet 2026-01-20\nmed benazepril 5mg every 24h from 2026-01-20\n";

    private const string Log = Opening + """
        2026-11-01 check
          rr 8/30s asleep
          temp 38.0C
          weight 25kg
          lump L-flank @lower 10mm
        2026-11-10 check
          rr 9/30s asleep
          weight 24kg
          lump L-flank @lower 12mm
          07:30 gave benazepril 5mg

        """;

    /// <summary>On the word of a reading: how it is taken, what is normal for this pet with its source, its own lines, its own values.</summary>
    [Fact]
    public void A_reading_tells_all_that_it_is_compared_with()
    {
        string text = Text(Log + "2026-11-25 check\n  r|r 14/30s asleep\n");
        Assert.Contains("**How to take it:** Watch the chest", text);
        // Scansen, Clinician's Brief 2017: healthy dogs 6 to 25 a minute asleep at home
        Assert.Contains("**Normal for this dog** (senior, large, asleep): 6 to 25 a minute.", text);
        Assert.Contains("Scansen, Clinician's Brief 2017", text);
        Assert.Contains("**Usual for this pet asleep:** 16 to 24 a minute, per vet 2026-01-20 (line 5).", text);
        Assert.Contains("**Phone the clinic asleep:** above 32 a minute, per vet 2026-01-20 (line 6).", text);
        Assert.Contains("**Here:** 14 counted in 30 s: 14 × 60 / 30 = 28 a minute. One count more or less makes it 26 to 30.", text);
        Assert.Contains("**Before:** 2026-11-01 16 a minute · 2026-11-10 18 a minute. 10 a minute more than the last (2026-11-10).", text);
    }

    [Theory]
    [InlineData("  we|ight 24.6kg\n", "2026-11-01 25 kg · 2026-11-10 24 kg. 0.6 kg, 2.5% more than the last (2026-11-10).")]
    [InlineData("  temp 38.5C| rectal\n", "38.5 °C, or 101.3 °F.")]
    [InlineData("  te|mp 38.5C\n", "2026-11-01 38 °C. 0.5 °C more than the last (2026-11-01).")]
    [InlineData("  r|r 30/15s panting\n", "Not compared with others: it was not taken at rest.")]
    [InlineData("  rr 10|/30s asleep\n", "20 a minute. One count more or less makes it 18 to 22.")]
    [InlineData("  SR|R 10/30s\n", "Sleeping respiratory rate. Here it stands for `rr asleep`.")]
    [InlineData("  r|r\n", "**Normal for this dog** (senior, large, at rest): 10 to 30 a minute.")] // American Red Cross: dogs 10-30
    [InlineData("  bcs 3|/5\n", "on the scale of nine: 5/9.")] // AAHA weight management toolkit: 3/5 is 5/9
    [InlineData("  gums gr|ey\n", "Level: **urgent**. This cannot wait")] // emergency texts
    [InlineData("  gums pi|nk\n", "Level: **as expected**.")]
    [InlineData("  gums ok|\n", "Looked at, as expected.")]
    [InlineData("  rr 10/30s asl|eep\n", "In deep sleep, not twitching or dreaming.")]
    [InlineData("  joint L-k|nee stiff\n", "stifle")] // Nomina Anatomica Veterinaria: articulatio genus, the stifle
    [InlineData("  joint L-k|nee stiff\n", "**left knee**")]
    [InlineData("  tooth 30|4 tartar\n", "Lower left, canine")] // WikiVet: 304 is the lower left canine
    [InlineData("  tooth 40|9 tartar\n", "Lower right, molar: place 9")] // WikiVet: 409 is the lower right first molar
    [InlineData("  tooth 70|4 loose\n", "Lower left, milk canine")] // WikiVet: 704 is the milk tooth of 304
    [InlineData("  lump L-flank @low|er 15mm\n", "**First noted:** 2026-11-01, 24 days ago (line 12).")]
    [InlineData("  lump L-flank @low|er 15mm\n", "2026-11-01 10 mm · 2026-11-10 12 mm.")]
    [InlineData("  lu|mp L-flank @lower 15mm\n", "3 mm, 25% more than the last (2026-11-10).")]
    [InlineData("  lump chin like golf-ba|ll\n", "42.7 mm, or 1.68 in.")] // USGA and R&A: 1.680 in, 42.67 mm
    [InlineData("  lump chin li|ke golf-ball\n", "42.7 mm, or 1.68 in.")]
    [InlineData("  gave benaz|epril 5mg\n", "5mg at 24 kg, weighed on 2026-11-10: 0.21 mg/kg. A fact, not a judgement.")]
    [InlineData("  gave benaz|epril 5mg\n", "**Given before this line:** 5mg 2026-11-10 07:30, 15 days ago (line 17).")]
    [InlineData("  gave benaz|epril 5mg\n", "**Plan** (line 7): med benazepril 5mg every 24h")]
    [InlineData("  recheck ear L in 2|w\n", "**Wednesday 9 December 2026**, in 14 days.")]
    [InlineData("  ate 3|/4\n", "75% of the meal.")]
    [InlineData("  weight 83.2-55.9|kg\n", "27.3 kg, or 60.2 lb.")]
    public void A_place_tells_what_is_asked_of_it(string line, string expected)
    {
        string text = Text(Log + "2026-11-25 check\n" + line);
        Assert.Contains(expected, text);
    }

    [Theory]
    [InlineData("born 2017-0|3\n2026-11-01 log\n", "Age today: about 9 years 8 months.")]
    [InlineData("born 2017-03-10\n2000-01-0|1 log\n", "**Saturday 1 January 2000**, 9825 days ago.")]
    [InlineData("born 2017-03-10\n2026-03-0|9 log\n", "Age on that day: 8 years 11 months.")]
    [InlineData("born 2017-03-10\n2026-03-09 ch|eck\n", "A look over the whole pet, head to tail.")]
    [InlineData("species d|og\n", "A dog.")]
    [InlineData("adult-weight 27k|g\n", "27 kg, or 59.5 lb.")]
    [InlineData("kno|wn heart murmur\n", "A condition the vet has named.")]
    public void Facts_and_days_are_explained(string note, string expected) => Assert.Contains(expected, Text(note));

    [Theory]
    [InlineData("")]
    [InlineData("|\n2026-11-25 check\n")]
    [InlineData("# a com|ment\n")]
    [InlineData("2026-11-25 check\n  > hr is fine, g|ums too\n")]
    [InlineData("2026-11-25 check\n  hr 72  # h|r\n")]
    [InlineData("2026-11-25 check\n|  hr 72\n")]
    [InlineData("2026-11-25 check\n  hr 72  |  \n")]
    [InlineData("2026-11-25 check\n  flib|ber\n")]
    [InlineData("2026-11-25 check\n  gums flib|ber\n")]
    [InlineData("known heart m|urmur\n")]
    [InlineData("2026-11-25 check\n  ask is it the h|r?\n")]
    [InlineData("2026-11-25 log by own|er\n")]
    [InlineData("2026-11-25 log\n  photo a|.jpg\n")]
    public void Where_there_is_nothing_to_say_nothing_is_said(string note)
    {
        Cursor at = Cursor.In(note.Contains('|', StringComparison.Ordinal) ? note : note + "|");
        Assert.Null(HoverFeature.At(at.Document, at.Place, FeatureSettings.Default));
    }

    [Fact]
    public void The_text_is_about_exactly_its_word()
    {
        foreach (string marked in new[] { "species dog\r\n2026-11-25 check\r\n  node L-jaw sm|all", "2026-11-25 check\n  node L-jaw small|", "2026-11-25 check\n  node L-jaw |small # 🐶 e\u0301" })
        {
            Cursor at = Cursor.In(marked);
            PlaceRange range = HoverFeature.At(at.Document, at.Place, FeatureSettings.Default)!.Range;
            Assert.Equal("small", at.Document.Syntax.Lines[range.Start.Line].Text[range.Start.Character..range.End.Character]);
        }
    }

    [Fact]
    public void Words_of_the_note_cannot_become_markup()
    {
        string text = Text("pet A\n2026-11-25 log\n  ga|ve <img>[x](command:y)*b*www.z.example a@b https://z.example 5mg\n");
        Assert.Contains("\\<img\\>", text);
        Assert.DoesNotContain("](command:", text);
        Assert.DoesNotContain("www.z", text);
        Assert.DoesNotContain("https://", text);
    }

    [Fact]
    public void Us_units_are_shown_to_who_reads_them()
    {
        FeatureSettings us = FeatureSettings.Default with { Units = UnitsShown.Us };
        Assert.Contains("2026-11-01 100.4 °F. 0.9 °F more", Text(Log + "2026-11-25 check\n  te|mp 38.5C\n", us));
        Assert.Contains("99.5 to 102.6 °F", Text(Log + "2026-11-25 check\n  te|mp 38.5C\n", us));
    }

    /// <summary>What is normal depends on the age on the day of the entry, not on today's.</summary>
    [Fact]
    public void A_puppy_is_compared_with_puppies() =>
        Assert.Contains("(puppy, asleep): 6 to 30 a minute.", Text("species dog\nborn 2017-03-10\n2017-09-01 log\n  r|r 10/30s asleep\n"));

    [Fact]
    public void A_half_typed_line_is_explained() =>
        Assert.Contains("**gums**", Text("2026-11-25 check\n  gu|ms"));

    /// <summary>Every word that is measured, looked at or found has a row, and every row a word, a source, and short sentences.</summary>
    [Fact]
    public void Every_reading_says_how_it_is_taken()
    {
        IReadOnlyList<TsvRow> rows = TsvTable.Load(typeof(Document).Assembly, "how-to-take.tsv").Rows;
        Assert.All(rows, row => Assert.NotEqual("", row["source"]));
        Assert.All(rows, row => Assert.InRange(row["steps"].Length, 20, 200));
        Assert.All(rows, row => Assert.InRange(row["steps"].Count(c => c == '.'), 1, 4));
        Assert.Equal(
            NoteVocabulary.Default.LineWords.Terms.Where(word => word.Kind is WordKind.Exam or WordKind.Vital or WordKind.Scan).Select(word => word.Word).Order(),
            rows.Select(row => row["word"]).Order());
        Assert.All(rows.Where(row => row["touch"] == "yes"), row => Assert.Contains("may bite", Text($"2026-11-25 check\n  {row["word"]}| \n")));
    }

    [Fact]
    public void Nothing_throws_at_any_place() => Soup.Note.Sample(text =>
    {
        Document note = Document.Open("file:///a.hnote", 1, text, Cursor.Today);
        for (int line = 0; line < note.Syntax.Lines.Length; line++)
        {
            for (int character = 0; character <= note.Syntax.Lines[line].Text.Length; character++)
            {
                if (HoverFeature.At(note, new Place(line, character), FeatureSettings.Default) is { } hover)
                {
                    Assert.True(hover.Range.Touches(new Place(line, character)));
                    Assert.NotEqual("", hover.Markdown);
                }
            }
        }
    }, iter: Effort.Times(60));

    private static string Text(string marked, FeatureSettings? settings = null)
    {
        Cursor at = Cursor.In(marked);
        return HoverFeature.At(at.Document, at.Place, settings ?? FeatureSettings.Default)?.Markdown ?? "";
    }
}
