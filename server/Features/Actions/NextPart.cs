using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Checks;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Features.Actions;

/// <summary>Takes a check one part further.</summary>
public static class NextPart
{
    /// <summary>
    /// Takes the <c>#</c> from the next waiting line, from <paramref name="line"/> on, else from the first of the check, and puts the
    /// cursor behind its word. A bare line that is left gets its <c>#</c> back: nothing half written stays. Null where the line
    /// stands in no check and today has none, or where nothing waits.
    /// </summary>
    public static CheckEdit? After(Document document, int line)
    {
        Entry? check = document.Note.EntryAt(line) is { Head.Kind: "check" } here ? here
            : document.Note.Entries.LastOrDefault(entry => entry.Head.Date == document.Today && entry.Head.Kind == "check");
        if (check is null)
        {
            return null;
        }

        List<WaitingLine> waiting = [.. WaitingLine.In(document, check)];
        WaitingLine? left = waiting.Find(one => one.Bare && one.Line == line);
        WaitingLine? next = waiting.Find(one => one.Line >= line && one != left) ?? waiting.Find(one => one != left);
        return next is null ? null : new CheckEdit(Edit(document, next, left), new Place(next.Line, Written(document, next).Length));
    }

    private static DocumentEdit Edit(Document document, WaitingLine next, WaitingLine? left)
    {
        int from = Math.Min(next.Line, left?.Line ?? next.Line);
        int to = Math.Max(next.Line, left?.Line ?? next.Line);
        IEnumerable<string> lines = Enumerable.Range(from, to - from + 1).Select(line => line == next.Line ? Written(document, next)
            : line == left?.Line ? $"{IndentOf(document, line)}# {left.Text}" : document.Syntax.Lines[line].Text);
        var range = new PlaceRange(new Place(from, 0), new Place(to, document.Syntax.Lines[to].Text.Length));
        return new DocumentEdit(range, string.Join(WholeLines.EndingNear(document, from), lines));
    }

    private static string Written(Document document, WaitingLine waiting) => $"{IndentOf(document, waiting.Line)}{waiting.Text} ";

    private static string IndentOf(Document document, int line)
    {
        string text = document.Syntax.Lines[line].Text;
        return text[..(text.Length - text.AsSpan().TrimStart().Length)];
    }
}
