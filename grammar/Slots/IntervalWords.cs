using System.Globalization;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>How often and how long, in one word or number: <c>BID</c>, <c>q8-12h</c>, <c>1-0-1</c>, <c>2x daily</c>, <c>x7d</c>, <c>3yr</c>. Reads only; nothing is kept.</summary>
internal static class IntervalWords
{
    /// <summary>The interval that words for times a day stand for: <c>BID</c>, <c>twice a day</c>, <c>1-0-1</c>.</summary>
    public static string? Daily(Cursor at, int index, out int count)
    {
        count = at.Phrase(at.Vocabulary.Daily, index, out FixedWord? word);
        return word?.Word;
    }

    public static Abbreviation? Short(Cursor at, int index) => at.Vocabulary.ScheduleShort.Find(at.TextAt(index));

    /// <summary><c>q12h</c>: every 12 hours; <c>q8-12h</c>: every 8 to 12.</summary>
    public static bool EveryAbbreviation(ReadOnlySpan<char> text, out int digits)
    {
        digits = 0;
        while (digits + 1 < text.Length && (Scanners.IsDigit(text[digits + 1]) || (digits > 0 && text[digits + 1] is '-' or '–')))
        {
            digits++;
        }

        return text.Length > 2 && text[0] is 'q' or 'Q' && digits is > 0 and <= 9 && digits + 1 < text.Length;
    }

    /// <summary>True for words that say how often something is to be done: <c>every other day</c>, <c>2x a day</c>.</summary>
    public static bool IsInterval(NoteVocabulary vocabulary, string text) => text.StartsWith("every ", StringComparison.OrdinalIgnoreCase)
        || text.EndsWith(" a day", StringComparison.OrdinalIgnoreCase) || vocabulary.Fixed("daily").Find(text) is not null || vocabulary.ScheduleShort.Find(text) is not null;

    /// <summary>A length of time alone: <c>recheck ear 2 weeks</c>, <c>vaccine rabies 3yr</c>.</summary>
    public static Amount? BareLength(Cursor at, NumberPart part, out int count)
    {
        bool apart = part.First.Unit.Length == 0;
        count = apart ? 2 : 1;
        TextSpan unitSpan = !apart ? part.First.Unit : at.IsWord(at.At + 1) ? at.Parts[at.At + 1].Span : default;
        return !part.Second.Exists && at.Vocabulary.Units.Find(unitSpan.In(at.Line)) is { Quantity: Quantity.Time } unit && at.Digits(part.First.Digits) is { } number
            ? new Amount(number, unit, Bound: at.BoundOf(part))
            : null;
    }

    /// <summary><c>1-0-1</c>: doses in the morning, at noon and in the evening.</summary>
    public static string? Parts(Cursor at, NumberPart part)
    {
        if (!at.Word.Has(SlotKind.Medicine) || !part.Third.Exists || part.Third.Sign(at.Line) != '-' || part.Span.Length != 5)
        {
            return null;
        }

        return at.TextOf(part).ToString() switch
        {
            "1-0-1" => "12h",
            "1-1-1" => "8h",
            "1-0-0" or "0-0-1" or "0-1-0" => "24h",
            _ => null,
        };
    }

    /// <summary><c>2x daily</c>, <c>3 times a day</c>, <c>1x/day</c>, <c>2 x day</c>.</summary>
    public static string? TimesADay(Cursor at, NumberPart part, out int count)
    {
        count = 0;
        if (!at.Word.Has(SlotKind.Medicine) || part.Second.Exists || at.BoundOf(part) != Bound.Exact || at.Digits(part.First.Digits) is not { } times || times is not (1 or 2 or 3 or 4 or 6))
        {
            return null;
        }

        string unit = part.First.Unit.In(at.Line).ToString().ToLowerInvariant();
        int index = at.At + 1;
        if (unit is "x/day" or "x/d" or "/day" or "xday")
        {
            count = 1;
        }
        else
        {
            bool marked = unit is "x" or "×";
            if (unit.Length == 0 && (at.Is(index, "x") || at.Is(index, "times") || at.Is(index, "time")))
            {
                marked = true;
                index++;
            }

            index += at.Is(index, "a") || at.Is(index, "per") ? 1 : 0;
            count = marked && (at.Is(index, "daily") || at.Is(index, "day") || at.Is(index, "d")) ? index + 1 - at.At : 0;
        }

        return count == 0 ? null : $"{24 / (int)times}h";
    }

    /// <summary><c>BID 5/7</c>, <c>2/52</c>: for so many days or weeks, as clinics in some countries write it.</summary>
    public static Amount? Sevenths(Cursor at, NumberPart part) => part is { BoundSpan.Length: 0, Third.Exists: false, First.Unit.Length: 0, Second.Unit.Length: 0 } && part.Second.Sign(at.Line) == '/'
        && at.Digits(part.First.Digits) is { } number && at.TextOf(part).EndsWith("/7") | at.TextOf(part).EndsWith("/52")
            ? new Amount(number, at.Vocabulary.Units.Find(at.TextOf(part).EndsWith("/7") ? "d" : "w")!)
            : null;

    /// <summary><c>x7d</c>, <c>x10days</c>: for so long.</summary>
    public static Amount? Lasting(Cursor at)
    {
        ReadOnlySpan<char> text = at.TextOf(at.Part);
        int digits = text.Length > 2 && text[0] is 'x' or 'X' ? text[1..].IndexOfAnyExceptInRange('0', '9') : 0;
        return digits is > 0 and < 4 && at.Vocabulary.Units.Find(text[(digits + 1)..]) is { Quantity: Quantity.Time } unit
            ? new Amount(decimal.Parse(text.Slice(1, digits), CultureInfo.InvariantCulture), unit)
            : null;
    }
}
