using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Features.Actions.Lines;

/// <summary>Edits that put in or take away whole lines, with the line breaks the note has there.</summary>
internal static class WholeLines
{
    /// <summary>Puts lines in below a line; its own line break is theirs too.</summary>
    public static DocumentEdit InsertBelow(Document document, int line, IEnumerable<string> lines)
    {
        string ending = EndingNear(document, line);
        return document.Syntax.Lines[line].Ending.Length > 0
            ? DocumentEdit.Insert(line + 1, 0, string.Concat(lines.Select(text => text + ending)))
            : DocumentEdit.Insert(line, document.Syntax.Lines[line].Text.Length, string.Concat(lines.Select(text => ending + text)));
    }

    /// <summary>Puts lines in above a line.</summary>
    public static DocumentEdit InsertAbove(Document document, int line, IEnumerable<string> lines)
    {
        string ending = EndingNear(document, line);
        return DocumentEdit.Insert(line, 0, string.Concat(lines.Select(text => text + ending)));
    }

    /// <summary>Takes lines away, with their line breaks; the last line of a note takes the break before it along.</summary>
    public static DocumentEdit Remove(Document document, int first, int last)
    {
        LineSyntax end = document.Syntax.Lines[last];
        return end.Ending.Length > 0 ? new DocumentEdit(new PlaceRange(new Place(first, 0), new Place(last + 1, 0)), "")
            : first > 0 ? new DocumentEdit(new PlaceRange(new Place(first - 1, document.Syntax.Lines[first - 1].Text.Length), new Place(last, end.Text.Length)), "")
            : new DocumentEdit(new PlaceRange(new Place(0, 0), new Place(last, end.Text.Length)), "");
    }

    /// <summary>The line break to write near a line: its own, else that of the nearest line above that has one.</summary>
    public static string EndingNear(Document document, int line)
    {
        for (int index = line; index >= 0 && index >= line - 1; index--)
        {
            if (document.Syntax.Lines[index].Ending is { Length: > 0 } ending)
            {
                return ending;
            }
        }

        return "\n";
    }

    /// <summary>The last line of what belongs to a line: the free text indented below it, comments between included.</summary>
    public static int LastOf(Document document, int line)
    {
        int last = line;
        int indent = document.Syntax.Lines[line].Indent;
        for (int index = line + 1; index < document.Syntax.Lines.Length; index++)
        {
            LineSyntax below = document.Syntax.Lines[index];
            if (below.Kind == LineKind.FreeText && below.Indent > indent)
            {
                last = index;
            }
            else if (below.Kind != LineKind.Comment || last > line)
            {
                break;
            }
        }

        return last;
    }

    /// <summary>A line and what belongs to it, as they read when the line itself is indented by so many blanks.</summary>
    public static IEnumerable<string> Reindented(Document document, int line, int indent)
    {
        int before = document.Syntax.Lines[line].Indent;
        for (int index = line; index <= LastOf(document, line); index++)
        {
            string text = document.Syntax.Lines[index].Text;
            int taken = Math.Min(before, document.Syntax.Lines[index].Indent);
            yield return new string(' ', indent) + text[taken..];
        }
    }
}
