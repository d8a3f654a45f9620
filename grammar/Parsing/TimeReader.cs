using System.Globalization;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Grammar.Parsing;

/// <summary>Reads a time of day: <c>07:30</c>, <c>7:30</c>, <c>7:30pm</c>.</summary>
internal static class TimeReader
{
    private const int BareLength = 4;

    /// <summary>Takes a time without its colon, as clinics write it: <c>0730</c>. False for any other number.</summary>
    public static bool TryTakeBare(string text, int start, int end, out TimeOnly? time, out int timeEnd)
    {
        time = null;
        timeEnd = start + BareLength;
        if (timeEnd >= end || !(Scanners.IsBlank(text[timeEnd]) || Scanners.IsSeparator(text[timeEnd]))
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

        ReadOnlySpan<char> written = text.AsSpan(start, timeEnd - start);
        int colon = written.IndexOf(':');
        if (colon is < 1 or > 2 || written.Length < colon + 3 || !int.TryParse(written[..colon], NumberStyles.None, CultureInfo.InvariantCulture, out int hour)
            || !int.TryParse(written.Slice(colon + 1, 2), NumberStyles.None, CultureInfo.InvariantCulture, out int minute))
        {
            return false;
        }

        ReadOnlySpan<char> half = written[(colon + 3)..];
        bool pm = half.Equals("pm", StringComparison.OrdinalIgnoreCase);
        bool am = half.Equals("am", StringComparison.OrdinalIgnoreCase);
        bool known = (half.IsEmpty && hour <= 23) || ((am || pm) && hour is >= 1 and <= 12);
        if (!known || minute > 59)
        {
            problem = new Problem(ProblemRules.BadTime, TextSpan.Between(start, timeEnd),
                $"`{written}` is not a time of day; write hours and minutes such as 07:30 or 18:05");
            return true;
        }

        time = new TimeOnly(am || pm ? (hour % 12) + (pm ? 12 : 0) : hour, minute);
        return true;
    }
}
