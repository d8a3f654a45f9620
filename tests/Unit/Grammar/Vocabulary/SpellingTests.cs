using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.Vocabulary;

/// <summary>In each place of a line a spelling means one thing, and every spelling can be reached.</summary>
public class SpellingTests
{
    private static readonly NoteVocabulary Words = NoteVocabulary.Default;

    [Fact]
    public void At_the_start_of_a_line() => None.Wrong(Tables.Ambiguous(
        Tables.Rows("words.tsv").SelectMany(row => Tables.Spellings(row, "word").Select(s => (s, row["word"])))
            .Concat(Tables.Rows("abbreviations.tsv").Where(row => row["where"] == "head").Select(row => (row["abbreviation"], row["stands-for"])))));

    [Fact]
    public void Among_regions() => None.Wrong(Tables.Ambiguous(
        Tables.Rows("sites.tsv").SelectMany(row => Tables.Spellings(row, "region").Select(s => (s, row["region"])))
            .Concat(Tables.Rows("fixed-words.tsv").Where(row => row["kind"] == "side").SelectMany(row => Tables.Spellings(row, "word").Select(s => (s, row["word"]))))));

    [Fact]
    public void Among_units() => None.Wrong(Tables.Ambiguous(
        Tables.Rows("units.tsv").SelectMany(row => Tables.Spellings(row, "unit").Select(s => (s, row["unit"])))));

    [Fact]
    public void Among_objects() => None.Wrong(Tables.Ambiguous(
        Tables.Rows("objects.tsv").SelectMany(row => Tables.Spellings(row, "object").Select(s => (s, row["object"])))));

    [Fact]
    public void Among_the_small_lists() => Assert.All(
        Tables.Rows("fixed-words.tsv").GroupBy(row => row["kind"]),
        list => None.Wrong(Tables.Ambiguous(list.SelectMany(row => Tables.Spellings(row, "word").Select(s => (s, row["word"]))))));

    [Fact]
    public void Among_the_states_of_a_word() => Assert.All(
        Tables.Rows("states.tsv").SelectMany(row => row.Several("for")).Distinct(),
        word => None.Wrong(Tables.Ambiguous(Tables.Rows("states.tsv").Where(row => row.Several("for").Contains(word))
            .SelectMany(row => Tables.Spellings(row, "word").Select(s => (s, row["word"])))
            .Concat(Tables.Rows("abbreviations.tsv").Where(row => row["where"] is "route" or "schedule" && word is "med" or "gave")
                .Select(row => (row["abbreviation"], row["stands-for"]))))));

    /// <summary>A part's own words come before the general ones: <c>a lot</c> is "more" of water, and "marked" of redness.</summary>
    [Fact]
    public void Among_the_describing_words_of_a_part() => Assert.All(Words.LineWords.Terms.Where(word => word.Has(SlotKind.Words)).Select(word => word.Word).Append("any"), part =>
        None.Wrong(Tables.Ambiguous(Tables.Rows("describing.tsv").Where(row => row.Several("part").Contains(part))
            .SelectMany(row => Tables.Spellings(row, "word").Select(s => (s, row["word"])))
            .Concat(Tables.Rows("abbreviations.tsv").Where(row => row["where"] == "word:" + part).Select(row => (row["abbreviation"], row["stands-for"]))))));

    /// <summary>No describing word is hidden by a site, a state, a unit or a small word that is looked for first.</summary>
    [Fact]
    public void Every_spelling_of_every_describing_word_is_read_as_that_word()
    {
        List<string> wrong = [];
        foreach (LineWord word in Words.LineWords.Terms.Where(word => word.Has(SlotKind.Words) && word.Word != "expect"))
        {
            foreach (string spelling in Words.Describing(word.Word).Spellings)
            {
                string text = $"{word.Word} {Needed(word)}{spelling}";
                LineSyntax line = NoteSyntax.Parse(text).Lines[0];
                if (IsTakenBefore(word, spelling))
                {
                    continue;
                }

                if (line.Items is not [var item] || item.Word != word || !item.Words.Select(w => w.Word).SequenceEqual([Words.Describing(word.Word).Find(spelling)!]))
                {
                    wrong.Add($"{text} -> {MeaningPrinter.Print(line)}");
                }
            }
        }

        None.Wrong(wrong);
    }

