using System.Collections.Frozen;
using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Record.Checks;

/// <summary>
/// Tells what a check looked at, what it left out on purpose, and what it does not name. The items are the bits of a number, so
/// that thousands of checks are told without garbage.
/// </summary>
public sealed class CheckCoverage
{
    private readonly FrozenDictionary<string, int> places;
    private readonly ulong parts;
    private readonly ulong all;

    /// <summary>Coverage of the items of a full check, at most 64.</summary>
    public CheckCoverage(ImmutableArray<CheckItem> items)
    {
        Items = items;
        places = Enumerable.Range(0, items.Length).ToFrozenDictionary(i => items[i].Word.Word, i => i);
        all = items.Length == 64 ? ulong.MaxValue : (1UL << items.Length) - 1;
        for (int i = 0; i < items.Length; i++)
        {
            parts |= items[i].IsMeasured ? 0 : 1UL << i;
        }
    }

    /// <summary>The items of a full check, head to tail.</summary>
    public ImmutableArray<CheckItem> Items { get; }

    /// <summary>What an entry has looked at, and what it says was left out. The entries of one day are joined with <c>|</c>.</summary>
    public Seen In(Entry entry)
    {
        ulong looked = 0;
        ulong skipped = 0;
        bool restOk = false;
        foreach (Placed<NoteItem> item in entry.Items)
        {
            if (item.Value is Skipped skip)
            {
                skipped |= Bit(skip.Item.Word);
            }
            else if (item.Value is RestOk)
            {
                restOk = true;
            }
            else
            {
                looked |= Bit(item.Value.Word.Word);
            }
        }

        return new Seen(looked, skipped, restOk);
    }

    /// <summary>
    /// The items looked at, left out with a word, and not named, as bits. A part may be refused on one side and looked at on the
    /// other: it counts as looked at. <c>else ok</c> speaks for the parts, never for a measurement or what was left out.
    /// </summary>
    public (ulong Looked, ulong Skipped, ulong Missing) Tell(Seen seen)
    {
        ulong skipped = seen.Skipped & ~seen.Looked;
        ulong looked = seen.Looked | (seen.RestOk ? parts & ~skipped : 0);
        return (looked, skipped, all & ~looked & ~skipped);
    }

    /// <summary>The items that some bits stand for, head to tail.</summary>
    public IEnumerable<CheckItem> Named(ulong bits) => Items.Where((_, i) => (bits >> i & 1) != 0);

    private ulong Bit(string word) => places.TryGetValue(word, out int bit) ? 1UL << bit : 0;

    /// <summary>What was looked at and left out, as bits.</summary>
    public readonly record struct Seen(ulong Looked, ulong Skipped, bool RestOk)
    {
        /// <summary>Both together: a check may be written in several entries of its day.</summary>
        public static Seen operator |(Seen left, Seen right) => new(left.Looked | right.Looked, left.Skipped | right.Skipped, left.RestOk || right.RestOk);
    }
}
