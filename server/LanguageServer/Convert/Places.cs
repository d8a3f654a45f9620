using System.Text;
using HealthNotes.Features.Documents;
using HealthNotes.LanguageServer.Protocol;
using Range = HealthNotes.LanguageServer.Protocol.Range;

namespace HealthNotes.LanguageServer.Convert;

/// <summary>From the client's positions to our places. A position that does not exist becomes the nearest that does.</summary>
internal static class Places
{
    /// <summary>The place of a client's position.</summary>
    public static Place Of(Document document, Position position, PositionEncoding encoding)
    {
        int line = position.Line;
        if (line < 0 || line >= document.Syntax.Lines.Length)
        {
            return document.Clamp(new Place(line, position.Character));
        }

        int mark = Positions.HasMark(document, line) ? Positions.UnitsOf("\uFEFF", encoding) : 0;
        int units = Math.Max(0, position.Character - mark);
        string text = document.Syntax.Lines[line].Text;
        return new Place(line, encoding == PositionEncoding.Utf16 ? Math.Min(units, text.Length) : CharactersIn(text, units, encoding));
    }

    /// <summary>The range of places of a client's range; ends in the wrong order are put right.</summary>
    public static PlaceRange Of(Document document, Range range, PositionEncoding encoding)
    {
        Place start = Of(document, range.Start, encoding);
        Place end = Of(document, range.End, encoding);
        return start <= end ? new PlaceRange(start, end) : new PlaceRange(end, start);
    }

    /// <summary>How many of our characters the first <paramref name="units"/> are; units inside a character count as its start.</summary>
    private static int CharactersIn(string text, int units, PositionEncoding encoding)
    {
        int at = 0;
        foreach (Rune rune in text.EnumerateRunes())
        {
            units -= encoding == PositionEncoding.Utf8 ? rune.Utf8SequenceLength : 1;
            if (units < 0)
            {
                break;
            }

            at += rune.Utf16SequenceLength;
        }

        return at;
    }
}
