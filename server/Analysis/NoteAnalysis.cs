using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Text;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis;

/// <summary>
/// Everything that the rules find in one note on one day. Pure: the same note and day give the same result; nothing is read
/// from disk or clock. Immutable.
/// </summary>
public sealed class NoteAnalysis
{
    private readonly ImmutableArray<EntryFindings> entries;
    private readonly ImmutableArray<NoteFinding> opening;
    private readonly Dictionary<CourseKey, CourseFindings> overTime;
    private readonly Dictionary<EntryFindings, (NoteFinding[] OverTime, ImmutableArray<NoteFinding> Both)> together = [];
    private readonly Lazy<ImmutableArray<NoteFinding>> findings;

    private NoteAnalysis(PetRecord record, ImmutableArray<EntryFindings> entries, Dictionary<CourseKey, CourseFindings> overTime, NoteAnalysis? before)
    {
        Record = record;
        this.entries = entries;
        this.overTime = overTime;
        opening = PutTogether(RuleBook.FindInOpening(record), before);
        findings = new Lazy<ImmutableArray<NoteFinding>>(() => RuleBook.InOrder(opening.Concat(Enumerable.Range(0, entries.Length).SelectMany(index => FindingsOf(index)))));
    }

    /// <summary>What the note tells of the pet.</summary>
    public PetRecord Record { get; }

    /// <summary>The note.</summary>
    public Note Note => Record.Note;

    /// <summary>The day it is read on.</summary>
    public DateOnly Today => Record.Today;

    /// <summary>Who it is about.</summary>
    public PetProfile Pet => Record.Pet;

    /// <summary>Everything a reader should know, in line order; what could not be read is among them.</summary>
    public ImmutableArray<NoteFinding> Findings => findings.Value;

    /// <summary>How many findings there are.</summary>
    public int FindingCount => opening.Length + entries.Sum(entry => entry.Findings.Length) + together.Sum(entry => entry.Value.Both.Length - entry.Key.Findings.Length);

    /// <summary>
    /// What a reader is shown first, in line order: what could not be read, wherever it stands, and all findings that are
    /// open.
    /// </summary>
    public ImmutableArray<NoteFinding> CurrentFindings =>
        RuleBook.InOrder(opening.Concat(Enumerable.Range(0, entries.Length).SelectMany(index => Record.Entries[index] is var entry && !(entry.Day < Record.CurrentFrom) && Record.Period.Holds(entry.Entry) ? FindingsOf(index).Where(IsOpen) : entries[index].Errors)));

    /// <summary>Works out the note as read on <paramref name="today"/>.</summary>
    /// <param name="note">The note.</param>
    /// <param name="today">The day it is read on.</param>
    /// <param name="usUnits">True to show US units, false for metric ones, null for what the note asks for.</param>
    /// <param name="since">The first day of the current period; null for the last visit.</param>
    public static NoteAnalysis Of(Note note, DateOnly today, bool? usUnits = null, DateOnly? since = null) => Of(PetRecord.Of(note, today, usUnits, since), null, EntryChange.Everything(0), CancellationToken.None);

    /// <summary>Works out a note, unless told to stop. After a change only what it can have an effect on is done again; the result is the same.</summary>
    /// <param name="record">The record of the note.</param>
    /// <param name="before">The analysis of an earlier version; null when there is none.</param>
    /// <param name="change">How the entries go with those of that version.</param>
    /// <param name="stop">To give up, when a newer version makes this one useless.</param>
    /// <exception cref="OperationCanceledException">It was told to stop.</exception>
    public static NoteAnalysis Of(PetRecord record, NoteAnalysis? before, EntryChange change, CancellationToken stop)
    {
        bool moved = false;
        if (before is not null && !ReferenceEquals(record.Facts, before.Record.Facts) && !(record.Facts.SameAs(before.Record.Facts, out moved) && record.Pet.ComparesLike(before.Pet)))
        {
            before = null;
        }

        int count = record.Entries.Length;
        DateOnly changed = before is null ? default : record.FirstChange(before.Record, change);
        EntryFindings[] entries = AllCores.Make(count, index =>
        {
            PetEntry entry = record.Entries[index];
            int was = before is null ? -1 : change.Of(index, count, before.entries.Length);
            return (was < 0 ? null : before!.entries[was].For(record, before.Record.Entries[was], entry, moved, changed)) ?? EntryFindings.Of(record, entry);
        }, stop);
        Course[] courses = [.. record.Courses.Where(course => RuleBook.Wants(course.Key))];
        CourseFindings[] found = AllCores.Make(courses.Length, index => CourseFindings.Of(record, courses[index], moved ? null : before?.overTime.GetValueOrDefault(courses[index].Key)), stop);
        return new NoteAnalysis(record, [.. entries], found.Index().ToDictionary(one => courses[one.Index].Key, one => one.Item), before);
    }

    /// <summary>
    /// True for a finding in the opening, and for one of the current period that no later look at the same part has ended. A check
    /// that does not name the part ends nothing; <c>accept</c> makes a finding one for information.
    /// </summary>
    public bool IsOpen(NoteFinding finding) => Note.EntryAt(finding.Line) is not { } entry || (Record.Period.Holds(entry) && (finding.Level is FindingLevel.Info or FindingLevel.Error || EndOf(finding) is null));

    /// <summary>The later look at the same part that has ended what was found; null while there is none.</summary>
    public Noted? EndOf(NoteFinding finding) => LaterLook.At(this, finding);

    /// <summary>What was found in an entry and in its lines as parts of courses.</summary>
    private ImmutableArray<NoteFinding> FindingsOf(int index) =>
        together.TryGetValue(entries[index], out (NoteFinding[] OverTime, ImmutableArray<NoteFinding> Both) found) ? found.Both : entries[index].Findings;

    /// <summary>Puts what was found over time where it stands, in the opening and in entries; what was put together before and is the same stays.</summary>
    private ImmutableArray<NoteFinding> PutTogether(ImmutableArray<NoteFinding> inOpening, NoteAnalysis? before)
    {
        foreach (IGrouping<int, NoteFinding> found in overTime.Values.SelectMany(course => course.Findings).GroupBy(finding => Note.EntryIndexAt(finding.Line)))
        {
            if (found.Key < 0)
            {
                inOpening = RuleBook.Strongest(inOpening, found, Note.Syntax);
                continue;
            }

            EntryFindings entry = entries[found.Key];
            NoteFinding[] inEntry = [.. found];
            (NoteFinding[] OverTime, ImmutableArray<NoteFinding> Both) had = before?.together.GetValueOrDefault(entry) ?? default;
            together.Add(entry, had.OverTime is not null && had.OverTime.AsSpan().SequenceEqual(inEntry, ReferenceEqualityComparer.Instance)
                ? had : (inEntry, RuleBook.Strongest(entry.Findings, inEntry, Note.Syntax)));
        }

        return inOpening;
    }
}
