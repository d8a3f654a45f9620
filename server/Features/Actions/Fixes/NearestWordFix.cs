using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>
/// A word that is not known gives way to the known word it is nearest to; where several are near, each is offered. The only
/// one that is near is preferred when both start alike; it is certain when the two are one slip apart and long enough that
/// this says something.
/// </summary>
internal static class NearestWordFix
{
    private const int MostOffered = 3;
    private const int ShortestCertain = 4;

    public static IEnumerable<LineFix> Of(LineAt at, NoteFinding finding)
    {
        TextSpan span = finding.Span;
        string bare = span.In(at.Text).ToString().TrimEnd('.', ':', '!', '?');
        List<LineFix> found = [];
        bool whole = true;
        HashSet<string> meanings = [];
        foreach (string candidate in Candidates(at, finding, bare))
        {
            string text = finding.Rule == ProblemRules.WrongUnit ? candidate : InCaseOf(bare, candidate);
            var fix = new LineFix("nearest-word", $"Write `{text}`", span, text);
            TrialLine tried = at.Trial.Read(fix.In(at.Text));
            if (IsBetter(at, tried, finding) && meanings.Add(Meaning(tried)))
            {
                found.Add(fix);
                whole &= finding.Rule != ProblemRules.UnknownLine || tried.Errors.Length == 0;
            }
        }

        return found.Count == 1 && whole && char.ToLowerInvariant(bare[0]) == char.ToLowerInvariant(found[0].Text[0])
            ? [found[0] with { Preferred = true, Certain = bare.Length >= ShortestCertain && finding.Rule != ProblemRules.WrongUnit && IsOneSlip(bare, found[0].Text) }]
            : found;
    }

    /// <summary>True when one letter is missing, too many or another, or two neighbours have changed places.</summary>
    private static bool IsOneSlip(string typed, string word)
    {
        (string one, string other) = (typed.ToLowerInvariant(), word.ToLowerInvariant());
        int start = one.AsSpan().CommonPrefixLength(other);
        int end = 0;
        while (end < Math.Min(one.Length, other.Length) - start && one[^(end + 1)] == other[^(end + 1)])
        {
            end++;
        }

        (int left, int right) = (one.Length - start - end, other.Length - start - end);
        return left <= 1 && right <= 1 ? left + right > 0 : left == 2 && right == 2 && one[start] == other[start + 1] && one[start + 1] == other[start];
    }

    /// <summary>Written as the word it stands for was: all capitals, a capital first, or as the vocabulary spells it.</summary>
    public static string InCaseOf(string typed, string word)
    {
        bool plain = word.All(c => !char.IsUpper(c));
        return !plain ? word
            : typed.Count(char.IsLetter) > 1 && typed.All(c => !char.IsLower(c)) ? word.ToUpperInvariant()
            : char.IsUpper(typed[0]) && word.Length > 1 ? char.ToUpperInvariant(word[0]) + word[1..]
            : word;
    }

    /// <summary>A first word that is mended may bring to light what else is wrong in its line, as long as no less of it is understood than is not.</summary>
    private static bool IsBetter(LineAt at, TrialLine tried, NoteFinding finding) => finding.Rule == ProblemRules.UnknownLine
        ? tried.Line.Item is not null && tried.Errors.Length <= tried.Line.Marks.Count(mark => mark.Kind is not (TokenKind.Unknown or TokenKind.LineWord or TokenKind.Comment))
        : Trial.IsBetter(at.Read, tried, finding);

    private static string Meaning(TrialLine tried) => tried.Line.Item is { } item ? ItemPrinter.Print(item) : tried.Line.Text;

    private static IEnumerable<string> Candidates(LineAt at, NoteFinding finding, string typed)
    {
        if (finding.Nearest is { } nearest)
        {
            yield return nearest;
        }

        HashSet<string> pool = [.. Pool(at, finding.Rule)];
        for (int count = 0; count < MostOffered; count++)
        {
            if (NearestWord.Find(typed, pool) is not { } word)
            {
                yield break;
            }

            pool.Remove(word);
            if (word != finding.Nearest)
            {
                yield return word;
            }
        }
    }

    /// <summary>The words that may stand in this line; the trial decides which of them really fit.</summary>
    private static IEnumerable<string> Pool(LineAt at, string rule)
    {
        NoteVocabulary words = NoteVocabulary.Default;
        if (rule == ProblemRules.WrongUnit)
        {
            return words.Units.Spellings;
        }

        if (at.Line.Kind == LineKind.EntryHead)
        {
            return words.Fixed("entry").Spellings;
        }

        if (at.Word is not { } word)
        {
            return words.LineWords.Spellings.Concat(words.Abbreviations("head").Spellings);
        }

        IEnumerable<string> pool = words.Describing(word.Word).Spellings.Concat(words.States(word.Word).Spellings);
        pool = word.Has(SlotKind.Size) ? pool.Concat(words.Objects.Spellings) : pool;
        pool = word.Takes.Any(slot => slot.Kind is >= SlotKind.Site and <= SlotKind.Gland or SlotKind.AnySite)
            ? pool.Concat(words.Regions.Spellings).Concat(words.Sides.Spellings)
            : pool;
        return word.Has(SlotKind.Item) || word.Has(SlotKind.Vital) ? pool.Concat(words.LineWords.Spellings) : pool;
    }
}
