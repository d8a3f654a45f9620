using System.Globalization;

namespace HealthNotes.Grammar.Scanning;

/// <summary>Turns the digits of a number into a decimal, with either decimal mark.</summary>
internal static class NumberText
{
    /// <summary>True for a fraction in one character: <c>½</c>.</summary>
    public static bool IsFraction(char c) => c is '½' or '¼' or '¾' or '⅓' or '⅔';

    /// <summary>Reads the number, or says in plain words why it is refused.</summary>
    public static bool TryRead(ReadOnlySpan<char> digits, out decimal number, out string? refusal)
    {
        number = 0;
        refusal = null;
        if (digits is [.. var before, var last] && IsFraction(last))
        {
            bool read = before.Length == 0 || TryRead(before.TrimEnd(' '), out number, out refusal);
            number += (decimal)char.GetNumericValue(last);
            return read;
        }

        int mark = digits.IndexOfAny('.', ',');
        int whole = mark < 0 ? digits.Length : mark;
        if (whole > ReadingLimits.MostDigits || digits.Length - whole > ReadingLimits.MostDigits)
        {
            refusal = "the number is too long";
            return false;
        }

        if (mark > 0 && digits[mark] == ',' && digits.Length - mark == 4 && digits[0] != '0')
        {
            refusal = $"{digits} can be read two ways; write {digits[..mark]}{digits[(mark + 1)..]} or {digits[..mark]}.{digits[(mark + 1)..].TrimEnd('0')}";
            return false;
        }

        Span<char> plain = stackalloc char[digits.Length];
        digits.CopyTo(plain);
        if (mark >= 0)
        {
            plain[mark] = '.';
        }

        number = decimal.Parse(plain, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        return true;
    }
}
