using System.Collections.Immutable;
using System.Runtime.InteropServices;
using HealthNotes.Analysis.Courses;
using HealthNotes.Analysis.Due;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis;

/// <summary>
/// Everything worked out from one note on one day. Pure: the same note and day give the same result; nothing is read
/// from disk or clock. Immutable.
/// </summary>
public sealed class NoteAnalysis
{
    private readonly ImmutableArray<EntryAnalysis> entries;
    private readonly ImmutableArray<NoteFinding> opening;
    private readonly FactSet facts;
    private readonly RuleContext context;
    private readonly CourseBook courses;
    private readonly CourseFindings overTime;
    private readonly bool? usUnits;
    private readonly Dictionary<EntryAnalysis, (NoteFinding[] OverTime, ImmutableArray<NoteFinding> Both)> together;
    private readonly Lazy<ImmutableArray<NoteReading>> readings;
    private readonly Lazy<ImmutableArray<NoteFinding>> findings;

    private NoteAnalysis(
        Note note,
        PetProfile pet,
        FactSet facts,
        RuleContext context,
        ImmutableArray<EntryAnalysis> entries,
        CourseBook courses,
        CourseFindings overTime,
        NoteAnalysis? before,
        bool? usUnits)
    {
        Note = note;
        Pet = pet;
        CurrentFrom = CurrentPeriod.FirstDay(entries.AsSpan(), context.Today);
        this.facts = facts;
        this.context = context;
        this.entries = entries;
        this.courses = courses;
        this.overTime = overTime;
        this.usUnits = usUnits;
        (opening, together) = PutTogether(RuleBook.FindInOpening(note, context), before);
        readings = new Lazy<ImmutableArray<NoteReading>>(() => [.. entries.SelectMany(entry => entry.Readings)]);
        findings = new Lazy<ImmutableArray<NoteFinding>>(() => InOrder(Enumerable.Range(0, entries.Length).SelectMany(index => FindingsOf(index))));
    }

    /// <summary>The note.</summary>
    public Note Note { get; }

    /// <summary>The day it is read on.</summary>
    public DateOnly Today => context.Today;

    /// <summary>Who it is about.</summary>
    public PetProfile Pet { get; }

    /// <summary>Every value, in line order.</summary>
    public ImmutableArray<NoteReading> Readings => readings.Value;

    /// <summary>Everything a reader should know, in line order; what could not be read is among them.</summary>
    public ImmutableArray<NoteFinding> Findings => findings.Value;

    /// <summary>How many findings there are.</summary>
    public int FindingCount => opening.Length + entries.Sum(entry => entry.Findings.Length) + together.Sum(entry => entry.Value.Both.Length - entry.Key.Findings.Length);

    /// <summary>The first day of the current period; see <see cref="CurrentPeriod"/>.</summary>
    public DateOnly? CurrentFrom { get; }

    /// <summary>
    /// What a reader is shown first, in line order: what could not be read, wherever it stands, and all findings of the
    /// current period.
    /// </summary>
    public ImmutableArray<NoteFinding> CurrentFindings
    {
        get
        {
            ImmutableArray<NoteFinding>.Builder found = ImmutableArray.CreateBuilder<NoteFinding>();
            for (int index = 0; index < entries.Length; index++)
            {
                EntryAnalysis entry = entries[index];
                if (IsCurrent(entry.Day))
                {
                    found.AddRange(FindingsOf(index));
                }
                else if (entry.HasErrors)
                {
                    found.AddRange(entry.Findings.Where(finding => finding.Level == FindingLevel.Error));
                }
            }

            return InOrder(found);
        }
    }

    /// <summary>Works out the note as read on <paramref name="today"/>.</summary>
    public static NoteAnalysis Of(Note note, DateOnly today) => Of(note, today, CancellationToken.None);

    /// <summary>Works out the note as read on <paramref name="today"/>, unless told to stop.</summary>
    /// <exception cref="OperationCanceledException">It was told to stop.</exception>
    public static NoteAnalysis Of(Note note, DateOnly today, CancellationToken stop) => Make(null, note, EntryChange.Everything(0), today, null, stop);

    /// <summary>Works out the note and shows it in other units than it asks for.</summary>
    /// <param name="note">The note.</param>
    /// <param name="today">The day it is read on.</param>
    /// <param name="usUnits">True for US units, false for metric ones, null for what the note asks for.</param>
    public static NoteAnalysis Of(Note note, DateOnly today, bool? usUnits) => Make(null, note, EntryChange.Everything(0), today, usUnits, CancellationToken.None);

