using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Record;

/// <summary>
/// All that a note tells of its pet, read on one day: who it is, the facts, what each entry gives, and each thing over time. It
/// is made once a version of the note, and rules, editor and page ask it. It judges nothing. Immutable.
/// </summary>
public sealed class PetRecord
{
    private readonly CourseBook courses;
    private readonly bool? usUnits;
    private readonly DateOnly? since;
    private readonly Lazy<ImmutableArray<NoteReading>> readings;
    private Watch? watch;

    private PetRecord(Note note, PetFacts facts, PetProfile pet, ImmutableArray<PetEntry> entries, CourseBook courses, bool? usUnits, DateOnly? since)
    {
        Note = note;
        Facts = facts;
        Pet = pet;
        Entries = entries;
        this.courses = courses;
        this.usUnits = usUnits;
        this.since = since;
        Period = CurrentPeriod.Of(entries, facts.Today, since);
        readings = new Lazy<ImmutableArray<NoteReading>>(() => [.. entries.SelectMany(entry => entry.Readings)]);
    }

    /// <summary>The note.</summary>
    public Note Note { get; }

    /// <summary>The day it is read on.</summary>
    public DateOnly Today => Facts.Today;

    /// <summary>Who it is about.</summary>
    public PetProfile Pet { get; }

    /// <summary>Its facts.</summary>
    public PetFacts Facts { get; }

    /// <summary>What each entry gives, in file order.</summary>
    public ImmutableArray<PetEntry> Entries { get; }

    /// <summary>Every value that can be right, in line order.</summary>
    public ImmutableArray<NoteReading> Readings => readings.Value;

    /// <summary>What is about now.</summary>
    public CurrentPeriod Period { get; }

    /// <summary>The first day of the current period.</summary>
    public DateOnly? CurrentFrom => Period.From;

    /// <summary>Every course, in no order; that of the note as a whole is among them.</summary>
    public IEnumerable<Course> Courses => courses.Courses;

    /// <summary>The record of a note as read on <paramref name="today"/>.</summary>
    /// <param name="note">The note.</param>
    /// <param name="today">The day it is read on.</param>
    /// <param name="usUnits">True to show US units, false for metric ones, null for what the note asks for.</param>
    /// <param name="since">The first day of the current period; null for the last visit.</param>
    public static PetRecord Of(Note note, DateOnly today, bool? usUnits = null, DateOnly? since = null) => Make(null, note, EntryChange.Everything(0), today, usUnits, since);

    /// <summary>The record after a change: the same as <see cref="Of(Note, DateOnly, bool?, DateOnly?)"/>, with what the change does not touch as the same objects.</summary>
    /// <param name="note">The note after the change.</param>
    /// <param name="change">How its entries go with those of this record's note.</param>
    public PetRecord After(Note note, EntryChange change) => Make(this, note, change, Today, usUnits, since);

    /// <summary>The same record for one reader, who wants to know later whether another version answers the same.</summary>
    public PetRecord For(Watch reader)
    {
        var copy = (PetRecord)MemberwiseClone();
        copy.watch = reader;
        return copy;
    }

    /// <summary>All that is noted of one thing, in the order of time; empty when the note has no line of it.</summary>
    public Course Of(CourseKey key)
    {
        Course course = courses.Of(key);
        watch?.Add(DateOnly.MaxValue, (now, _, _) => IsSame(course, now.courses.Of(key)));
        return course;
    }

    /// <summary>All courses under a word (all lumps, all medicines given), in the order of their keys.</summary>
    public ImmutableArray<Course> All(string word)
    {
        ImmutableArray<Course> all = courses.All(word);
        watch?.Add(DateOnly.MaxValue, (now, _, _) => now.courses.All(word).AsSpan().SequenceEqual(all.AsSpan()));
        return all;
    }

