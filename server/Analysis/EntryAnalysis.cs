using System.Collections.Immutable;
using HealthNotes.Analysis.Courses;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis;

/// <summary>What one entry gives. Kept while the entry, the facts and what was asked of other entries stay as they are.</summary>
internal sealed class EntryAnalysis
{
    private Earlier? earlier;

    private EntryAnalysis(
        Entry entry,
        ImmutableArray<NoteReading> readings,
        ImmutableArray<ComparedReading> compared,
        ImmutableArray<Placed<Finding>> lumps,
        ImmutableArray<Placed<CareEvent>> seizures,
        ImmutableArray<NotedSign> visitSigns,
        ImmutableArray<Trace> traces,
        ImmutableArray<Slip> slips)
    {
        VisitSigns = visitSigns;
        Traces = traces;
        Entry = entry;
        Readings = readings;
        Compared = compared;
        Lumps = lumps;
        Seizures = seizures;
        Slips = slips;
        Day = entry.Head.Date;
        Weighings = readings.Any(IsWeighing) ? [.. readings.Where(IsWeighing)] : [];
    }

    /// <summary>The entry.</summary>
    public Entry Entry { get; }

    /// <summary>Its day; kept here since every edit looks at the days of all entries.</summary>
    public DateOnly? Day { get; }

    /// <summary>Its values that can be right.</summary>
    public ImmutableArray<NoteReading> Readings { get; }

    /// <summary>Its values that cannot be right: they are in nothing else here.</summary>
    public ImmutableArray<Slip> Slips { get; }

    /// <summary>All weighings that some pet can have, those among the slips too, by line.</summary>
    public IEnumerable<NoteReading> AllWeighings => WeightSlips.IsEmpty ? Weighings : Weighings.Concat(WeightSlips.Select(slip => slip.Reading)).OrderBy(weight => weight.Line);

    /// <summary>The weights that do not go with the pet's others.</summary>
    public ImmutableArray<Slip> WeightSlips => Slips.IsEmpty ? [] : [.. Slips.Where(slip => slip.AgainstKg is not null)];

    /// <summary>Those that are compared with others.</summary>
    public ImmutableArray<ComparedReading> Compared { get; }

    /// <summary>Its lumps, those at mammary glands apart.</summary>
    public ImmutableArray<Placed<Finding>> Lumps { get; }

    /// <summary>Its seizures.</summary>
    public ImmutableArray<Placed<CareEvent>> Seizures { get; }

    /// <summary>What it describes, when it is of a visit to the clinic: those words the clinic knows.</summary>
    public ImmutableArray<NotedSign> VisitSigns { get; }

    /// <summary>Its lines as parts of courses.</summary>
    public ImmutableArray<Trace> Traces { get; }

    /// <summary>Its weighings.</summary>
    public ImmutableArray<NoteReading> Weighings { get; }

    /// <summary>True once the rules were applied.</summary>
    public bool IsDone { get; private set; }

    /// <summary>What was found in it; empty until <see cref="Find"/>.</summary>
    public ImmutableArray<NoteFinding> Findings { get; private set; } = [];

    /// <summary>True when something in it could not be read.</summary>
    public bool HasErrors { get; private set; }

    /// <summary>True when a finding names a line other than its own.</summary>
    public bool NamesOtherLines { get; private set; }

    /// <summary>Reads the values of an entry. Lines that are as <paramref name="before"/> an edit keep their objects in the courses.</summary>
    public static EntryAnalysis Read(Entry entry, NoteSyntax syntax, DateOnly today, ILookup<int, Trace>? before)
    {
        ImmutableArray<NoteReading> all = ReadingCollector.Collect(entry, syntax);
        bool right = all.All(IsPlausible);
        return Of(entry, right ? all : [.. all.Where(IsPlausible)], right ? [] : [.. all.Where(reading => !IsPlausible(reading)).Select(reading => new Slip(reading))], today, before);
    }

    /// <summary>The same entry, with other weights that do not go with the pet's others. To be given before the rules are applied.</summary>
    public EntryAnalysis With(ImmutableArray<Slip> weightSlips, DateOnly today)
    {
        HashSet<NoteReading> wrong = [.. weightSlips.Select(slip => slip.Reading)];
        ImmutableArray<NoteReading> readings = [.. Readings.Where(reading => !IsWeighing(reading)).Concat(AllWeighings.Where(weight => !wrong.Contains(weight))).OrderBy(reading => reading.Line).ThenBy(reading => reading.Span.Start)];
        return Of(Entry, readings, [.. Slips.Where(slip => slip.AgainstKg is null), .. weightSlips], today, null);
    }

    private static EntryAnalysis Of(Entry entry, ImmutableArray<NoteReading> readings, ImmutableArray<Slip> slips, DateOnly today, ILookup<int, Trace>? before) => new(
        entry,
        readings,
        [],
        Of<Finding>(entry, finding => finding.Word.Word == "lump" && !MammaryLumpRule.IsMammary(finding)),
        Of<CareEvent>(entry, care => care.Word.Word == "seizure" && care.Times is not 0),
        entry.Head is { Kind: "visit", Date: not null } ? [.. WorryingWords.SignsOf(entry)] : [],
        Trace.Of(entry, readings, today, before),
        slips);

