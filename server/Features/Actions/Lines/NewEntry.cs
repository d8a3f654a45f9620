using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Features.Actions.Lines;

/// <summary>An entry at the end of a note, a blank line before it, with the line breaks the note has.</summary>
internal static class NewEntry
{
    /// <summary>The edit, and the index its first line will have.</summary>
    public static (DocumentEdit Edit, int FirstLine) AtEnd(Document document, IEnumerable<string> lines)
    {
        int last = document.Syntax.Lines.Length - 1;
        LineSyntax end = document.Syntax.Lines[last];
        string ending = WholeLines.EndingNear(document, last);
        bool empty = end.Text.Length == 0;
        bool apart = end.Kind == LineKind.Blank && (last == 0 || document.Syntax.Lines[last - 1].Kind == LineKind.Blank);
        string before = apart ? (empty ? "" : ending) : empty ? ending : ending + ending;
        int first = last + (before.Length / ending.Length);
        return (DocumentEdit.Insert(last, end.Text.Length, before + string.Concat(lines.Select(line => line + ending))), first);
    }
}
