using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Numerics;
using HealthNotes.Analysis.Checks;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Features.Lenses;

/// <summary>Tells how far a check got. The items are the bits of a number, so that thousands of checks are told without garbage.</summary>
internal sealed class CheckProgress
{
    private readonly ImmutableArray<CheckItem> items;
    private readonly FrozenDictionary<string, int> bits;
    private readonly ulong parts;

    public CheckProgress(ImmutableArray<CheckItem> items)
    {
        this.items = items;
        bits = Enumerable.Range(0, items.Length).ToFrozenDictionary(i => items[i].Word.Word, i => i);
        for (int i = 0; i < items.Length; i++)
        {
            parts |= items[i].IsMeasured ? 0 : 1UL << i;
        }
    }

    /// <summary>What an entry has looked at, and what it says was left out.</summary>
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

    /// <summary>In words: <c>9 of 16 looked at, 1 skipped, next: gums</c>.</summary>
    public string Title(Seen seen, bool withNext)
    {
        // a part may be refused on one side and looked at on the other; and what is skipped is not among the rest that is ok
        ulong skipped = seen.Skipped & ~seen.Looked;
        ulong looked = seen.Looked | (seen.RestOk ? parts & ~skipped : 0);
        ulong all = items.Length == 64 ? ulong.MaxValue : (1UL << items.Length) - 1;
        ulong missing = all & ~looked & ~skipped;
        string left = skipped == 0 ? "" : $", {BitOperations.PopCount(skipped)} skipped";
        string next = withNext && missing != 0 ? $", next: {items[BitOperations.TrailingZeroCount(missing)].Word.Word}" : "";
        return $"{BitOperations.PopCount(looked)} of {items.Length} looked at{left}{next}";
    }

    private ulong Bit(string word) => bits.TryGetValue(word, out int bit) ? 1UL << bit : 0;

    /// <summary>What was looked at and left out, as bits.</summary>
    internal readonly record struct Seen(ulong Looked, ulong Skipped, bool RestOk)
    {
        /// <summary>Both together: a check may be written in several entries of its day.</summary>
        public static Seen operator |(Seen left, Seen right) => new(left.Looked | right.Looked, left.Skipped | right.Skipped, left.RestOk || right.RestOk);
    }
}