    /// <summary>The same entry, with the readings that are compared.</summary>
    public EntryAnalysis WithKeys(RuleContext context)
    {
        ImmutableArray<ComparedReading>.Builder compared = ImmutableArray.CreateBuilder<ComparedReading>(Readings.Length);
        foreach (NoteReading reading in Readings)
        {
            if (context.KeyOf(reading) is { } key)
            {
                compared.Add(new ComparedReading(reading, key));
            }
        }

        return new EntryAnalysis(Entry, Readings, compared.DrainToImmutable(), Lumps, Seizures, VisitSigns, Traces, Slips);
    }

    /// <summary>Applies the rules. To be called once, before anyone else sees the object.</summary>
    public void Find(RuleContext context, History history, NoteSyntax syntax)
    {
        var asking = new Earlier(history);
        Findings = RuleBook.FindIn(new EntryContext(context, Entry, syntax.Lines, Readings, Slips, Compared, asking));
        earlier = asking.IsEmpty ? null : asking.Kept();
        foreach (NoteFinding finding in Findings)
        {
            HasErrors |= finding.Level == FindingLevel.Error;
            NamesOtherLines |= finding.Evidence.Length > 1;
        }

        IsDone = true;
    }

    /// <summary>True when what was asked of other entries would be answered the same way.</summary>
    /// <param name="now">The note as it is.</param>
    /// <param name="touched">What an edit touched.</param>
    public bool StillHolds(History now, Asks touched) => earlier is null || (earlier.Asked & touched) == 0 || earlier.StillHolds(now);

    /// <summary>The same for the entry in its new place. Where its findings rest on other entries, <see cref="StillHolds"/> tells whether they do.</summary>
    public EntryAnalysis At(Entry moved, DateOnly today)
    {
        int by = moved.Line - Entry.Line;
        if (by == 0)
        {
            return this;
        }

        ImmutableArray<NoteReading> readings = ImmutableArray.CreateRange(Readings, (reading, lines) => reading with { Line = reading.Line + lines }, by);
        return new EntryAnalysis(moved, readings, Compared.Length == 0 ? [] : Moved(readings), Moved(Lumps, by), Moved(Seizures, by), VisitSigns.Length == 0 ? [] : [.. VisitSigns.Select(sign => sign with { Line = sign.Line + by })], Trace.Of(moved, readings, today), [.. Slips.Select(slip => slip with { Reading = slip.Reading with { Line = slip.Reading.Line + by } })])
        {
            earlier = earlier?.Moved(by),
            IsDone = true,
            HasErrors = HasErrors,
            NamesOtherLines = NamesOtherLines,
            Findings = Findings.Length == 0 ? [] : [.. Findings.Select(finding => Moved(finding, by))],
        };
    }

    private static bool IsPlausible(NoteReading reading) => ClinicalTables.Default.IsPlausible(reading);

    private static bool IsWeighing(NoteReading reading) => reading.What == "weight";

    private ImmutableArray<ComparedReading> Moved(ImmutableArray<NoteReading> readings)
    {
        ImmutableArray<ComparedReading>.Builder moved = ImmutableArray.CreateBuilder<ComparedReading>(Compared.Length);
        int next = 0;
        for (int index = 0; index < readings.Length && next < Compared.Length; index++)
        {
            if (ReferenceEquals(Readings[index], Compared[next].Reading))
            {
                moved.Add(new ComparedReading(readings[index], Compared[next].Key));
                next++;
            }
        }

        return moved.DrainToImmutable();
    }

    /// <summary>What it rests on outside its own line is facts, and those have not moved.</summary>
    private static NoteFinding Moved(NoteFinding finding, int by) => finding with
    {
        Line = finding.Line + by,
        Evidence = finding.Evidence.Length == 1 ? [finding.Line + by] : [.. finding.Evidence.Select(line => line == finding.Line ? line + by : line).Order()],
    };

    private static ImmutableArray<Placed<T>> Moved<T>(ImmutableArray<Placed<T>> items, int by) =>
        items.Length == 0 ? items : [.. items.Select(item => new Placed<T>(item.Line + by, item.Value))];

    private static ImmutableArray<Placed<T>> Of<T>(Entry entry, Func<T, bool> wanted)
        where T : NoteItem
    {
        ImmutableArray<Placed<T>>.Builder? found = null;
        foreach (Placed<NoteItem> item in entry.Items)
        {
            if (item.Value is T value && wanted(value))
            {
                (found ??= ImmutableArray.CreateBuilder<Placed<T>>()).Add(new Placed<T>(item.Line, value));
            }
        }

        return found?.DrainToImmutable() ?? [];
    }
}
