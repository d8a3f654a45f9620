namespace HealthNotes.Grammar.Notes;

/// <summary>How the entries of a note after a change go with those before it.</summary>
/// <param name="Before">How many at the front are the same objects.</param>
/// <param name="After">How many at the back are the same but for their place.</param>
/// <param name="Moved">How many lines further down those at the back stand (negative: further up).</param>
public readonly record struct EntryChange(int Before, int After, int Moved)
{
    /// <summary>No entry is as it was.</summary>
    public static EntryChange Everything(int moved) => new(0, 0, moved);

    /// <summary>Where an entry of the note after the change stood before it; -1 for one that was read anew.</summary>
    /// <param name="index">Where it stands now.</param>
    /// <param name="count">How many entries there are now.</param>
    /// <param name="countBefore">How many there were.</param>
    public int Of(int index, int count, int countBefore) => index < Before ? index : count - index <= After ? countBefore - count + index : -1;

    /// <summary>This change and then another, as one.</summary>
    public EntryChange Then(EntryChange next) => new(Math.Min(Before, next.Before), Math.Min(After, next.After), Moved + next.Moved);
}
