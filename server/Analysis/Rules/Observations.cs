using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Analysis.Rules;

/// <summary>Tells apart the observations of one line: <c>T 38.6 P 84 R 20</c> holds three.</summary>
public static class Observations
{
    /// <summary>The observations that stand in a line of an entry.</summary>
    public static IEnumerable<NoteItem> In(Entry entry, int line)
    {
        // the items stand in the order of their lines: look for the first of the line
        int low = 0;
        int high = entry.Items.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = entry.Items[middle].Line < line ? (middle + 1, high) : (low, middle);
        }

        for (; low < entry.Items.Length && entry.Items[low].Line == line; low++)
        {
            yield return entry.Items[low].Value;
        }
    }

    /// <summary>The one of a line's observations that <paramref name="span"/> is about; the first where none holds it, null where there is none.</summary>
    public static NoteItem? At(IEnumerable<NoteItem> ofLine, TextSpan span)
    {
        NoteItem? first = null;
        foreach (NoteItem item in ofLine)
        {
            if (SpansOf(item).Any(own => own.Start <= span.Start && span.End <= own.End))
            {
                return item;
            }

            first ??= item;
        }

        return first;
    }

    private static IEnumerable<TextSpan> SpansOf(NoteItem item)
    {
        TextSpan?[] spans = [item.Head.Span.Length == 0 ? null : item.Head.Span, item.Value?.Span, item.Site?.Span, item.Tag?.Span, item.Name?.Span, item.Note?.Span];
        return spans.OfType<TextSpan>().Concat(item.Words.Concat(item.Absent).Select(sign => sign.Span));
    }
}
