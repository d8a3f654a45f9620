using System.Globalization;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Features.Actions.Lines;

/// <summary>The numbers in a piece of a line.</summary>
internal static class Numbers
{
    /// <summary>Where each number stands: digits with at most one decimal mark between them.</summary>
    public static List<TextSpan> In(string text, TextSpan within)
    {
        var found = new List<TextSpan>();
        int at = within.Start;
        while (at < within.End)
        {
            if (!char.IsAsciiDigit(text[at]))
            {
                at++;
                continue;
            }

            int start = at;
            bool marked = false;
            while (at < within.End && (char.IsAsciiDigit(text[at]) || (!marked && text[at] is '.' or ',' && at + 1 < within.End && char.IsAsciiDigit(text[at + 1]))))
            {
                marked |= !char.IsAsciiDigit(text[at]);
                at++;
            }

            found.Add(TextSpan.Between(start, at));
        }

        return found;
    }

    /// <summary>The number that ends just before <paramref name="end"/>, blanks between them allowed; null when none does.</summary>
    public static TextSpan? EndingAt(string text, int end)
    {
        int stop = text.AsSpan(0, end).TrimEnd().Length;
        List<TextSpan> numbers = In(text, TextSpan.Between(0, stop));
        return numbers.Count > 0 && numbers[^1].End == stop ? numbers[^1] : null;
    }

    /// <summary>The value of a number with either decimal mark; null when it is too long to be one.</summary>
    public static decimal? Value(ReadOnlySpan<char> digits) =>
        digits.Length <= 18 && decimal.TryParse(digits.ToString().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal value) ? value : null;
}
