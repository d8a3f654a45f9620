using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Analysis.Rules;

/// <summary>Finds the describing words of a line that are worth watching or more, for this animal.</summary>
internal static class WorryingWords
{
    /// <summary>One finding for the line, at its most worrying word; null when every word is as expected.</summary>
    public static NoteFinding? In(RuleContext context, string rule, int line, NoteItem item)
    {
        Species species = context.Pet.Species;
        bool male = context.Pet.Male == true;
        List<(Described Word, Meaning Meaning)> worrying = [.. WordsOf(item)
            .Select(word => (word, Meaning: word.Word.For(species, male)))
            .Where(pair => pair.Meaning is { Level: > Level.Expected })
            .Select(pair => (pair.word, pair.Meaning!))];
        if (worrying.Count == 0)
        {
            return null;
        }

        (Described worst, Meaning meaning) = worrying.MaxBy(pair => pair.Meaning.Level);
        FindingLevel level = meaning.Level switch { Level.Urgent => FindingLevel.Urgent, Level.Call => FindingLevel.Call, _ => FindingLevel.Watch };
        IEnumerable<string> others = worrying.Where(pair => pair.Word != worst).Select(pair => pair.Word.Word.Word);
        string more = string.Join(", ", others) is { Length: > 0 } list ? $" Also written: {list}." : "";
        string where = SiteOf(item) is { } site ? $" {site.Name}" : "";
        return RuleContext.At(rule, level, line, worst.Span,
            $"{Wording.NameOf(item.Word.Word)}{where}: `{worst.Word.Word}` ({meaning.Definition.TrimEnd('.').ToLowerInvariant()[0]}{meaning.Definition.TrimEnd('.')[1..]}).{more} {Wording.Advice(level)}",
            meaning.Source);
    }

    private static ImmutableArray<Described> WordsOf(NoteItem item) => item switch
    {
        Reading reading => reading.Words,
        Examined examined => examined.Words,
        Finding finding => finding.Words,
        CareEvent care => care.Words,
        _ => [],
    };

    private static Site? SiteOf(NoteItem item) => item switch
    {
        Examined examined => examined.Site,
        Finding finding => finding.Site,
        _ => null,
    };
}
