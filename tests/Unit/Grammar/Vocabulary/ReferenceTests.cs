using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.Vocabulary;

/// <summary>What one table says of another is there.</summary>
public class ReferenceTests
{
    private static readonly NoteVocabulary Words = NoteVocabulary.Default;

    [Fact]
    public void Parts_of_describing_words_are_line_words_that_take_words()
    {
        string[] known = [.. Words.LineWords.Terms.Where(word => word.Has(SlotKind.Words)).Select(word => word.Word), "any", "milk-tooth"];
        None.Wrong(Tables.Rows("describing.tsv").SelectMany(row => row.Several("part")).Distinct().Except(known));
    }

    [Fact]
    public void Every_line_word_that_takes_words_has_some_of_its_own() => None.Wrong(
        Words.LineWords.Terms.Where(word => word.Has(SlotKind.Words) && word.Word is not ("bcs" or "pain" or "expect"))
            .Where(word => Words.Describing(word.Word).Terms.Count(w => w.Part != "any") < 5).Select(word => word.Word));

    [Fact]
    public void States_are_for_line_words_that_take_them() => None.Wrong(
        Tables.Rows("states.tsv").SelectMany(row => row.Several("for").Select(word => (State: row["word"], Kind: row["kind"], Word: Words.LineWords.Find(word))))
            .Where(s => s.Word is null || !s.Word.Has(s.Kind switch { "state" => SlotKind.State, "place" => SlotKind.Place, _ => SlotKind.Route })));

    [Fact]
    public void Every_line_word_that_takes_a_state_or_a_place_has_some() => None.Wrong(
        Words.LineWords.Terms.Where(word => word.Kind == WordKind.Vital && (word.Has(SlotKind.State) || word.Has(SlotKind.Place)))
            .Where(word => !Words.States(word.Word).Terms.Any()).Select(word => word.Word));

    [Fact]
    public void Abbreviations_at_the_head_stand_for_a_line_word_and_what_goes_with_it() => Assert.All(Words.Abbreviations("head").Terms, abbreviation =>
    {
        string[] stands = abbreviation.StandsFor.Split(' ');
        Assert.Equal(stands[0], Words.LineWords.Find(stands[0])?.Word);
        Assert.All(stands.Skip(1), word => Assert.True(Words.States(stands[0]).Find(word) is not null || Words.Fixed("side").Find(word) is not null || Words.Describing(stands[0]).Find(word) is not null, abbreviation.Word));
    });

    [Fact]
    public void Abbreviations_elsewhere_stand_for_words_of_their_place() => Assert.All(Tables.Rows("abbreviations.tsv").Where(row => row["where"] != "head"), row =>
        Assert.True(
            row["where"] switch
            {
                "side" => Words.Fixed("side").Find(row["stands-for"]) is not null,
                "route" => Words.States("gave").Find(row["stands-for"]) is { Kind: StateKind.Route },
                "schedule" => row["stands-for"].StartsWith("every ", StringComparison.Ordinal) || Words.States("med").Find(row["stands-for"]) is not null,
                "sex" => row["stands-for"].Split(' ').All(word => Words.Fixed("sex").Find(word) is not null || Words.Fixed("neuter").Find(word) is not null),
                "word:any" => Words.Fixed("ok").Find(row["stands-for"]) is not null,
                var word => row["stands-for"].Split(' ').All(plain => Words.Describing(word["word:".Length..]).Find(plain)?.Word == plain),
            },
            $"{row["abbreviation"]} in {row["where"]}"));

    /// <summary>The strength of a tablet goes wherever an amount of medicine does.</summary>
    [Fact]
    public void Every_slot_kind_is_taken_by_some_word() => None.Wrong(Enum.GetValues<SlotKind>()
        .Except(Words.LineWords.Terms.SelectMany(word => word.Takes).Select(slot => slot.Kind)).Except([SlotKind.Strength, SlotKind.StrengthOfOne]));

    /// <summary>What a phrase at the start of a line implies is known behind the word it leads to; of <c>done</c> it is free words.</summary>
    [Fact]
    public void Phrases_lead_to_line_words_and_to_words_known_there() => None.Wrong(
        from lead in Words.Leads.Terms
        from line in lead.Lines
        let word = Words.LineWords.Find(line.Word)
        where word?.Word != line.Word || line.Words.Any(implied => !IsKnown(word, implied))
        select $"{lead.Word}: {line.Word} {string.Join(' ', line.Words)}");

    /// <summary>A synonym that stands in two rows of phrases would lead to the first alone.</summary>
    [Fact]
    public void A_phrase_leads_to_one_line() => None.Wrong(Tables.Ambiguous(
        Words.Leads.Terms.SelectMany(lead => lead.Synonyms.Prepend(lead.Word).Select(phrase => (phrase, lead.Word)))));

    private static bool IsKnown(LineWord word, string implied) => word.Has(SlotKind.Text) || word.Has(SlotKind.Sex) || word.Has(SlotKind.Topic) || word.Has(SlotKind.Analyte) || word.Has(SlotKind.Medicine)
        || Words.Describing(word.Word).Find(implied) is not null || Words.Ok.Find(implied) is not null || Words.Sides.Find(implied) is not null
        || Words.States(word.Word).Find(implied) is not null || Words.Regions.Find(implied) is not null || Words.Fixed("portion").Find(implied) is not null
        || (word.Has(SlotKind.Times) && Words.Fixed("times").Find(implied) is not null)
        || (word.Has(SlotKind.Tooth) && implied is "104" or "204" or "304" or "404");
}
