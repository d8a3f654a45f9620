using HealthNotes.Rendering.Blocks;

namespace HealthNotes.Rendering.Model;

/// <summary>A telephone number in the words of a note, as a link that a phone can dial.</summary>
internal static class Telephone
{
    private const int FewestDigits = 6;
    private const int MostDigits = 15;

    /// <summary>The text, its first number as a link.</summary>
    public static Prose Of(string text) => Find(text) is not { } number ? text
        : (Prose)text[..number.At] + Prose.Link(number.Target, text.Substring(number.At, number.Length)) + text[(number.At + number.Length)..];

    /// <summary>
    /// Where the first number stands, and what dials it; null where there is none. The link holds digits and a plus alone, whatever
    /// the note says.
    /// </summary>
    public static (int At, int Length, string Target)? Find(string text)
    {
        for (int at = 0; at < text.Length; at++)
        {
            if (!char.IsAsciiDigit(text[at]) && text[at] != '+')
            {
                continue;
            }

            int end = at + 1;
            while (end < text.Length && (char.IsAsciiDigit(text[end]) || (text[end] is ' ' or '.' or '/' or '-' && end + 1 < text.Length && char.IsAsciiDigit(text[end + 1]))))
            {
                end++;
            }

            string digits = string.Concat(text[at..end].Where(char.IsAsciiDigit));
            if (digits.Length is >= FewestDigits and <= MostDigits)
            {
                return (at, end - at, $"tel:{(text[at] == '+' ? "+" : "")}{digits}");
            }

            at = end;
        }

        return null;
    }
}
