namespace HealthNotes.Features.Documents;

/// <summary>A place between two characters of a document.</summary>
/// <param name="Line">The index of the line (from 0).</param>
/// <param name="Character">UTF-16 units from the start of the line (a byte-order mark is not part of the first line).</param>
public readonly record struct Place(int Line, int Character) : IComparable<Place>
{
    /// <inheritdoc/>
    public int CompareTo(Place other) => Line != other.Line ? Line.CompareTo(other.Line) : Character.CompareTo(other.Character);

    /// <summary>True where <paramref name="left"/> comes first.</summary>
    public static bool operator <(Place left, Place right) => left.CompareTo(right) < 0;

    /// <summary>True where <paramref name="right"/> comes first.</summary>
    public static bool operator >(Place left, Place right) => left.CompareTo(right) > 0;

    /// <summary>True unless <paramref name="right"/> comes first.</summary>
    public static bool operator <=(Place left, Place right) => left.CompareTo(right) <= 0;

    /// <summary>True unless <paramref name="left"/> comes first.</summary>
    public static bool operator >=(Place left, Place right) => left.CompareTo(right) >= 0;
}
