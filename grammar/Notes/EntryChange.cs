namespace HealthNotes.Grammar.Notes;

/// <summary>How the entries of a note after a change go with those before it.</summary>
/// <param name="Before">How many at the front are the same objects.</param>
/// <param name="After">How many at the back are the same but for their place.</param>
/// <param name="Moved">How many lines further down those at the back stand (negative: further up).</param>
public readonly record struct EntryChange(int Before, int After, int Moved)
{
    /// <summary>No entry is as it was.</summary>
    public static EntryChange Everything(int moved) => new(0, 0, moved);

    /// <summary>This change and then another, as one.</summary>
    public EntryChange Then(EntryChange next) => new(Math.Min(Before, next.Before), Math.Min(After, next.After), Moved + next.Moved);
}