    /// <summary>Up to so many lines of a course before a moment, the latest first. Another line of the course leaves the answer as it was.</summary>
    /// <param name="key">The course.</param>
    /// <param name="day">The day; nothing is before an entry without one.</param>
    /// <param name="time">The time; null for the start of the day.</param>
    /// <param name="line">Of lines of one moment, those above this one; 0 for none of them.</param>
    /// <param name="count">How many at most.</param>
    /// <param name="wanted">Which lines are meant; null for all. It must not hold a record.</param>
    public ImmutableArray<Noted> Before(CourseKey key, DateOnly? day, TimeOnly? time, int line, int count, Func<Noted, bool>? wanted = null)
    {
        ImmutableArray<Noted> before = Find(courses, line);
        Course course = courses.Of(key);
        watch?.Add(day ?? DateOnly.MinValue, (now, by, same) => (by == 0 && ReferenceEquals(now.courses.Of(key), course)) || Find(now.courses, line == 0 ? 0 : line + by).SequenceEqual(before, same));
        return before;

        ImmutableArray<Noted> Find(CourseBook book, int above) => day is { } on ? [.. book.Of(key).Before(on, time, above).Where(wanted ?? (_ => true)).Take(count)] : [];
    }

    /// <summary>The first line of a course that says that it is there; null when there is none.</summary>
    public Noted? First(CourseKey key)
    {
        Noted? first = Find(courses);
        watch?.Add(first?.Day ?? DateOnly.MaxValue, (now, _, same) => same.Equals(Find(now.courses), first));
        return first;

        Noted? Find(CourseBook book) => book.Of(key).Lines.FirstOrDefault(line => line.Item is not NotSeen);
    }

    /// <summary>The last weighing up to a day that is a point, not a bound; null when there is none.</summary>
    public NoteReading? WeightOn(DateOnly day)
    {
        Noted? last = Find(courses);
        watch?.Add(day, (now, _, same) => same.Equals(Find(now.courses), last));
        return last?.Reading;

        Noted? Find(CourseBook book) => book.Of(CourseKey.Weight) is var weight && weight.CountUpTo(day) is var count ? weight.Lines[..count].LastOrDefault(line => line.Reading is { Value.Bound: Bound.Exact or Bound.About }) : null;
    }

    /// <summary>The values of a line that can be right.</summary>
    public IEnumerable<NoteReading> ReadingsAt(int line) => Note.EntryIndexAt(line) is >= 0 and int index ? Entries[index].Readings.Where(reading => reading.Line == line) : [];

    /// <summary>The first day on which two versions of a record may tell something else; the last there is where they do not differ.</summary>
    /// <param name="before">The earlier version.</param>
    /// <param name="change">How the entries of this one go with those.</param>
    public DateOnly FirstChange(PetRecord before, EntryChange change)
    {
        DateOnly first = DateOnly.MaxValue;
        for (int index = 0; index < Entries.Length; index++)
        {
            int was = change.Of(index, Entries.Length, before.Entries.Length);
            if (was < 0 || !ReferenceEquals(Entries[index], before.Entries[was]))
            {
                first = Entries[index].Day < first ? Entries[index].Day!.Value : first;
            }
        }

        foreach (PetEntry gone in before.Entries.AsSpan()[change.Before..^change.After])
        {
            first = gone.Day < first ? gone.Day.Value : first;
        }

        return first;
    }

    /// <summary>True for a line of the current period; what was measured at the visit that it starts with is not since that visit.</summary>
    public bool IsCurrent(Noted line) => Note.EntryAt(line.Line) is { } entry && Period.Holds(entry);

    /// <summary>The range shown as normal beside a reading, or null.</summary>
    public NormalRange? NormalFor(NoteReading reading) =>
        Pet.KeyOf(reading) is { } key && ClinicalTables.Default.NormalFor(key) is { } normal && reading.Value.OnScaleOfNine().Unit == normal.Unit ? normal : null;

    /// <summary>True when two courses are one: the same object, or neither has a line.</summary>
    public static bool IsSame(Course one, Course other) => ReferenceEquals(one, other) || (one.Lines.IsEmpty && other.Lines.IsEmpty);