    /// <summary>
    /// Works out the note after a change. Gives the same as working it out anew, but does again only what the change can have
    /// an effect on.
    /// </summary>
    /// <param name="note">The note after the change.</param>
    /// <param name="change">How its entries go with those of this analysis' note.</param>
    /// <param name="stop">To give up, when a newer version makes this one useless.</param>
    /// <exception cref="OperationCanceledException">It was told to stop.</exception>
    public NoteAnalysis After(Note note, EntryChange change, CancellationToken stop) => Make(this, note, change, Today, usUnits, stop);

    /// <summary>
    /// What falls due and is not done, by day. What was to be looked at again before the current period is left out: the check
    /// since then has looked.
    /// </summary>
    public ImmutableArray<DueItem> Due => DueList.Of(new CourseContext(context, courses)).RemoveAll(due => due.Kind == DueKind.Recheck && due.On < CurrentFrom);

    /// <summary>The plans of all medicines, past ones too, each with the days it held, in the order of their lines.</summary>
    public ImmutableArray<MedicineOrder> Orders => MedicineOrder.All(new CourseContext(context, courses));

    /// <summary>All that the note says about one thing, in the order of time.</summary>
    public Course CourseOf(CourseKey key) => courses.Of(key);

    /// <summary>All courses under a word (all lumps, all medicines given), in the order of their keys.</summary>
    public ImmutableArray<Course> CoursesOf(string word) => courses.All(word);

    /// <summary>True for a finding in the opening, in an entry of the current period, or in one without a date.</summary>
    public bool IsCurrent(NoteFinding finding) => EntryAt(finding.Line) is not { } entry || IsCurrent(entry.Head.Date);

    /// <summary>The entry that a line stands in; null for the opening.</summary>
    public Entry? EntryAt(int line) => Note.EntryAt(line);

    /// <summary>The key under which a reading's normal range is looked up; null when it is not compared.</summary>
    public ReadingKey? KeyOf(NoteReading reading) => RuleContext.KeyOf(reading, Pet, ClinicalTables.Default);

    /// <summary>The range shown as normal beside a reading, or null.</summary>
    public NormalRange? NormalFor(NoteReading reading) =>
        KeyOf(reading) is { } key && reading.Value.OnScaleOfNine().Unit == UnitOf(key) ? ClinicalTables.Default.NormalFor(key) : null;

    private static string? UnitOf(ReadingKey key) => ClinicalTables.Default.NormalFor(key)?.Unit;

    private static NoteAnalysis Make(NoteAnalysis? old, Note note, EntryChange change, DateOnly today, bool? usUnits, CancellationToken stop)
    {
        ImmutableArray<Entry> entries = note.Entries;
        var read = new EntryAnalysis?[entries.Length];
        ILookup<int, Trace>? before = old is not null && change.Moved == 0
            ? old.entries.AsSpan()[change.Before..^change.After].ToArray().SelectMany(entry => entry.Traces).ToLookup(trace => trace.Noted.Line)
            : null;
        for (int index = 0; index < entries.Length; index++)
        {
            read[index] = old?.Kept(index, entries, change)
                ?? EntryAnalysis.Read(entries[index], note.Syntax, today, before);
            stop.ThrowIfCancellationRequested();
        }

        bool slipsMoved = MarkSlips(read!, note.Opening, today);
        var weighings = new List<NoteReading>();
        foreach (EntryAnalysis? entry in read)
        {
            if (entry!.Weighings.Length > 0)
            {
                weighings.AddRange(entry.Weighings);
            }
        }

        var facts = FactSet.Of(note);
        bool factsMoved = false;
        bool sameFacts = old is not null && facts.SameAs(old.facts, out factsMoved);
        PetProfile pet = sameFacts ? old!.Pet.WithWeighings(weighings) : PetProfile.Of(note, weighings);
        pet = usUnits is { } us && us != pet.ShowUsUnits ? pet with { ShowUsUnits = us } : pet;
        bool same = sameFacts && pet.ComparesLike(old!.Pet);
        RuleContext context = same && !factsMoved ? old!.context : new RuleContext(note, pet, ClinicalTables.Default, today);
        ImmutableArray<EntryAnalysis> done = same ? old!.Refreshed(note, read!, change, context, factsMoved || slipsMoved, stop) : Found(note, read!, context, stop);
        CourseBook courses = old is not null && change.Moved == 0 && !slipsMoved ? old.CoursesAfter(change, done) : CourseBook.Of(done.AsSpan());
        var overTime = CourseFindings.Of(courses, context, same && !factsMoved ? old!.overTime : null, stop);
        return new NoteAnalysis(note, pet, facts, context, done, courses, overTime, old, usUnits);
    }

    /// <summary>Takes the weights out that do not go with the pet's others; true when that touched an entry.</summary>
    private static bool MarkSlips(EntryAnalysis[] read, Opening opening, DateOnly today)
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

