using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Record.Readings;

namespace HealthNotes.Record.Courses;

/// <summary>One line of a note and its moment. Its entry has a day that is not after today.</summary>
/// <param name="Head">The head of the entry it stands in.</param>
/// <param name="Line">The index of its line.</param>
/// <param name="Item">What it says; null for the head of the entry itself.</param>
/// <param name="Reading">Its value in canonical units, where it has one that can be right (a lump's size, a vital).</param>
/// <param name="Entry">The whole entry, for <see cref="CourseKey.WholeChecks"/> only: it is another one after every edit in it.</param>
public sealed record Noted(EntryHead Head, int Line, NoteItem? Item, NoteReading? Reading, Entry? Entry = null)
{
    /// <summary>Compares all but the lines that two stand in.</summary>
    internal static IEqualityComparer<Noted?> ButForLines { get; } = EqualityComparer<Noted?>.Create((one, other) =>
        one is null || other is null ? one == other : one == other with { Line = one.Line, Reading = one.Reading is { } reading && other.Reading is { } same ? same with { Line = reading.Line } : other.Reading });

    /// <summary>The day of its entry.</summary>
    public DateOnly Day => Head.Date!.Value;

    /// <summary>Since when: the day of its entry, or an earlier one that the line names.</summary>
    public DateOnly Onset => Item?.Since?.On(Day) ?? Day;

    /// <summary>The time of the line, else of its entry; null when neither says.</summary>
    public TimeOnly? Time => Item?.Head.Time ?? Head.Time;

    /// <summary>The moment; without a time, noon of its day.</summary>
    public DateTime Moment => Day.ToDateTime(Time ?? new TimeOnly(12, 0));

    /// <summary>True in an entry of a visit to the clinic.</summary>
    public bool AtVisit => Head.Kind == "visit";

    /// <summary>True in a check.</summary>
    public bool InCheck => Head.Kind == "check";
}
