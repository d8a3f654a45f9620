using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>Since when a sign is there: a date, a day of the week, yesterday, a part of the day. All else behind <c>since</c> is a remark.</summary>
internal sealed class SinceSlot() : SlotReader(SlotKind.Since)
{
    public override string Hint(LineWord word) => "since when, such as since 2026-10-20";

    /// <summary>True for the <c>since 2026-11-27</c> of <c>weak when jumping since 2026-11-27</c>.</summary>
    public static bool IsAhead(Cursor at, int index) => at.Word.Has(SlotKind.Since) && !at.Holds(SlotKind.Since) && at.Is(index, "since") && Dates.Starts(at, index + 1, yearless: true);

    public override bool BindWord(Cursor at)
    {
        if (!at.Is(at.At, "since") || at.Blocked || at.InRemark || at.Holds(SlotKind.Since))
        {
            return false;
        }

        (int At, int Tokens, int Problems, int Filled) before = at.Here;
        int start = at.At;
        at.At += at.Is(at.At + 1, "last") || at.Is(at.At + 1, "the") || at.Is(at.At + 1, "this") ? 2 : 1;
        PartialDate? date = null;
        DayOfWeek? weekday = null;
        int ago = 0;
        bool found = at.HasPart && Dates.Starts(at, at.At, yearless: true);
        if (found && (date = Dates.Take(at, yearless: true)) is null)
        {
            return true;
        }

        while (date is null && at.IsWord(at.At) && !(found && at.StartsSegment(at.At)) && at.Vocabulary.Fixed("day").Find(at.TextOf(at.Part)) is { } day)
        {
            // "yesterday evening", "Saturday night", "last night"
            weekday ??= Enum.TryParse(day.Word, ignoreCase: true, out DayOfWeek named) ? named : null;
            ago = day.Word == "yesterday" || (!found && at.Is(at.At - 1, "last")) ? 1 : ago;
            found = true;
            at.At++;
        }

        if (!found || !(date is not null || at.At >= at.Parts.Count || at.StartsSegment(at.At) || WordSlots.StartsSign(at, at.At) || Modifiers.At(at, at.At) is not null || at.Phrase(at.Vocabulary.Small, at.At, out _) > 0))
        {
            at.Restore(before);
            return false;
        }

        TextSpan span = at.SpanOf(start, at.At - start);
        at.Mark(TokenKind.Date, span);
        at.Add(SlotKind.Since, new SinceDay(span, at.WithSingleBlanks(span), date, weekday, ago));
        return true;
    }
}
