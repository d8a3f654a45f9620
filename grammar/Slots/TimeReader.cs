using System.Globalization;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>Reads a time of day: <c>07:30</c>, <c>7:30</c>, <c>7:30pm</c>.</summary>
internal static class TimeReader
{
    private const int BareLength = 4;

    /// <summary>How many words <c>in the late afternoon</c> has.</summary>
    private const int LongestHalf = 4;

    /// <summary>A time of day that stands among the parts of a line: <c>8am</c>, <c>6 pm</c>, <c>at 3:15pm</c>, <c>07:30</c>. Null where there is none.</summary>
    public static TimeOnly? Within(Cursor at, int index, out int count)
    {
        int first = index;
        if (at.Is(index - 1, "since") || at.Is(index - 1, "until") || at.Is(index - 1, "till") || at.Is(index - 1, "before") || at.Is(index - 1, "after")
            || (at.Is(index - 2, "since") && at.Vocabulary.Fixed("day").Find(at.TextAt(index - 1)) is not null))
        {
            // "no urine since 8am": not when it was seen
            count = 0;
            return null;
        }

        if (Clinic(at, index) is { } clinic)
        {
            count = 1;
            return clinic;
        }

        if (at.Word.Has(SlotKind.Medicine) && at.Word.Kind == WordKind.Care && at.First<FreeWords>() is not null && Dotted(at, index) is { } dotted)
        {
            // "meloxicam given 7.15 with breakfast"
            count = 1;
            return dotted;
        }

        index += (at.Is(index, "and") || at.Is(index, "&")) && index > 0 ? 1 : 0;
        bool joined = at.Is(index, "at") || at.Is(index, "@");
        index += joined ? 1 : 0;
        count = 0;
        if (joined && at.Phrase(at.Vocabulary.Fixed("noon"), index, out _) > 0)
        {
            count = index + 1 - first;
            return new TimeOnly(12, 0);
        }

        if (index >= at.Parts.Count || at.Parts[index] is not NumberPart { BoundSpan.Length: 0, Third.Exists: false } part
            || (part.Second.Exists && part.Second.Sign(at.Line) != ':'))
        {
            return null;
        }

        bool unit = part.First.Unit.Length > 0 || part.Second.Unit.Length > 0;
        if (!joined && !part.Second.Exists && !unit && !at.IsWord(index + 1))
        {
            return null;
        }

        ReadOnlySpan<char> clock = at.TextAt(index);
        if (clock[^1] == 'a' && at.IsWord(index + 1) && at.Vocabulary.Units.Find($"a {at.TextAt(index + 1)}") is not null)
        {
            // "11a minute"
            return null;
        }

        if (!joined && !part.Second.Exists && !(HalfLetter(clock) || at.Is(index + 1, "am") || at.Is(index + 1, "pm")
            || at.Is(index + 1, "a.m") || at.Is(index + 1, "p.m")))
        {
            return null;
        }

        string written = clock.ToString();
        bool half = false;
        if (at.Is(index + 1, "am") || at.Is(index + 1, "pm") || at.Is(index + 1, "a.m") || at.Is(index + 1, "p.m"))
        {
            index++;
            half = true;
            written += at.TextAt(index).ToString().Replace(".", "", StringComparison.Ordinal);
        }

        half |= HalfLetter(written);
        FixedWord? partOfDay = null;
        int words = half ? 0 : at.Phrase(at.Vocabulary.Fixed("half-day"), index + 1, out partOfDay);
        if (written.Contains('.') && !half && !joined)
        {
            // 1.25 in is a length
            return null;
        }

        count = index + 1 - first;
        TimeOnly? time = Read(written, hourAlone: joined && part.First.Unit.Length == 0);
        if (time is { } clockTime && Moved(clockTime, partOfDay) is { } moved)
        {
            (time, count) = (moved, count + words);
        }

        return time;
    }

