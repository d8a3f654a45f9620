using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Features.Symbols;

/// <summary>Where the parts of lines begin and end.</summary>
internal static class LineShape
{
    /// <summary>What a line says: without indent, comment, and the blanks before the comment. Empty where there is nothing.</summary>
    public static TextSpan Content(LineSyntax line)
    {
        int count = line.Marks.Length;
        while (count > 0 && line.Marks[count - 1].Kind == TokenKind.Comment)
        {
            count--;
        }

        int start = line.Indent;
        int end = count == 0 ? start : line.Marks[count - 1].Span.End;
        return TextSpan.Between(start, Math.Max(start, start + line.Text.AsSpan(start, Math.Max(0, end - start)).TrimEnd().Length));
    }

    /// <summary>The last line from <paramref name="first"/> up to, not including, <paramref name="end"/> that is not blank; <paramref name="first"/> when all are.</summary>
    public static int LastWritten(Document document, int first, int end)
    {
        int last = end - 1;
        while (last > first && document.Syntax.Lines[last].Kind == LineKind.Blank)
        {
            last--;
        }

        return last;
    }

    /// <summary>The range from the start of one line to the end of another.</summary>
    public static PlaceRange Lines(Document document, int first, int last) =>
        new(new Place(first, 0), new Place(last, document.Syntax.Lines[last].Text.Length));

    /// <summary>The line after the last one of the entry with this index; for -1, of the opening.</summary>
    public static int EndOf(Document document, int entry) =>
        entry + 1 < document.Note.Entries.Length ? document.Note.Entries[entry + 1].Line : document.Syntax.Lines.Length;
}
