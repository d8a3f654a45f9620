using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Tests.Grammar.Hostile;

/// <summary>Input that no owner writes. It may be refused, but it costs little, throws nothing and is kept whole.</summary>
public class HostileTests
{
    private const int TenMegabytes = 10_000_000;

    public static TheoryData<string, Func<string>> Texts { get; } = new()
    {
        { "one long word", () => new string('a', TenMegabytes) },
        { "one long number", () => "hr " + new string('9', TenMegabytes) },
        { "one long line of words", () => "gums " + string.Concat(Enumerable.Repeat("pink ", TenMegabytes / 5)) },
        { "one long comment", () => "gums pink #" + new string('#', TenMegabytes) },
        { "one long free text", () => "> " + new string('x', TenMegabytes) },
        { "one long blank line", () => new string(' ', TenMegabytes) },
        { "one long date", () => "2026-10-04 " + new string('-', TenMegabytes) },
        { "many short lines", () => string.Concat(Enumerable.Repeat("x\n", 200_000)) },
        { "many hashes", () => new string('#', 100_000) },
        { "many hashes apart", () => "gums" + string.Concat(Enumerable.Repeat(" #", 100_000)) },
        { "deep quotes", () => new string('>', 100_000) },
        { "many quotes", () => string.Concat(Enumerable.Repeat(">>>>>>>>>>\n", 50_000)) },
        { "many heads", () => string.Concat(Enumerable.Repeat("2026-10-04\n", 50_000)) },
        { "many carriage returns", () => new string('\r', 200_000) },
        { "zeros", () => new string('\0', 200_000) },
        { "lone surrogates", () => string.Concat(Enumerable.Repeat("\ud83d\n\udc36\n", 20_000)) },
        { "right to left", () => string.Concat(Enumerable.Repeat("\u202e hr \u200f72\n", 20_000)) },
        { "a binary file", Binary },
        { "the longest line of values", () => Filled("weight ", "1x2-3/4 ") },
        { "the longest line of signs", () => Filled("lump ", "- ") },
        { "the longest line of sides", () => Filled("skin ", "left ") },
        { "the longest line of commas", () => Filled("gums ", ",;: ") },
        { "the longest line of unreadable marks", () => Filled("gums ", "(\u0301 ") },
    };

    [Theory]
    [MemberData(nameof(Texts))]
    public void Is_read_kept_and_formatted(string name, Func<string> make)
    {
        string text = make();
        var syntax = NoteSyntax.Parse(text);
        Assert.True(text == syntax.Print(), name);
        Assert.NotNull(Note.Read(text));
        string formatted = NoteFormatter.Format(syntax);
        Assert.True(formatted == NoteFormatter.Format(NoteSyntax.Parse(formatted)), name);
    }

    [Fact]
    public void A_line_of_the_longest_length_is_read_and_a_longer_one_is_kept_and_flagged()
    {
        string longest = Filled("ask ", "why ").TrimEnd().PadRight(ReadingLimits.LongestLine, '?');
        Assert.Equal(ReadingLimits.LongestLine, longest.Length);
        Assert.Empty(NoteSyntax.Parse(longest).Lines[0].Problems);
        Problem problem = Assert.Single(NoteSyntax.Parse(longest + "?").Lines[0].Problems);
        Assert.Equal(ProblemRules.LineTooLong, problem.Rule);
        Assert.Contains("1000", problem.Message, StringComparison.Ordinal);
    }

    private static string Filled(string start, string with)
    {
        int times = (ReadingLimits.LongestLine - start.Length) / with.Length;
        return start + string.Concat(Enumerable.Repeat(with, times));
    }

    private static string Binary()
    {
        byte[] bytes = new byte[200_000];
        new Random(20261004).NextBytes(bytes);
        return System.Text.Encoding.UTF8.GetString(bytes);
    }
}
