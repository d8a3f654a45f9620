using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Features.Hints;

/// <summary>
/// The entry before of the same kind, for entries asked in file order. The way back to it is gone only once for each
/// kind; from there on what was passed is remembered.
/// </summary>
internal sealed class EntriesBefore(ImmutableArray<Entry> entries)
{
    private readonly Dictionary<string, Entry?> last = [];
    private int from = -1;

    /// <summary>The index of the first entry whose head is at or below a line.</summary>
    public static int FirstFrom(ImmutableArray<Entry> entries, int line)
    {
        int low = 0;
        int high = entries.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = entries[middle].Line < line ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    /// <summary>The entry before <paramref name="index"/> of its kind that has a date, or null.</summary>
    public Entry? Of(int index)
    {
        if (from < 0)
        {
            from = index;
        }

        string kind = entries[index].Head.Kind;
        if (!last.TryGetValue(kind, out Entry? before))
        {
            for (int i = from - 1; i >= 0 && before is null; i--)
            {
                before = entries[i] is { Head: { Date: not null } head } entry && head.Kind == kind ? entry : null;
            }
        }

        last[kind] = entries[index].Head.Date is null ? before : entries[index];
        return before;
    }
}
