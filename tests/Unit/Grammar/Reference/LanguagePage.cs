using System.Text.RegularExpressions;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.Reference;

/// <summary>The language reference, <c>grammar/LANGUAGE.md</c>, as the tests read it.</summary>
internal static partial class LanguagePage
{
    public static string Path { get; } = Repository.PathOf("grammar/LANGUAGE.md");

    public static string Text { get; } = File.ReadAllText(Path);

    /// <summary>The fenced blocks of a language, each with the number of its first line.</summary>
    public static IEnumerable<(int Line, string Text)> Blocks(string language) => All.Where(block => block.Language == language).Select(block => (block.Line, block.Text));

    /// <summary>All fenced blocks in order.</summary>
    public static IReadOnlyList<(int Line, string Language, string Text)> All { get; } =
        [.. Fence.Matches(Text).Select(match => (Text[..match.Index].Count(c => c == '\n') + 2, match.Groups[1].Value, match.Groups[2].Value))];

    [GeneratedRegex(@"^```([a-z-]+)\n(.*?)^```$", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Fence { get; }
}