    private static PetRecord Make(PetRecord? old, Note note, EntryChange change, DateOnly today, bool? usUnits, DateOnly? since)
    {
        ImmutableArray<Entry> entries = note.Entries;
        var read = new PetEntry[entries.Length];
        ILookup<int, Trace>? before = old?.Entries.AsSpan()[change.Before..^change.After].ToArray().SelectMany(entry => entry.Traces).ToLookup(trace => trace.Noted.Line);
        for (int index = 0; index < entries.Length; index++)
        {
            int was = change.Of(index, entries.Length, old?.Entries.Length ?? 0);
            read[index] = was < 0 ? PetEntry.Read(entries[index], note.Syntax, today, before)
                : index < change.Before ? old!.Entries[was]
                : old!.Entries[was].At(entries[index], today);
        }

        bool sameWeights = old is not null && change.Moved == 0 && ReferenceEquals(note.Opening, old.Note.Opening)
            && Weighed(read.AsSpan()[change.Before..^change.After]) is { } weighed && Weighed(old.Entries.AsSpan()[change.Before..^change.After]) is { } had && weighed.SequenceEqual(had);
        bool slipsMoved = !sameWeights && MarkSlips(read, note.Opening, today);
        bool moved = false;
        bool sameFacts = old is not null && old.Facts.SameIn(note, out moved);
        NoteReading[] weighings = sameFacts && sameWeights ? [] : [.. read.SelectMany(entry => entry.Weighings)];
        PetProfile pet = !sameFacts ? PetProfile.Of(note, weighings) : sameWeights ? old!.Pet : old!.Pet.WithWeighings(weighings);
        pet = usUnits is { } us && us != pet.ShowUsUnits ? pet with { ShowUsUnits = us } : pet;
        PetFacts facts = sameFacts && !moved && pet.ComparesLike(old!.Pet) ? old.Facts : new PetFacts(note, pet, today);
        CourseBook courses = old is not null && change.Moved == 0 && !slipsMoved
            ? old.courses.With(Traces(old.Entries, change), Traces([.. read], change))
            : CourseBook.Of(read.Select(entry => entry.Traces), old?.courses);
        return new PetRecord(note, facts, pet, [.. read], courses, usUnits, since);
    }

    private static Trace[] Traces(ImmutableArray<PetEntry> entries, EntryChange change) => [.. entries[change.Before..^change.After].SelectMany(entry => entry.Traces)];

    /// <summary>The weighings of some entries; null where one has a weight that does not go with the others.</summary>
    private static List<NoteReading>? Weighed(ReadOnlySpan<PetEntry> entries)
    {
        List<NoteReading> weighed = [];
        foreach (PetEntry entry in entries)
        {
            if (!entry.WeightSlips.IsEmpty)
            {
                return null;
            }

            weighed.AddRange(entry.Weighings);
        }

        return weighed;
    }

    /// <summary>Takes the weights out that do not go with the pet's others; true when that touched an entry.</summary>
    private static bool MarkSlips(PetEntry[] read, Opening opening, DateOnly today)
    {
        ILookup<NoteReading, Slip> slips = WeightSlips.In([.. read.SelectMany(entry => entry.AllWeighings)], opening).ToLookup(slip => slip.Reading);
        bool touched = false;
        for (int index = 0; index < read.Length; index++)
        {
            ImmutableArray<Slip> own = slips.Count == 0 ? [] : [.. read[index].AllWeighings.Where(slips.Contains).Select(weight => slips[weight].First())];
            if (!own.SequenceEqual(read[index].WeightSlips))
            {
                read[index] = read[index].With(own, today);
                touched = true;
            }
        }

        return touched;
    }
}

/// <summary>What one reader asked of a record. It holds the answers, not the record.</summary>
public sealed class Watch
{
    private readonly List<Func<PetRecord, int, IEqualityComparer<Noted?>, bool>> questions = [];

    /// <summary>The last day that an answer rests on: what is written of later days changes none.</summary>
    public DateOnly Until { get; private set; }

    /// <summary>True when another version of the record answers every question the same.</summary>
    /// <param name="now">That version.</param>
    /// <param name="by">How many lines further down the reader stands there.</param>
    /// <param name="inPlace">True when the answers must stand in the same lines, too.</param>
    public bool Holds(PetRecord now, int by = 0, bool inPlace = true) =>
        questions.TrueForAll(question => question(now, by, inPlace ? EqualityComparer<Noted?>.Default : Noted.ButForLines));

    internal void Add(DateOnly until, Func<PetRecord, int, IEqualityComparer<Noted?>, bool> question)
    {
        Until = until > Until ? until : Until;
        questions.Add(question);
    }
}
