using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Formatting;

/// <summary>Knows which words, written side by side, would be read as a spelling of something else.</summary>
internal static class Phrases
{
    /// <summary>True when some spelling known after <paramref name="lineWord"/> starts with <paramref name="left"/> and the first word of <paramref name="right"/>.</summary>
    public static bool Start(string lineWord, string left, string right)
    {
        NoteVocabulary vocabulary = NoteVocabulary.Default;
        int hyphen = left.LastIndexOf('-');
        string region = hyphen < 0 ? left : left[(hyphen + 1)..];
        return Start(vocabulary.Describing(lineWord), left, right)
            || Start(vocabulary.Regions, region, right);
    }

    private static bool Start<T>(Scope<T> scope, string left, string right)
        where T : class, ITerm
    {
        scope.Find(left, out int longest);
        if (longest == 1)
        {
            return false;
        }

        int blank = right.IndexOf(' ', StringComparison.Ordinal);
        string start = $"{left} {(blank < 0 ? right : right.AsSpan(0, blank))}";
        return scope.Spellings.Any(spelling => spelling.StartsWith(start, StringComparison.OrdinalIgnoreCase));
    }
}
