using System.Globalization;
using System.Text;

namespace HealthNotes.Rendering.Text;

/// <summary>
/// Makes text of a note fit to stand in one field of the page: bounded, on one line, without characters that would act
/// outside their field. Nothing is dropped in silence: what cannot be shown is shown as a mark.
/// </summary>
internal static class NoteText
{
    private const char Unshowable = '\uFFFD';

    /// <summary>A whole line as written.</summary>
    public static string Line(string text) => Field(text.Trim());

    /// <summary>A field of a line: clipped, and clean.</summary>
    public static string Field(string text)
    {
        string clipped = Clip(text, PageLimits.FieldLength);
        return Clean(clipped, keepLines: false) + (clipped.Length < text.Length ? $"… ({text.Length.ToString("N0", CultureInfo.InvariantCulture)} characters)" : "");
    }

    /// <summary>Free text: several lines, clean.</summary>
    public static string Block(string text) => Clean(text, keepLines: true);

    /// <summary>The first <paramref name="most"/> units; a surrogate pair is not cut in two.</summary>
    public static string Clip(string text, int most) =>
        text.Length <= most ? text : text[..(char.IsHighSurrogate(text[most - 1]) ? most - 1 : most)];

    private static string Clean(string text, bool keepLines)
    {
        int first = FirstToClean(text, keepLines);
        if (first < 0)
        {
            return text;
        }

        var clean = new StringBuilder(text, 0, first, text.Length + 16);
        for (int i = first; i < text.Length; i++)
        {
            char c = text[i];
            if (char.IsHighSurrogate(c) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
            {
                clean.Append(c).Append(text[++i]);
            }
            else if (IsDirectionControl(c))
            {
                clean.Append("[U+").Append(((int)c).ToString("X4", CultureInfo.InvariantCulture)).Append(']');
            }
            else
            {
                clean.Append(Shown(c, keepLines));
            }
        }

        return clean.ToString();
    }

    private static int FirstToClean(string text, bool keepLines)
    {
        for (int i = 0; i < text.Length; i++)
        {
            if (text[i] is < ' ' or >= '\u007F' && (IsDirectionControl(text[i]) || Shown(text[i], keepLines) != text[i] || char.IsSurrogate(text[i])))
            {
                return i;
            }
        }

        return -1;
    }

    private static char Shown(char c, bool keepLines) => c switch
    {
        '\n' when keepLines => c,
        '\t' or '\n' or '\r' or '\u000B' or '\u000C' or '\u0085' or '\u2028' or '\u2029' => ' ',
        _ when char.IsControl(c) || char.IsSurrogate(c) || c is '\uFFFE' or '\uFFFF' => Unshowable,
        _ => c,
    };

    /// <summary>Characters that change the order of the text around them: embeddings, overrides and isolates.</summary>
    private static bool IsDirectionControl(char c) => c is (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');
}
