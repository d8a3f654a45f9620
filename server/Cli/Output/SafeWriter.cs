using System.Buffers;
using System.Text;
using HealthNotes.Files;

namespace HealthNotes.Cli.Output;

/// <summary>
/// Writes text in which nothing drives the terminal: line breaks and our own colours pass, every other control is a dot.
/// </summary>
/// <param name="inner">The stream's own writer.</param>
internal sealed class SafeWriter(TextWriter inner) : TextWriter
{
    /// <summary>Stands before and behind the code of a colour, in text that comes here.</summary>
    public const char ColourStart = '\uE001';

    /// <inheritdoc cref="ColourStart"/>
    public const char ColourEnd = '\uE002';

    private const int LongestCode = 10;
    private static readonly SearchValues<char> OfCode = SearchValues.Create("0123456789;");

    public override Encoding Encoding => inner.Encoding;

    public override void Write(char value) => Write(value.ToString());

    public override void Write(char[] buffer, int index, int count) => Write(new string(buffer, index, count));

    public override void Write(string? value)
    {
        if (value is null)
        {
            return;
        }

        var text = new StringBuilder(value.Length);
        for (int at = 0; at < value.Length; at++)
        {
            if (value[at] == ColourStart && CodeAt(value, at) is { } code)
            {
                text.Append("\u001b[").Append(code).Append('m');
                at += code.Length + 1;
            }
            else
            {
                bool breaks = value[at] == '\n' || (value[at] == '\r' && at + 1 < value.Length && value[at + 1] == '\n');
                text.Append(!breaks && (ShownText.IsControl(value[at]) || value[at] is ColourStart or ColourEnd) ? '·' : value[at]);
            }
        }

        inner.Write(text.ToString());
    }

    public override void Flush() => inner.Flush();

    private static string? CodeAt(string value, int at)
    {
        int end = value.IndexOf(ColourEnd, at, Math.Min(LongestCode + 2, value.Length - at));
        return end > at + 1 && !value.AsSpan(at + 1, end - at - 1).ContainsAnyExcept(OfCode) && Terminal.HasColour ? value[(at + 1)..end] : null;
    }
}
