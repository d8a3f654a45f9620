using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>What the observation that is being read says of its part so far.</summary>
internal static class ReadSigns
{
    /// <summary>True when the observation holds this sign in this sense already.</summary>
    public static bool HasSign(this Cursor at, DescribingWord word, Sense sense)
    {
        foreach (SlotValue slot in at.Values)
        {
            if (slot.Value is Described sign && ReferenceEquals(sign.Word, word) && sign.Sense == sense)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True when the observation says that nothing happened in a word of its own, such as the none of <c>vomit none</c>.</summary>
    public static bool HasNone(this Cursor at)
    {
        foreach (SlotValue slot in at.Values)
        {
            if (slot.Value is Described { Sense: Sense.Present, Word: { Word: "none", Part: not "any" } word } && word.Meanings.All(meaning => meaning.Level == Level.Expected))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The first sign of the part itself that is there, but for one that says that nothing happened.</summary>
    public static Described? PresentSign(this Cursor at)
    {
        foreach (SlotValue slot in at.Values)
        {
            if (slot.Value is Described { Sense: Sense.Present } sign && at.Vocabulary.Fixed("absent").Find(sign.Word.Word) is null)
            {
                return sign;
            }
        }

        return null;
    }

    /// <summary>The first sign that was written behind the head, is there, and is as expected: the well of "not eating well".</summary>
    public static Described? SignBehindHead(this Cursor at)
    {
        foreach (SlotValue slot in at.Values)
        {
            if (slot.Value is Described { Sense: Sense.Present, Word.Part: not "any" } sign && sign.Span.Start >= at.HeadSpan.End
                && (sign.Word.Meanings.All(meaning => meaning.Level == Level.Expected) || (TextSpan.Between(at.HeadSpan.End, sign.Span.Start).In(at.Line).IsWhiteSpace() && at.Vocabulary.Fixed("not-eating").Find(sign.Word.Word) is null)))
            {
                return sign;
            }
        }

        return null;
    }

    /// <summary>True when a sign that is there says that something is gone.</summary>
    public static bool SaysGone(this Cursor at)
    {
        foreach (SlotValue slot in at.Values)
        {
            if (slot.Value is Described { Sense: Sense.Present, Word: { Part: "any", Word: "gone" or "resolved" } })
            {
                return true;
            }
        }

        return false;
    }
}
