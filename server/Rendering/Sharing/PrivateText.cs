using System.Globalization;
using System.Text;

namespace HealthNotes.Rendering.Sharing;

/// <summary>Finds what reaches a person in free text: telephone numbers, mail addresses, and names given.</summary>
internal static class PrivateText
{
    /// <summary>A run of at least so many digits is a telephone or chip number, and no value of a note (common practice, no source).</summary>
    private const int LeastDigits = 7;

    private const int DateLength = 10;

    private const string Marks = " -()+\u00A0";
    private const string MarksInWords = Marks + "./";

    /// <summary>The line with every one of them replaced by <paramref name="mark"/>.</summary>
    /// <param name="line">The line.</param>
    /// <param name="names">Names, the longest first.</param>
    /// <param name="mark">What stands in their place.</param>
    /// <param name="isValue">True for a line with a measured value: points and strokes between digits belong to it (<c>111.4-102.1lb</c>).</param>
    public static string Masked(string line, IEnumerable<string> names, string mark, bool isValue)
    {
        foreach (string name in names)
        {
            line = line.Replace(name, mark, StringComparison.OrdinalIgnoreCase);
        }

        return WithoutMail(WithoutNumbers(line, mark, isValue ? Marks : MarksInWords), mark);
    }

    private static string WithoutNumbers(string line, string mark, string between)
    {
        var text = new StringBuilder();
        int at = 0;
        while (at < line.Length)
        {
            if (IsDate(line, at))
            {
                text.Append(line, at, DateLength);
                at += DateLength;
                continue;
            }

            (int end, int digits) = Run(line, at, between);
            if (digits >= LeastDigits)
            {
                text.Append(mark);
                at = end;
            }
            else
            {
                int next = Math.Max(end, at + 1);
                text.Append(line, at, next - at);
                at = next;
            }
        }

        return text.ToString();
    }

    /// <summary>Digits with the marks that stand between them in a telephone number; where they end, and how many there are.</summary>
    private static (int End, int Digits) Run(string line, int from, string between)
    {
        int digits = 0;
        int end = from;
        for (int at = from; at < line.Length && (char.IsDigit(line[at]) || between.Contains(line[at], StringComparison.Ordinal)) && !IsDate(line, at); at++)
        {
            if (char.IsDigit(line[at]))
            {
                digits++;
                end = at + 1;
            }
            else if (digits == 0 && line[at] is not ('+' or '('))
            {
                break;
            }
            else if (at > end && line[at] is not ('(' or ')') && line[at - 1] is not ('(' or ')'))
            {
                // two marks in a row end a number, unless one is a bracket
                break;
            }
        }

        return (end, digits);
    }

    private static bool IsDate(string line, int at) => at + DateLength <= line.Length
        && DateOnly.TryParseExact(line.AsSpan(at, DateLength), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _);

    /// <summary>A word with an at-sign inside and a dot after it; a tag (<c>@lower</c>) starts with its at-sign.</summary>
    private static string WithoutMail(string line, string mark)
    {
        if (!line.Contains('@', StringComparison.Ordinal))
        {
            return line;
        }

        string[] words = line.Split(' ');
        return string.Join(' ', words.Select(word => word.IndexOf('@', StringComparison.Ordinal) is > 0 and int at && word.IndexOf('.', at) > at ? mark : word));
    }
}