    [Fact]
    public void Every_spelling_of_every_state_and_place_is_read_as_that_word() => None.Wrong(
        from word in Words.LineWords.Terms
        where word.Kind == WordKind.Vital
        from spelling in Words.States(word.Word).Spellings
        let text = $"{word.Word} {(word.Word switch { "temp" => "38.6C", "glucose" => "8mmol/L", _ => "72" })} {spelling}"
        let line = NoteSyntax.Parse(text).Lines[0]
        where !line.Problems.IsEmpty || line.Item is not Reading reading || (reading.State ?? reading.Place) != Words.States(word.Word).Find(spelling)
        select text);

    [Fact]
    public void Every_spelling_of_every_manner_is_read_as_that_word() => None.Wrong(
        from spelling in Words.States("med").Spellings.Concat(Words.Abbreviations("route").Spellings)
        let text = $"med benazepril 5mg {spelling} every 12h"
        where NoteSyntax.Parse(text).Lines[0] is not { Problems.IsEmpty: true, Item: MedicinePlan { Manner.Length: 1, Schedule.Every: not null } }
        select text);

    [Fact]
    public void Every_spelling_of_every_region_is_read_as_that_region() => None.Wrong(
        Words.Regions.Spellings.Where(spelling =>
        {
            LineSyntax line = NoteSyntax.Parse($"lump {spelling} soft").Lines[0];
            return line.Item is not Finding finding || finding.Site.Region != Words.Regions.Find(spelling) || !line.Problems.IsEmpty;
        }));

    [Fact]
    public void Every_spelling_of_every_object_is_read_as_that_object() => None.Wrong(
        Words.Objects.Spellings.Where(spelling =>
            NoteSyntax.Parse($"lump L-flank like {spelling} soft").Lines[0] is not { Problems.IsEmpty: true, Item: Finding { Size: LikeObject like } }
            || like.Object != Words.Objects.Find(spelling)));

    [Fact]
    public void Every_spelling_of_every_line_word_starts_a_line() => Assert.All(
        Words.LineWords.Spellings.Concat(Words.Abbreviations("head").Spellings),
        spelling => Assert.Equal(LineKind.Item, NoteSyntax.Parse(spelling.ToUpperInvariant()).Lines[0].Kind));

    /// <summary>Phrases that say what was seen, or what did not happen, are whole lines.</summary>
    [Fact]
    public void Every_phrase_that_stands_for_a_line_is_read_as_that_line() => None.Wrong(
        from lead in Words.Leads.Terms
        where lead.Means != LeadMeans.Plain
        from phrase in lead.Synonyms.Prepend(lead.Word)
        let line = NoteSyntax.Parse("2026-10-04 log\n  " + phrase).Lines[1]
        where !line.Items.Select(item => item.Word.Word).SequenceEqual(lead.Lines.Select(each => each.Word))
        select $"{phrase} -> {MeaningPrinter.Print(line)} {line.Problems.FirstOrDefault()?.Message}");

    /// <summary>Parts of a meal come before signs, an act that is done before stitches; an event that has ended is "gone" whatever the word.</summary>
    private static bool IsTakenBefore(LineWord word, string spelling) =>
        (word.Has(SlotKind.Portion) && Words.Fixed("portion").Find(spelling) is not null)
        || (word.Kind == WordKind.Care && Words.Describing(word.Word).Find(spelling) is { Part: "any", Word: "resolved" })
        || Words.Leads.Find($"{word.Word} {spelling}") is not null;

    private static string Needed(LineWord word) => word.Word switch
    {
        "lump" or "wound" or "pain-site" => "L-flank ",
        "hr" or "rr" => "72 ",
        "bcs" => "5/9 ",
        "pain" => "2/10 ",
        "lameness" => "2/5 ",
        "murmur" => "2/6 ",
        "dental" => "2/4 ",
        _ => "",
    };
}
