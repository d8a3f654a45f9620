using System.Collections.Immutable;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Features.Formatting;

/// <summary>
/// What an Enter does. Inside an entry the new line is indented. A date on its own is the head of a log already, so
/// nothing is written behind it: which other kinds there are is offered by completion. A second Enter on a line that holds
/// nothing takes the indent away again, ready for the next date. Free text that is cut in two stays free text; an Enter on a line of it
/// that holds nothing ends it.
/// </summary>
internal static class NewLine
{
    /// <summary>The edits after an Enter that made the line with this index.</summary>
    public static ImmutableArray<DocumentEdit> After(Document document, int index)
    {
        // in its own first line an entry begins, and before it the one above has ended
        if (index == 0 || document.Note.EntryAt(index) is not { } entry || entry.Line == index)
        {
            return [];
        }

        LineSyntax above = document.Syntax.Lines[index - 1];
        LineSyntax line = document.Syntax.Lines[index];
        if (above.Kind == LineKind.Blank)
        {
            return line.Kind == LineKind.Blank ? [.. Indent(above, index - 1, ""), .. Indent(line, index, "")] : [];
        }

        string indent = new(' ', NoteFormatter.EntryIndent);
        if (above is { Kind: LineKind.FreeText, FreeText.Length: 0 } && line.Kind == LineKind.Blank)
        {
            return [new DocumentEdit(new PlaceRange(new Place(index - 1, 0), new Place(index, line.Text.Length)), indent)];
        }

        return [.. above.Kind == LineKind.FreeText && line.Kind is not (LineKind.Blank or LineKind.FreeText)
            ? Indent(line, index, new string(' ', above.Indent) + "> ")
            : Indent(line, index, indent)];
    }

    /// <summary>Puts <paramref name="indent"/> in the place of the blanks that a line starts with.</summary>
    private static IEnumerable<DocumentEdit> Indent(LineSyntax line, int index, string indent)
    {
        if (!line.Text.AsSpan(0, line.Indent).SequenceEqual(indent))
        {
            yield return new DocumentEdit(new PlaceRange(new Place(index, 0), new Place(index, line.Indent)), indent);
        }
    }
}