    /// <summary>The time that is meant by <c>3.40 in the afternoon</c>; null where the words behind it do not go with it, or none are there.</summary>
    private static TimeOnly? Moved(TimeOnly time, FixedWord? partOfDay) => partOfDay?.Word switch
    {
        "pm" => time.Hour is >= 1 and < 12 ? time.AddHours(12) : time.Hour >= 12 ? time : null,
        "am" => time.Hour < 12 ? time : null,
        "night" => time.Hour is >= 6 and < 12 ? time.AddHours(12) : time.Hour == 12 ? time.AddHours(-12) : time,
        _ => null,
    };

    /// <summary>The time at the start of a line by the part of the day behind it, and where the words for that end.</summary>
    public static (TimeOnly Time, int End)? WithHalf(NoteVocabulary vocabulary, string text, int timeEnd, int end, TimeOnly time)
    {
        int stop = Math.Min(timeEnd + 1, end);
        for (int words = 0; words < LongestHalf && stop < end; words++)
        {
            int blank = text.AsSpan(stop, end - stop).IndexOfAny(' ', ',');
            stop = blank < 0 ? end : stop + blank;
            if (vocabulary.Fixed("half-day").Find(text.AsSpan(timeEnd + 1, stop - timeEnd - 1)) is { } word)
            {
                return Moved(time, word) is { } moved ? (moved, stop) : null;
            }

            stop++;
        }

        return null;
    }

    /// <summary>A time without its colon among the parts of a line, as clinics write it: <c>0730</c>, <c>@0715</c>. Behind a medicine, and elsewhere with its 0 or mark.</summary>
    private static TimeOnly? Clinic(Cursor at, int index)
    {
        if (index >= at.Parts.Count || (at.IsWord(index - 1) && Dates.Month(at.TextAt(index - 1)) is not null))
        {
            // the 2025 of "Aug 2025" is a year
            return null;
        }

        Part part = at.Parts[index];
        ReadOnlySpan<char> text = at.TextOf(part);
        bool marked = part.Kind == PartKind.Tag;
        text = marked ? text[1..] : text;
        bool may = marked || (part is NumberPart { BoundSpan.Length: 0 } && !at.Word.Has(SlotKind.Schedule) && (text[0] == '0' || at.Word.Has(SlotKind.Medicine) || (at.Word.Kind == WordKind.Vital && (at.First<NoteValue>() is not null || (at.Word.Has(SlotKind.Glucose) && index + 1 < at.Parts.Count && at.Parts[index + 1].Kind == PartKind.Number)))));
        return may && text.Length == BareLength && int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number / 100 <= 23 && number % 100 <= 59
            ? new TimeOnly(number / 100, number % 100)
            : null;
    }

    /// <summary>A time with a dot that no unit follows: <c>7.15</c>.</summary>
    private static TimeOnly? Dotted(Cursor at, int index) => index < at.Parts.Count && at.Parts[index] is NumberPart { BoundSpan.Length: 0, Second.Exists: false, First.Unit.Length: 0 } part
        && !Numbers.UnitFollows(at, part, index) && at.TextOf(part) is [.., '.', _, _] text ? Read(text) : null;

    /// <summary>True for <c>8am</c>, and <c>8a</c> as clinics write it.</summary>
    private static bool HalfLetter(ReadOnlySpan<char> clock) => clock.Length > 1 && clock[^1] is 'm' or 'M' or 'a' or 'p';

