using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record;
using HealthNotes.Record.Courses;

namespace HealthNotes.Analysis.Changes;

/// <summary>From where changes are told.</summary>
public enum SinceWhat
{
    /// <summary>From the last visit to the clinic before today.</summary>
    Visit,

    /// <summary>From a day that was asked for.</summary>
    Asked,

    /// <summary>From the first entry: the notes hold no visit.</summary>
    FirstEntry,
}

/// <summary>What is otherwise than on a day: described, never judged.</summary>
/// <param name="Since">The day; what was noted on it is how things were.</param>
/// <param name="From">How the day was chosen.</param>
/// <param name="Values">Vitals measured since, beside the last measure up to the day, in the order of the vocabulary.</param>
/// <param name="Places">Lumps, wounds, sore places and nodes that are new, of another size, or gone.</param>
/// <param name="Signs">Signs that are new, or no longer noted.</param>
/// <param name="Medicines">Medicines begun and ended.</param>
/// <param name="Events">Vomiting, seizures and the like since then, added up.</param>
public sealed record ChangeList(
    DateOnly Since,
    SinceWhat From,
    ImmutableArray<ValueChange> Values,
    ImmutableArray<PlaceChange> Places,
    ImmutableArray<SignChange> Signs,
    ImmutableArray<MedicineChange> Medicines,
    ImmutableArray<EventCount> Events)
{
    /// <summary>True when nothing is told.</summary>
    public bool IsEmpty => Values.IsEmpty && Places.IsEmpty && Signs.IsEmpty && Medicines.IsEmpty && Events.IsEmpty;

    /// <summary>What changed since <paramref name="asked"/>, or since the last visit before today. Null when the notes hold no entry up to today.</summary>
    public static ChangeList? Of(PetRecord record, DateOnly? asked)
    {
        DateOnly? first = record.Note.Entries.Select(entry => entry.Head.Date).Where(day => day <= record.Today).Min();
        if (first is null)
        {
            return null;
        }

        DateOnly? visit = record.Of(CourseKey.Visits).LastUpTo(record.Today.Plus(-1))?.Day;
        DateOnly since = asked ?? visit ?? first.Value;
        return new ChangeList(
            since,
            asked is not null ? SinceWhat.Asked : visit is not null ? SinceWhat.Visit : SinceWhat.FirstEntry,
            ValueChange.Since(record, since),
            PlaceChange.Since(record, since),
            SignChange.Since(record, since),
            MedicineChange.Since(record, since),
            EventCount.Since(record, since));
    }
}
