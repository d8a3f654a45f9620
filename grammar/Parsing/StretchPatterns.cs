using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>What only several words of a stretch tell: an exception, where a breed ends, that a dose was given after all.</summary>
internal static class StretchPatterns
{
    private const int MostBeforeTime = 3;

    /// <summary>True, with a report, for an exception from what is not so, is over or is fine: <c>no lumps except left flank</c>, <c>nothing but blood</c>.</summary>
    public static bool IsExcepted(Cursor at, Head head, bool none)
    {
        int joined = at.Phrase(at.Vocabulary.Small, at.At, out ModifierWord? small);
        bool turns = joined > 0 && small!.Word is "but" or "however";
        int exception = at.Phrase(at.Vocabulary.Exceptions, at.At, out _);
        int twist = at.Phrase(at.Vocabulary.Twists, at.At, out _);
        if (!turns && exception == 0 && twist == 0)
        {
            return false;
        }

        bool denied = none || head.Negation is not null || head.Lead?.Means == LeadMeans.None || at.Holds(SlotKind.Ok) || at.HasNone() || at.Pending is not null
            || at.Filled.Any(slot => slot.Value is Described { Sense: not Sense.Present } || slot.Value is Described { Word: { Part: "any", Word: "gone" or "resolved" } } || slot.Value is Described sign && sign.Word.Meanings.All(meaning => meaning.Level == Level.Expected) && sign.Word.Part != "any");
        bool but = turns && (at.Pending is not null || head.Negation is not null || none)
            && WordSlots.StartsSign(at, at.At + joined);
        int count = but ? joined : denied ? exception : 0;
        count = count > 0 ? count : twist;
        if (count == 0)
        {
            return false;
        }

        if (count == exception && at.Filled is [{ Kind: SlotKind.Ok }] && at.HeadSpan.Length > 0 && head.Negation is null)
        {
            // "claws ok except right front": that the others are fine stays as it was written
            TextSpan others = TextSpan.Between(at.Parts[0].Span.Start, at.SpanOf(at.At, count).End);
            at.Remove(SlotKind.Ok);
            at.Mark(TokenKind.Text, others);
            at.Remark.Add(others);
            at.At += count;
            return false;
        }

        at.Report(new Problem(ProblemRules.OpenNegation, at.SpanOf(at.At, count), $"`{at.SpanOf(at.At, count).In(at.Line)}`: write what is there on a line of its own, and what is not on another."));
        return true;
    }

    /// <summary>Where a breed among other facts of one line ends: at its comma, or before the next fact; null where it is the last.</summary>
    public static int? BreedEnd(Cursor at, bool atComma)
    {
        int index = 1;
        while (index < at.Parts.Count && at.Vocabulary.Abbreviations("sex").Find(at.TextAt(index)) is null && !(at.StartsSegment(index) && (atComma || Head.Fact(at, index) is not null || Head.At(at, index, out _) is { Word.Kind: WordKind.Fact })))
        {
            index++;
        }

        return atComma || index < at.Parts.Count ? index : null;
    }

    /// <summary>Where the word stands that a dose was given after all, with its time behind it; null where none does.</summary>
    public static int? GivenLater(Cursor at)
    {
        for (int index = at.At; index + 1 < at.Parts.Count; index++)
        {
            if (index > at.At && at.Vocabulary.DoseEvents.Find(at.TextAt(index)) is { Word: "gave" } && at.Vocabulary.Before.Find(at.TextAt(index - 1)) is null)
            {
                int time = index + 1;
                while (time < at.Parts.Count && time <= index + MostBeforeTime && TimeReader.Within(at, time, out _) is null && (at.Is(time, "it") || at.Is(time, "them") || at.Is(time, "this") || at.Is(time, "late") || at.Vocabulary.Fixed("day").Find(at.TextAt(time)) is not null))
                {
                    time++;
                }

                return TimeReader.Within(at, time, out _) is not null ? index : null;
            }
        }

        return null;
    }
}