    /// <summary>Reads <c>07:30</c>, <c>7:30pm</c>, <c>8am</c>, <c>8a</c>; null for what is not a time. An hour alone needs <c>am</c>, <c>pm</c> or <paramref name="hourAlone"/>.</summary>
    public static TimeOnly? Read(ReadOnlySpan<char> written, bool hourAlone = false)
    {
        int letters = written.Length > 1 && written[^1] is 'a' or 'p' && Scanners.IsDigit(written[^2]) ? 1 : 2;
        ReadOnlySpan<char> half = written.Length > letters ? written[^letters..] : "";
        bool pm = half is "p" || half.Equals("pm", StringComparison.OrdinalIgnoreCase);
        bool am = half is "a" || half.Equals("am", StringComparison.OrdinalIgnoreCase);
        ReadOnlySpan<char> clock = am || pm ? written[..^letters].TrimEnd() : written;
        int mark = clock.IndexOfAny(':', '.', 'h');
        if ((mark < 0 && !(am || pm || hourAlone)) || (mark >= 0 && clock.Length - mark != 3)
            || !int.TryParse(mark < 0 ? clock : clock[..mark], NumberStyles.None, CultureInfo.InvariantCulture, out int hour))
        {
            return null;
        }

        int minute = 0;
        bool known = mark < 0 || int.TryParse(clock[(mark + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out minute);
        bool exists = am || pm ? hour is >= 1 and <= 12 : hour <= 23;
        return known && exists && minute <= 59 ? new TimeOnly(am || pm ? (hour % 12) + (pm ? 12 : 0) : hour, minute) : null;
    }

    /// <summary>Where the <c>am</c> or <c>pm</c> ends that stands apart behind a time; the end of the time where none does.</summary>
    public static int EndOfHalf(string text, int timeEnd, int end)
    {
        int half = timeEnd + 3;
        return half <= end && Scanners.IsBlank(text[timeEnd]) && (half == end || !char.IsLetter(text[half])) && text.AsSpan(timeEnd + 1, 2) is ['a' or 'A' or 'p' or 'P', 'm' or 'M'] ? half : timeEnd;
    }

    /// <summary>Takes <c>8am</c>, <c>6 pm</c> and the <c>8.15</c> of a phone's keyboard at the start of a line.</summary>
    public static bool TryTakeShort(string text, int start, int end, out TimeOnly? time, out int timeEnd)
    {
        timeEnd = start;
        while (timeEnd < end && !Scanners.IsBlank(text[timeEnd]) && !Scanners.IsSeparator(text[timeEnd]))
        {
            timeEnd++;
        }

        timeEnd = EndOfHalf(text, timeEnd, end);
        time = Read(text.AsSpan(start, timeEnd - start));
        return time is not null && timeEnd < end;
    }

    /// <summary>Takes a time without its colon, as clinics write it: <c>0730</c>. False for any other number.</summary>
    public static bool TryTakeBare(string text, int start, int end, out TimeOnly? time, out int timeEnd, bool last = false)
    {
        time = null;
        timeEnd = start + BareLength;
        if (timeEnd > end || (timeEnd == end ? !last : !(Scanners.IsBlank(text[timeEnd]) || Scanners.IsSeparator(text[timeEnd])))
            || !int.TryParse(text.AsSpan(start, BareLength), NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            || number / 100 > 23 || number % 100 > 59)
        {
            return false;
        }

        time = new TimeOnly(number / 100, number % 100);
        return true;
    }

    /// <summary>
    /// Takes the time that stands at <paramref name="start"/>. False when no time stands there. A time that does not exist
    /// (25:70) is taken too, with a problem and no value.
    /// </summary>
    public static bool TryTake(string text, int start, int end, out TimeOnly? time, out int timeEnd, out Problem? problem)
    {
        time = null;
        problem = null;
        timeEnd = start;
        while (timeEnd < end && !Scanners.IsBlank(text[timeEnd]) && !Scanners.IsSeparator(text[timeEnd]))
        {
            timeEnd++;
        }

        if (timeEnd > start && text[timeEnd - 1] == ':')
        {
            timeEnd--;
        }

        timeEnd = EndOfHalf(text, timeEnd, end);
        ReadOnlySpan<char> written = text.AsSpan(start, timeEnd - start);
        int colon = written.IndexOf(':');
        if (colon is < 1 or > 2 || written.Length < colon + 3 || !int.TryParse(written[..colon], NumberStyles.None, CultureInfo.InvariantCulture, out _)
            || !int.TryParse(written.Slice(colon + 1, 2), NumberStyles.None, CultureInfo.InvariantCulture, out _))
        {
            return false;
        }

        time = Read(written);
        problem = time is not null ? null : new Problem(ProblemRules.BadTime, TextSpan.Between(start, timeEnd),
            $"`{written}` is not a time of day; write hours and minutes such as 07:30 or 18:05");
        return true;
    }
}
