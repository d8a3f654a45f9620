using HealthNotes.Grammar.Text;

namespace HealthNotes.Features.Documents;

/// <summary>The characters from <paramref name="Start"/> up to, not including, <paramref name="End"/>.</summary>
public readonly record struct PlaceRange(Place Start, Place End)
{
    /// <summary>A stretch of one line.</summary>
    public static PlaceRange Of(int line, TextSpan span) => new(new Place(line, span.Start), new Place(line, span.End));

    /// <summary>Nothing, at one place: where something is to be put in.</summary>
    public static PlaceRange At(int line, int character) => new(new Place(line, character), new Place(line, character));

    /// <summary>All of a document.</summary>
    public static PlaceRange Whole(Document document) => new(default, document.Syntax.Lines is [.., { Ending: "" } last] lines ? new Place(lines.Length - 1, last.Text.Length) : new Place(document.Syntax.Lines.Length, 0));

    /// <summary>True when the place lies inside or at either end.</summary>
    public bool Touches(Place place) => Start <= place && place <= End;

    /// <summary>True when the two share a character or an end.</summary>
    public bool Touches(PlaceRange other) => Start <= other.End && other.Start <= End;
}
