using System.Text;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Tests.Support;

/// <summary>Writes a tree so that a person can read it: each line's kind, its tokens, its problems and its meaning.</summary>
public static class TreeDump
{
    public static string Of(NoteSyntax syntax)
    {
        var text = new StringBuilder(syntax.ByteOrderMark ? "byte-order mark\n" : "");
        for (int index = 0; index < syntax.Lines.Length; index++)
        {
            Line(index + 1, syntax.Lines[index], text);
        }

        return text.ToString();
    }

    private static void Line(int number, LineSyntax line, StringBuilder text)
    {
        string ending = line.Ending.Replace("\r", "\\r").Replace("\n", "\\n");
        text.Append($"{number,3} {line.Kind} [{line.Text}] {ending}".TrimEnd()).Append('\n');
        foreach (Token token in line.Tokens.Where(token => token.Kind != TokenKind.Blank))
        {
            text.Append($"      {token.Kind,-10} {token.Span.Start,3}..{token.Span.End,-3} {token.Span.In(line.Text)}\n");
        }

        if (line.EntryHead is { } head)
        {
            text.Append($"      = {head.Date:yyyy-MM-dd} {head.Time:HH:mm} {head.Kind} {head.By}".TrimEnd()).Append('\n');
        }

        foreach (NoteItem item in line.Items)
        {
            text.Append($"      = {Meaning.Of(item)}\n");
        }

        foreach (Problem problem in line.Problems)
        {
            text.Append($"      ! {problem.Rule} {problem.Span.Start}..{problem.Span.End} {problem.Message}\n");
        }
    }
}
