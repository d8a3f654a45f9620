namespace HealthNotes.Grammar.Text;

/// <summary>Cuts text into lines and keeps each line's own ending, so that nothing is lost.</summary>
public static class LineSplitter
{
    /// <summary>
    /// The lines of <paramref name="text"/>, each with its ending (<c>\n</c>, <c>\r\n</c>, <c>\r</c> or none).
    /// The last line has no ending; text that ends in a line break has an empty last line.
    /// </summary>
    public static IEnumerable<(string Text, string Ending)> Split(string text)
    {
        int start = 0;
        while (true)
        {
            int length = text.AsSpan(start).IndexOfAny('\n', '\r');
            if (length < 0)
            {
                yield return (text[start..], "");
                yield break;
            }

            int at = start + length;
            string ending = text[at] == '\n' ? "\n" : at + 1 < text.Length && text[at + 1] == '\n' ? "\r\n" : "\r";
            yield return (text.Substring(start, length), ending);
            start = at + ending.Length;
        }
    }
}
