namespace HealthNotes.Files;

/// <summary>Text for a terminal or a calendar: what would drive the one or turn the other's lines around stands there as a dot.</summary>
public static class ShownText
{
    private const char Dot = '·';

    /// <summary>The text with every control (C0 and C1, but for the tab) and every mark of direction as a dot; its length stays.</summary>
    public static string Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return string.Create(text.Length, text, (buffer, source) =>
        {
            for (int at = 0; at < source.Length; at++)
            {
                buffer[at] = IsControl(source[at]) ? Dot : source[at];
            }
        });
    }

    /// <summary>True for what is never shown as it is.</summary>
    public static bool IsControl(char c) => (char.IsControl(c) && c != '\t')
        || c is (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069') or '\u200E' or '\u200F' or '\u061C' or '\u2028' or '\u2029';
}
