using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Features.Actions.Rewrites;

/// <summary>What is remarked at a line in free words: its comment, or the free text below it.</summary>
internal static class Remark
{
    private const int ShortestWord = 3;
    private const int MostWords = 2;

    /// <summary>Words that tell nothing apart.</summary>
    private static readonly string[] Filling =
        ["the", "one", "this", "that", "same", "and", "his", "her", "its", "with", "near", "just", "still", "again", "about", "left", "right", "lump", "wound", "place", "from", "has", "was", "not", "for"];

    /// <summary>The remark at a line, or null.</summary>
    public static string? At(Document document, int line)
    {
        LineSyntax syntax = document.Syntax.Lines[line];
        if (syntax.Marks[^1] is { Kind: TokenKind.Comment } comment)
        {
            string text = comment.Span.In(syntax.Text).TrimStart('#').Trim().ToString();
            return text.Length > 0 ? text : null;
        }

        return line + 1 < document.Syntax.Lines.Length && document.Syntax.Lines[line + 1] is { Kind: LineKind.FreeText } below && below.Indent > syntax.Indent
            && below.FreeText.Trim() is { Length: > 0 } free ? free : null;
    }

    /// <summary>A tag of the first telling words of a remark: <c>the lower one</c> is <c>lower</c>; null when it has none.</summary>
    public static string? Tag(string remark)
    {
        string[] words = [.. new string([.. remark.ToLowerInvariant().Select(c => char.IsAsciiLetterLower(c) ? c : ' ')])
            .Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Where(word => word.Length >= ShortestWord && !Filling.Contains(word)).Take(MostWords)];
        return words.Length == 0 ? null : string.Join('-', words);
    }
}
