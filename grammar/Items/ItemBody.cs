using System.Collections.Immutable;
using System.Runtime.InteropServices;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Items;

/// <summary>What one slot of a line holds; the type of <paramref name="Value"/> is the slot's own.</summary>
public readonly record struct SlotValue(SlotKind Kind, object Value);

/// <summary>
/// What a line says behind its word, slot by slot in the order in which it was read. Immutable. A new form of value needs no
/// new member here: its slot puts it in, and whoever knows the slot takes it out.
/// </summary>
public sealed class ItemBody(ImmutableArray<SlotValue> filled)
{
    /// <summary>Nothing said.</summary>
    public static ItemBody Empty { get; } = new([]);

    /// <summary>Every slot that holds something; a slot that may hold several things stands several times.</summary>
    public ImmutableArray<SlotValue> Filled => filled;

    /// <summary>The signs that are there. One that is negated or over is never among them.</summary>
    public ImmutableArray<Described> Words { get; } = Signs(filled, there: true);

    /// <summary>The signs that were looked for and are not there, or are there no longer.</summary>
    public ImmutableArray<Described> Absent { get; } = Signs(filled, there: false);

    /// <summary>The first thing of a type that a slot other than <paramref name="except"/> holds, or null. The strength of a tablet is not an amount that was given.</summary>
    public T? First<T>(SlotKind? except = null)
        where T : class
    {
        foreach (SlotValue slot in filled)
        {
            if (slot.Value is T value && slot.Kind != except && slot.Kind != SlotKind.StrengthOfOne)
            {
                return value;
            }
        }

        return null;
    }

    /// <summary>What the slot holds, or null.</summary>
    public T? Get<T>(SlotKind kind)
        where T : class
    {
        foreach (SlotValue slot in filled)
        {
            if (slot.Kind == kind)
            {
                return slot.Value as T;
            }
        }

        return null;
    }

    /// <summary>The same with other times.</summary>
    public ItemBody With(Schedule schedule) => new([.. filled.Select(slot => slot.Value is Schedule ? slot with { Value = schedule } : slot)]);

    /// <summary>Everything of a type, in reading order.</summary>
    public IEnumerable<T> All<T>(SlotKind kind) => filled.Where(slot => slot.Kind == kind).Select(slot => slot.Value).OfType<T>();

    private static ImmutableArray<Described> Signs(ImmutableArray<SlotValue> filled, bool there)
    {
        int count = 0;
        foreach (SlotValue slot in filled)
        {
            count += slot.Value is Described sign && (sign.Sense == Sense.Present) == there ? 1 : 0;
        }

        if (count == 0)
        {
            return [];
        }

        var signs = new Described[count];
        count = 0;
        foreach (SlotValue slot in filled)
        {
            if (slot.Value is Described sign && (sign.Sense == Sense.Present) == there)
            {
                signs[count++] = sign;
            }
        }

        return ImmutableCollectionsMarshal.AsImmutableArray(signs);
    }
}
