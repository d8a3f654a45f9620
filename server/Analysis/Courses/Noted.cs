using HealthNotes.Analysis.Readings;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Courses;

/// <summary>One line of a note and its moment. Its entry has a day that is not after today.</summary>
/// <param name="Entry">The entry it stands in.</param>
/// <param name="Line">The index of its line.</param>
/// <param name="Item">What it says; null for the head of the entry itself.</param>
/// <param name="Reading">Its value in canonical units, where it has one that can be right (a lump's size, a vital).</param>
public sealed record Noted(Entry Entry, int Line, NoteItem? Item, NoteReading? Reading)
{
    /// <summary>The day of its entry.</summary>
    public DateOnly Day => Entry.Head.Date!.Value;

    /// <summary>The time of the line, else of its entry; null when neither says.</summary>
    public TimeOnly? Time => Item?.Head.Time ?? Entry.Head.Time;

    /// <summary>The moment; without a time, noon of its day.</summary>
    public DateTime Moment => Day.ToDateTime(Time ?? new TimeOnly(12, 0));

    /// <summary>True in an entry of a visit to the clinic.</summary>
    public bool AtVisit => Entry.Head.Kind == "visit";

    /// <summary>True in a check.</summary>
    public bool InCheck => Entry.Head.Kind == "check";
}
