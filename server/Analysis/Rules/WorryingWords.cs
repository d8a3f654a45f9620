using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Lumps;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Analysis.Rules;

/// <summary>Finds the describing words of a line that are worth watching or more, for this animal.</summary>
internal static class WorryingWords
{
    private const int FirstMilkTooth = 501;

    /// <summary>One finding for the line, at its most worrying word; null when every word is as expected.</summary>
    public static NoteFinding? In(EntryContext at, string rule, int line, NoteItem item)
    {
        ImmutableArray<Described> words = item is NotSeen ? [] : item.Words;
        if (words.IsEmpty)
        {
            return Missing(at, rule, line, item);
        }

        Species species = at.Note.Pet.Species;
        bool male = at.Note.Pet.Male == true;
        List<(Described Word, Meaning Meaning)> worrying = [.. words
            .Select(word => (word, Meaning: MilkToothMeaning(item, word) ?? word.Word.For(species, male)))
            .Where(pair => pair.Meaning is { Level: > Level.Expected })
            .Select(pair => (pair.word, pair.Meaning!))];
        if (worrying.Count == 0)
        {
            return Missing(at, rule, line, item);
        }

        // of several the one that the clinic has not seen speaks
        (Described worst, Meaning meaning, NotedSign? seen) = worrying
            .Select(pair => (pair.Word, pair.Meaning, Seen: SeenAtVisit(at, item, pair.Word, pair.Meaning)))
            .MaxBy(pair => ((int)pair.Meaning.Level * 2) - (pair.Seen is null ? 0 : 1));
        FindingLevel level = meaning.Level switch { Level.Urgent => FindingLevel.Urgent, Level.Call => FindingLevel.Call, _ => FindingLevel.Watch };
        DatedFact<TextFact>? known = level < FindingLevel.Urgent ? KnownFor(at.Note, at.Entry, item, worst.Word.Word) : null;
        IEnumerable<string> others = worrying.Where(pair => pair.Word != worst).Select(pair => pair.Word.Word.Word);
        string more = string.Join(", ", others) is { Length: > 0 } list ? $" Also written: {list}." : "";
        string where = item.Site is { } site ? $" {site.Name}" : "";
        string definition = Wording.InBrackets(meaning.Definition);
        string message = $"{Wording.NameOf(item.Word.Word)}{where}: `{worst.Word.Word}` ({definition}).{more}";
        if (known is null && level < FindingLevel.Urgent && at.Entry.Head.Kind == "visit")
        {
            return RuleContext.At(rule, FindingLevel.Info, line, worst.Span, $"{message} Noted at the visit.", meaning.Source);
        }

        if (known is null && seen is not null)
        {
            // what the clinic has seen needs no second word, but a reason to phone stays one: it may have come back
            FindingLevel left = level == FindingLevel.Watch ? FindingLevel.Info : level;
            return RuleContext.At(rule, left, line, worst.Span, $"{message} Also noted at the visit of {seen.Day:yyyy-MM-dd}. {Wording.Advice(left)}".TrimEnd(), meaning.Source, seen.Line);
        }

        return known is null
            ? RuleContext.At(rule, level, line, worst.Span, $"{message} {Wording.Advice(level)}", meaning.Source)
            : RuleContext.At(rule, FindingLevel.Info, line, worst.Span, $"{message} Known: {known.Fact.Text.Text} (line {known.Line + 1}).", meaning.Source, known.Line);
    }

    /// <summary>A good sign that is not there: gums that are not pink, a pet that does not eat well.</summary>
    private static NoteFinding? Missing(EntryContext at, string rule, int line, NoteItem item)
    {
        if (item is not (Examined or Reading or CareEvent) || item.Word.Kind == WordKind.Scan)
        {
            return null;
        }

        foreach (Described sign in item.Absent)
        {
            if (sign.Word.Part != "any" && sign.Word.For(at.Note.Pet.Species, at.Note.Pet.Male == true) is { Level: Level.Expected } && !NeutralWords.Contains(item.Word.Word, sign.Word.Word))
            {
                string where = item.Site is { } site ? $" {site.Name}" : "";
                FindingLevel level = at.Entry.Head.Kind == "visit" ? FindingLevel.Info : FindingLevel.Watch;
                return RuleContext.At(rule, level, line, sign.Span,
                    $"{Wording.NameOf(item.Word.Word)}{where}: {(sign.Sense == Sense.Ended ? "no longer" : "not")} {sign.Word.Word.Replace('-', ' ')}. {Wording.Advice(level)}".TrimEnd(), "common practice, no source");
            }
        }

        return null;
    }

    private static NotedSign? SeenAtVisit(EntryContext at, NoteItem item, Described word, Meaning meaning) =>
        meaning.Level < Level.Urgent && at.Entry.Head is { Date: { } day, Kind: not "visit" }
            ? at.Earlier.SeenAtVisit(item.Word.Word, item.Site?.Name, word.Word.Word, day)
            : null;

    /// <summary>Every describing word of an entry with the part and place it is about.</summary>
    public static IEnumerable<NotedSign> SignsOf(Entry entry) =>
        from placed in entry.Items
        where placed.Value is not NotSeen
        from word in placed.Value.Words
        select new NotedSign(placed.Value.Word.Word, placed.Value.Site?.Name, word.Word.Word, placed.Line, entry.Head.Date!.Value);

    /// <summary>
    /// A fact <c>known</c> that names both the part and the word quiets it, unless it is urgent: the vet has seen it
    /// already. Of the other side it says nothing, and the word alone is not enough: <c>known dry eye</c> says nothing about dry gums.
    /// </summary>
    private static DatedFact<TextFact>? KnownFor(RuleContext context, Entry entry, NoteItem item, string word)
    {
        LineWord part = item.Word;
        foreach (DatedFact<TextFact> fact in context.Knowns)
        {
            bool holds = fact.Day is null || entry.Head.Date is null || fact.Day <= entry.Head.Date;
            string[] said = fact.Fact.Text.Text.Split(' ', ',', ';', '.');
            if (holds && !NamedSite.NamesElsewhere(fact.Fact.Text.Text, item.Site) && said.Contains(word, StringComparer.OrdinalIgnoreCase)
                && part.Synonyms.Append(part.Word).Any(name => said.Contains(name, StringComparer.OrdinalIgnoreCase)))
            {
                return fact;
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
