using System.Collections.Frozen;
using System.Collections.Immutable;
using HealthNotes.Analysis.Danger;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record;
using HealthNotes.Record.Courses;

namespace HealthNotes.Analysis.Rules;

/// <summary>Finds the describing words of a line that are worth watching or more, for this animal.</summary>
internal static class WorryingWords
{
    private const int FirstMilkTooth = 501;

    /// <summary>Signs that are events: that one is over does not mean that it did not happen.</summary>
    private static readonly FrozenSet<string> Events = SmallWords.Of("events");

    /// <summary>One finding for the line, at its most worrying word; null when every word is as expected.</summary>
    public static NoteFinding? In(PetRecord at, PetEntry entry, IRule rule, int line, NoteItem item)
    {
        ImmutableArray<Described> words = item is NotSeen or ExpectFact ? [] : item.Words;
        if (words.IsEmpty)
        {
            return Missing(at, entry, rule, line, item);
        }

        List<(Described Word, Meaning Meaning)> worrying = [.. words
            .Select(word => (word, Meaning: MilkToothMeaning(item, word) ?? word.Word.For(at.Facts.Pet.Species, MayBeMale(at))))
            .Where(pair => pair.Meaning is { Level: > Level.Expected })
            .Select(pair => (pair.word, pair.Meaning!))];
        if (worrying.Count == 0)
        {
            return Missing(at, entry, rule, line, item);
        }

        // of several the one that is not explained speaks
        ((Described worst, Meaning meaning), FindingLevel level, Reason? reason) = worrying
            .Select(pair => (Pair: pair, Level: LevelOf(pair.Meaning, pair.Word, words, worrying.Count)))
            .Select(sign => (sign.Pair, sign.Level, Reason: sign.Level < FindingLevel.Urgent ? Reason.Of(at, entry, item, sign.Pair.Word, line) : null))
            .MaxBy(sign => (sign.Reason?.Quieted(sign.Level) ?? sign.Level, sign.Reason is null, sign.Level));
        IEnumerable<string> others = worrying.Where(pair => pair.Word != worst).Select(pair => pair.Word.Word.Word);
        string more = string.Join(", ", others) is { Length: > 0 } list ? $" Also written: {list}." : "";
        string where = item.Site is { } site ? $" {site.Name}" : "";
        level = reason?.Quieted(level) ?? level;
        string message = $"{Wording.NameOf(item.Word.Word)}{where}: `{worst.Word.Word}` ({Wording.InBrackets(meaning.Definition)}).{more}{(reason is null ? "" : " " + reason.Text)}";
        return rule.At(level, line, worst.Span, message, meaning.LevelSource, reason?.Line is { } evidence ? [evidence] : []);
    }

    /// <summary>A sign that cannot wait and is written as over, where no line before has it: it happened, and that it stopped does not change that. Null for all others.</summary>
    public static NoteFinding? Over(PetRecord at, PetEntry entry, IRule rule, int line, NoteItem item)
    {
        foreach (Described sign in item is ExpectFact ? [] : item.Absent)
        {
            if (sign.Sense == Sense.Ended && sign.Word.Part != "any" && (item.Word.Word == "ate" || Events.Contains(sign.Word.Word)) && sign.Word.For(at.Facts.Pet.Species, MayBeMale(at)) is { Level: Level.Urgent } meaning
                && at.Before(CourseKey.Of(item), entry.Day, item.Head.Time, line, 1, noted => noted.Item is { } earlier && earlier.Words.Any(word => word.Word.Word == sign.Word.Word)).IsEmpty)
            {
                return rule.At(FindingLevel.Urgent, line, sign.Span,
                    $"{Wording.NameOf(item.Word.Word)}: `{sign.Word.Word}` ({Wording.InBrackets(meaning.Definition)}), written as over. It happened.", meaning.LevelSource);
            }
        }

        return null;
    }

    /// <summary>In a cat that is not said to be female, what cannot wait in a male cannot wait.</summary>
    private static bool MayBeMale(PetRecord at) => at.Facts.Pet.Male != false;

    /// <summary>
    /// A sign worth watching becomes a reason to phone when it came suddenly, grows worse or is severe; one that is slight, or
    /// better than it was, stays as it is or becomes something to know.
    /// </summary>
    private static FindingLevel LevelOf(Meaning meaning, Described word, ImmutableArray<Described> all, int worrying) => meaning.Level switch
    {
        Level.Urgent => FindingLevel.Urgent,
        Level.Call => FindingLevel.Call,
        _ when word.Word.Part == "any" => worrying > 1 ? FindingLevel.Info : FindingLevel.Watch,
        _ when Has(all, "sudden") || Has(all, "worse") || Has(all, "severe") => FindingLevel.Call,
        _ => Has(all, "better") ? FindingLevel.Info : FindingLevel.Watch,
    };

    private static bool Has(ImmutableArray<Described> words, string general) => words.Any(word => word.Word.Part == "any" && word.Word.Word == general);

    /// <summary>A good sign that is not there: gums that are not pink, a pet that does not eat well.</summary>
    private static NoteFinding? Missing(PetRecord at, PetEntry entry, IRule rule, int line, NoteItem item)
    {
        if (item is not (Examined or Reading or CareEvent) || item.Word.Kind == WordKind.Scan)
        {
            return null;
        }

        foreach (Described sign in item.Absent)
        {
            if (sign.Word.Part != "any" && sign.Word.For(at.Facts.Pet.Species, MayBeMale(at)) is { Level: Level.Expected, IsNeutral: false })
            {
                string where = item.Site is { } site ? $" {site.Name}" : "";
                FindingLevel level = entry.Entry.Head.Kind == "visit" ? FindingLevel.Info : FindingLevel.Watch;
                return rule.At(level, line, sign.Span,
                    $"{Wording.NameOf(item.Word.Word)}{where}: {(sign.Sense == Sense.Ended ? "no longer" : "not")} {sign.Word.Word.Replace('-', ' ')}.", "common practice, no source");
            }
        }

        return null;
    }

    /// <summary>Milk teeth (501 and above) come loose and fall out: the vocabulary has rows of their own for them.</summary>
    private static Meaning? MilkToothMeaning(NoteItem item, Described word) =>
        item is Examined { Word.Word: "tooth", Site.Number: >= FirstMilkTooth }
            ? NoteVocabulary.Default.Describing("milk-tooth").Find(word.Word.Word)?.Meanings[0]
            : null;
}
