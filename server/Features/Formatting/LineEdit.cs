using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Features.Formatting;

/// <summary>The smallest edit that turns a line into another.</summary>
internal static class LineEdit
{
    /// <summary>The edit; null when there is nothing to do.</summary>
    /// <param name="syntax">The note.</param>
    /// <param name="index">The index of the line.</param>
    /// <param name="formatted">What it should say.</param>
    /// <param name="ending">The line break it should have; a last line without words needs none.</param>
    public static DocumentEdit? Between(NoteSyntax syntax, int index, string formatted, string ending)
    {
        LineSyntax line = syntax.Lines[index];
        bool last = index == syntax.Lines.Length - 1;
        string wanted = last && formatted.Length == 0 ? "" : ending;
        if (line.Ending == wanted && line.Text == formatted)
        {
            return null;
        }

        int before = line.Text.AsSpan().CommonPrefixLength(formatted);
        if (before > 0 && char.IsHighSurrogate(line.Text[before - 1]))
        {
            before--;
        }

        if (line.Ending != wanted)
        {
            Place end = last ? new Place(index, line.Text.Length) : new Place(index + 1, 0);
            return new DocumentEdit(new PlaceRange(new Place(index, before), end), formatted[before..] + wanted);
        }

        int most = Math.Min(line.Text.Length, formatted.Length) - before;
        int after = 0;
        while (after < most && line.Text[^(after + 1)] == formatted[^(after + 1)])
        {
            after++;
        }

        if (after > 0 && char.IsLowSurrogate(line.Text[^after]))
        {
            after--;
        }

        return new DocumentEdit(
            new PlaceRange(new Place(index, before), new Place(index, line.Text.Length - after)),
            formatted[before..(formatted.Length - after)]);
    }
}