    /// <summary>The courses after a change that moved no line.</summary>
    private CourseBook CoursesAfter(EntryChange change, ImmutableArray<EntryAnalysis> now) =>
        courses.With(entries.AsSpan()[change.Before..^change.After], now.AsSpan()[change.Before..^change.After]);

    /// <summary>What was found in an entry and in its lines as parts of courses.</summary>
    private ImmutableArray<NoteFinding> FindingsOf(int index) =>
        together.TryGetValue(entries[index], out (NoteFinding[] OverTime, ImmutableArray<NoteFinding> Both) found) ? found.Both : entries[index].Findings;

    /// <summary>Puts what was found over time where it stands, in the opening and in entries; what was put together before and is the same stays.</summary>
    private (ImmutableArray<NoteFinding> Opening, Dictionary<EntryAnalysis, (NoteFinding[] OverTime, ImmutableArray<NoteFinding> Both)> Entries) PutTogether(
        ImmutableArray<NoteFinding> inOpening,
        NoteAnalysis? before)
    {
        var entriesWith = new Dictionary<EntryAnalysis, (NoteFinding[] OverTime, ImmutableArray<NoteFinding> Both)>();
        foreach (IGrouping<int, NoteFinding> found in overTime.All.GroupBy(finding => Note.EntryIndexAt(finding.Line)))
        {
            if (found.Key < 0)
            {
                inOpening = RuleBook.Strongest(inOpening, found, Note.Syntax);
            }
            else
            {
                EntryAnalysis entry = entries[found.Key];
                NoteFinding[] inEntry = [.. found];
                bool same = before is not null && before.together.TryGetValue(entry, out (NoteFinding[] OverTime, ImmutableArray<NoteFinding> Both) had)
                    && had.OverTime.AsSpan().SequenceEqual(inEntry, ReferenceEqualityComparer.Instance);
                entriesWith.Add(entry, same ? before!.together[entry] : (inEntry, RuleBook.Strongest(entry.Findings, inEntry, Note.Syntax)));
            }
        }

        return (inOpening, entriesWith);
    }

    /// <summary>What the old analysis knows of an entry, moved to its new place; null when the entry is new.</summary>
    private EntryAnalysis? Kept(int index, ImmutableArray<Entry> now, EntryChange change)
    {
        if (index < change.Before)
        {
            return entries[index];
        }

        int fromEnd = now.Length - index;
        return fromEnd <= change.After ? entries[^fromEnd].At(now[index], Today) : null;
    }

    /// <summary>All rules on all entries.</summary>
    private static ImmutableArray<EntryAnalysis> Found(Note note, EntryAnalysis[] read, RuleContext context, CancellationToken stop)
    {
        ImmutableArray<EntryAnalysis> entries = [.. read.Select(entry => entry.WithKeys(context))];
        var history = new History(entries);
        foreach (EntryAnalysis entry in entries)
        {
            stop.ThrowIfCancellationRequested();
            entry.Find(context, history, note.Syntax);
        }

        return entries;
    }

    /// <summary>All rules on the entries that are new, or that rest on something which reads otherwise now.</summary>
    private ImmutableArray<EntryAnalysis> Refreshed(Note note, EntryAnalysis[] read, EntryChange change, RuleContext context, bool factsMoved, CancellationToken stop)
    {
        ImmutableArray<EntryAnalysis> entries = [.. read.Select(entry => entry.IsDone ? entry : entry.WithKeys(context))];
        Asks touched = change.Moved != 0 || factsMoved
            ? Asks.All
            : AsksOf.Difference(this.entries.AsSpan()[change.Before..^change.After], entries.AsSpan()[change.Before..^change.After]);
        var history = new History(entries);
        var done = new EntryAnalysis[entries.Length];
        for (int index = 0; index < done.Length; index++)
        {
            EntryAnalysis entry = entries[index];
            if (!entry.IsDone)
            {
                entry.Find(context, history, note.Syntax);
            }
            else if ((factsMoved && entry.NamesOtherLines) || !entry.StillHolds(history, touched))
            {
                entry = entry.WithKeys(context);
                entry.Find(context, history, note.Syntax);
            }

            stop.ThrowIfCancellationRequested();
            done[index] = entry;
        }

        return ImmutableCollectionsMarshal.AsImmutableArray(done);
    }

    private bool IsCurrent(DateOnly? day) => day is null || day >= CurrentFrom;

    private ImmutableArray<NoteFinding> InOrder(IEnumerable<NoteFinding> rest)
    {
        // A note without an opening has its first entry in the line that what is missing from the opening is said of.
        ImmutableArray<NoteFinding> all = [.. opening, .. rest];
        return opening.Length > 0 && all.Length > opening.Length && all[opening.Length].Line <= opening[^1].Line ? RuleBook.InOrder(all) : all;
    }
}
