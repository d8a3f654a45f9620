namespace HealthNotes.Features.Documents;

/// <summary>A change to a document: the characters of <paramref name="Range"/> give way to <paramref name="NewText"/>.</summary>
public sealed record DocumentEdit(PlaceRange Range, string NewText)
{
    /// <summary>Puts text in at one place.</summary>
    public static DocumentEdit Insert(int line, int character, string text) => new(PlaceRange.At(line, character), text);
}
