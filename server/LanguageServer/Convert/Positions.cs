using System.Text;
using HealthNotes.Features.Documents;
using HealthNotes.LanguageServer.Protocol;
using Range = HealthNotes.LanguageServer.Protocol.Range;

namespace HealthNotes.LanguageServer.Convert;

/// <summary>
/// From our places to the client's positions. A client that keeps a byte-order mark counts it as a character of the first
/// line; our places do not.
/// </summary>
internal static class Positions
{
    /// <summary>The client's position of a place.</summary>
    public static Position Of(Document document, Place place, PositionEncoding encoding)
    {
        int mark = HasMark(document, place.Line) ? UnitsOf("\uFEFF", encoding) : 0;
        if (encoding == PositionEncoding.Utf16 || place.Line >= document.Syntax.Lines.Length)
        {
            return new Position(place.Line, place.Character + mark);
        }

        string line = document.Syntax.Lines[place.Line].Text;
        return new Position(place.Line, UnitsOf(line.AsSpan(0, Math.Min(place.Character, line.Length)), encoding) + mark);
    }

    /// <summary>The client's range.</summary>
    public static Range Of(Document document, PlaceRange range, PositionEncoding encoding) =>
        new(Of(document, range.Start, encoding), Of(document, range.End, encoding));

    /// <summary>True for the line that a byte-order mark stands before.</summary>
    public static bool HasMark(Document document, int line) => line == 0 && document.Syntax.ByteOrderMark;

    /// <summary>How many units a text takes; half of a surrogate pair counts as the character that replaces it.</summary>
    public static int UnitsOf(ReadOnlySpan<char> text, PositionEncoding encoding)
    {
        if (encoding == PositionEncoding.Utf16)
        {
            return text.Length;
        }

        int units = 0;
        foreach (Rune rune in text.EnumerateRunes())
        {
            units += encoding == PositionEncoding.Utf8 ? rune.Utf8SequenceLength : 1;
        }

        return units;
    }
}
