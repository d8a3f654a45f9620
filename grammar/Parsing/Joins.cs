using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>What words between two observations tell: whether they join the same again, another part, another medicine, or deny what follows.</summary>
internal static class Joins
{
    private const int MostInNegation = 3;

    /// <summary>True for the <c>and</c> of <c>ate half of her breakfast and none of her dinner</c>, <c>1/4 cup kibble plus 2 oz canned</c>.</summary>
    public static bool Same(Cursor at, int index) => at.Word.Has(SlotKind.Portion) && Joining(at, index) is > 0 and var joined
        && (at.First<NoteValue>() is Portion ? at.Phrase(at.Vocabulary.Portions, index + joined, out _) > 0 : at.First<NoteValue>() is not null && IsAmountAhead(at, index + joined));

    /// <summary>True where a joining word, a place and a part of the body with a sign of its own stand: <c>sneezed a few times and the left eye is watering</c>.</summary>
    public static bool Other(Cursor at, int index)
    {
        int part = index + Joining(at, index);
        if (part == index)
        {
            return false;
        }

        int Skipped(int from) => Math.Max(at.Phrase(at.Vocabulary.Sides, from, out _), at.Phrase(at.Vocabulary.Small, from, out _));
        while (Skipped(part) is > 0 and var count)
        {
            part += count;
        }

        if (Head.At(at, part, out int length) is not { Lead: null, Word.Kind: WordKind.Exam } other || other.Word == at.Word)
        {
            return false;
        }

        part += length;
        while (Skipped(part) is > 0 and var count)
        {
            part += count;
        }

        return at.Phrase(at.Vocabulary.Describing(other.Word), part, out _) > 0;
    }

    /// <summary>How many parts join a second value to the first: <c>and</c>, <c>but only the</c>; 0 where none do.</summary>
    public static int Joining(Cursor at, int index)
    {
        if (!at.IsWord(index) || at.Vocabulary.Fixed("joins-same").Find(at.TextAt(index)) is null)
        {
            return index < at.Parts.Count && at.TextAt(index) is "&" or "+" ? 1 : 0;
        }

        int count = at.Is(index + 1, "only") ? 2 : 1;
        return count + (at.Is(index + count, "the") ? 1 : 0);
    }

    /// <summary>True for <c>1/4 cup</c>, <c>30g</c>: a number with a unit of food.</summary>
    public static bool IsAmountAhead(Cursor at, int index)
    {
        if (index >= at.Parts.Count || at.Parts[index] is not NumberPart number)
        {
            return false;
        }

        if (number is { Second.Exists: false, First.Unit.Length: 0 } && index + 1 < at.Parts.Count && at.Parts[index + 1] is NumberPart { Second.Exists: true } part && part.Second.Sign(at.Line) == '/')
        {
            // "1 1/4 cups"
            return IsAmountAhead(at, index + 1);
        }

        Operand last = number.Second.Exists ? number.Second : number.First;
        return at.Vocabulary.Units.Find(last.Unit.Length > 0 ? last.Unit.In(at.Line) : at.IsWord(index + 1) ? at.TextAt(index + 1) : "") is { } unit && unit.Quantity is Quantity.Mass or Quantity.Volume or Quantity.Portion && Numbers.FitsAny(at, unit);
    }

    /// <summary>True where another medicine starts: <c>gave carprofen 75mg, gabapentin 100mg</c>.</summary>
    public static bool MedicineStarts(Cursor at, int index) => at.Word.Has(SlotKind.Medicine) && at.IsWord(index) && (at.StartsSegment(index) || (index > 0 && at.Vocabulary.Small.Find(at.TextAt(index - 1)) is { Kind: ModifierKind.JoinsAnd }))
        && (at.Phrase(at.Vocabulary.Medicines, index, out _) > 0
            || (index + 1 < at.Parts.Count && at.Parts[index + 1] is NumberPart { First.Unit.Length: > 0 } number && !NameSlots.IsOrdinary(at.Vocabulary, at.TextAt(index).ToString())
                && at.Vocabulary.Units.Find(number.First.Unit.In(at.Line)) is { Word: "mg" or "ml" or "ug" }));

    /// <summary>True for the words of a phrase that says by itself that something is not there: <c>not eating</c>.</summary>
    public static bool StartsWithNegation(NoteVocabulary vocabulary, string[] words) =>
        Enumerable.Range(1, Math.Min(words.Length, MostInNegation)).Any(count => vocabulary.Before.Find(string.Join(' ', words[..count])) is not null);
}
