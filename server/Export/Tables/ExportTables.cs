using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Due;
using HealthNotes.Record.HomeCare;
using HealthNotes.Record.Lumps;
using HealthNotes.Record.Readings;
using static HealthNotes.Export.Tables.ColumnType;

namespace HealthNotes.Export.Tables;

/// <summary>Every table of the export. A wider table is a row here; whoever writes or documents tables reads this one.</summary>
public static class ExportTables
{
    /// <summary>
    /// The version of the tables. A new column or table leaves it as it is; one that goes, or means something else, makes it greater.
    /// </summary>
    public const int Version = 1;

    private const decimal MilligramsAKilogram = 1_000_000;

    /// <summary>All tables, in the order in which they are documented.</summary>
    public static ImmutableArray<ExportTable> All { get; } =
    [
        Pets(),
        Table<Entry>("entries", "One dated entry.", note => note.Analysis.Note.Entries.Select(entry => new Row<Entry>(entry.Line, entry.Head, entry.Head.Time, entry)),
        [
            new("items", Integer, "How many observations it holds.", (_, row) => row.Of.Items.Length, Always: true),
            new("not_understood", Integer, "How many of its lines were not understood.", (_, row) => row.Of.NotUnderstood.Length, Always: true),
            new("current", YesNo, "True in the current period: since the last visit, or the last twelve months.", (note, row) => note.Analysis.Record.Period.Holds(row.Of), Always: true),
        ]),
        Table<MeasuredValue>("readings", "One measured value in its canonical unit. Values that cannot be right are left out.", MeasuredValue.In,
        [
            new("what", Text, "What was measured: `weight`, `hr`, `rr`, `temp`, `bp-systolic`, `lump`, `water`.", (_, row) => row.Of.What, Always: true),
            new("site", Text, "The place on the body, or where it was taken.", (_, row) => row.Of.Reading?.Site),
            new("tag", Text, "The name that tells two lumps of one place apart.", (_, row) => row.Of.Reading?.Tag, Privacy.Name),
            new("state", Text, "How the pet was: `asleep`, `rest`.", (_, row) => row.Of.Reading?.State),
            new("compared_as", Text, "The state it is compared in; empty for one that is never compared.", (_, row) => row.Of.Reading?.Comparable),
            new("value", Number, "The value.", (_, row) => row.Of.Value.Number, Always: true),
            new("low", Number, "The least it may really be, by its count or its comparison.", (_, row) => row.Of.Value.Low),
            new("high", Number, "The most it may really be.", (_, row) => row.Of.Value.High),
            new("unit", Text, "The unit: `kg`, `/min`, `Cel`, `mm`, `s`, `mL`, `mmol/L`, `mmHg`, or a scale such as `/9`.", (_, row) => row.Of.Value.Unit, Always: true),
            new("bound", Text, "`<`, `>` or `~` where the value is a bound or about.", (_, row) => Mark(row.Of.Value.Bound)),
            new("written", Text, "The value as written.", (_, row) => row.Of.Written),
            new("normal_low", Number, "The lower end of the reference range; empty where none applies.", (note, row) => row.Of.Normal(note)?.Low),
            new("normal_high", Number, "The upper end of the reference range.", (note, row) => row.Of.Normal(note)?.High),
            new("limit_below", Number, "The clinic's limit that held on that day: below it the clinic wants a call.", (note, row) => row.Of.Limit(note, above: false)),
            new("limit_above", Number, "The same: above it the clinic wants a call.", (note, row) => row.Of.Limit(note, above: true)),
        ]),
        Table<Sign>("signs", "One sign of one part: there, looked for and not there, or no longer there. A part without a describing word has one row.", Sign.In,
        [
            new("part", Text, "The part or event: `gums`, `ear`, `vomit`.", (_, row) => row.Of.Part.Word, Always: true),
            new("site", Text, "The place on the body.", (_, row) => row.Of.Item.Site?.Name),
            new("tag", Text, "The name that tells two findings of one place apart.", (_, row) => row.Of.Item.Tag?.Name, Privacy.Name),
            new("sign", Text, "The describing word; empty where none was written.", (_, row) => row.Of.Described?.Word.Word),
            new("sense", Text, "`present`, `absent`, `ended`; without a describing word also `ok`, `noted` or `skipped`.", (_, row) => row.Of.Sense, Always: true),
            new("level", Text, "The level of the word in this animal: `expected`, `watch`, `call`, `urgent`; a rule may find otherwise.", (note, row) => row.Of.Level(note)),
        ]),
        Table<(LumpLife Life, int Number, LumpSize? Size)>("lumps", "One look at a lump, a wound, a sore place or a measured node.", Lumps,
        [
            new("kind", Text, "`lump`, `wound`, `pain-site` or `node`.", (_, row) => row.Of.Life.Key.Word, Always: true),
            new("number", Integer, "Its number in this note, the same on page, map and sheet.", (_, row) => row.Of.Number, Always: true),
            new("site", Text, "The place on the body.", (_, row) => row.Of.Life.Site?.Name),
            new("tag", Text, "The name that tells two of one place apart.", (_, row) => row.Of.Life.Tag, Privacy.Name),
            new("first_noted", Date, "The day it was first noted.", (_, row) => row.Of.Life.First.Day, Always: true),
            new("size_mm", Number, "The longest diameter; empty where none or only a bound was written.", (_, row) => row.Of.Size?.Typical),
            new("low_mm", Number, "The least it may really be, by the error of measuring by hand.", (_, row) => row.Of.Size?.HandLow),
            new("high_mm", Number, "The most it may really be.", (_, row) => row.Of.Size?.HandHigh),
            new("ended_as", Text, "The word of the line that says that it is gone or removed.", (_, row) => row.Of.Life.EndWord),
        ]),
        Table<MedicineOrder>("orders", "One line of a medicine's plan.", note => MedicineOrder.All(note.Analysis.Record).Select(order => new Row<MedicineOrder>(order.Line, note.Analysis.Note.EntryAt(order.Line)?.Head, null, order)),
        [
            new("medicine", Text, "The medicine.", (_, row) => row.Of.Medicine, Privacy.Known, Always: true),
            new("amount", Number, "The amount for one time.", (_, row) => Amount(row.Of.Plan.Dose)?.Amount),
            new("unit", Text, "Its unit: `mg`, `mL`, `mg/kg`, or what is counted (`tablet`).", (_, row) => Amount(row.Of.Plan.Dose)?.Unit),
            new("every_hours", Number, "The fewest hours between two doses.", (_, row) => row.Of.Interval),
            new("every_hours_to", Number, "The most hours between two doses.", (_, row) => row.Of.LongestInterval),
            new("as_needed", YesNo, "True for a medicine that is given only when needed.", (_, row) => row.Of.AsNeeded, Always: true),
            new("from", Date, "The first day; empty where none is written.", (_, row) => row.Of.From == DateOnly.MinValue ? null : row.Of.From),
            new("until", Date, "The last day it held: as written, stopped, or replaced by another plan; empty while it goes on.", (_, row) => row.Of.EndDay),
        ]),
        Table<NoteItem>("doses", "One line about a dose: given, missed, or the end of a medicine.", note => Items(note).Where(row => row.Of is DoseEvent),
        [
            new("medicine", Text, "The medicine.", (_, row) => ((DoseEvent)row.Of).Medicine.Text.ToLowerInvariant(), Privacy.Known, Always: true),
            new("kind", Text, "`gave`, `missed` or `stop`.", (_, row) => row.Of.Word.Word, Always: true),
            new("amount", Number, "The amount.", (_, row) => Amount(row.Of.Value)?.Amount),
            new("unit", Text, "Its unit: `mg`, `mL`, or what is counted (`tablet`).", (_, row) => Amount(row.Of.Value)?.Unit),
            new("mg_per_kg", Number, "The amount by the last weighing; empty for a tablet, whose strength is not known.", (note, row) => row.In?.Date is { } day && note.Analysis.Record.WeightOn(day) is { } weight ? DosePerWeight.MilligramsPerKilogram(row.Of.Value, weight.Value.Number) : null),
        ]),
        Table<NoteItem>("care", "One line of home care: a meal, water, stool, vomiting, a walk.", note => Items(note).Where(row => row.Of is CareEvent or NotSeen && row.Of.Word.Kind == WordKind.Care && !row.Of.Word.Has(SlotKind.Medicine)),
        [
            new("what", Text, "The event: `ate`, `water`, `stool`, `vomit`, `seizure`.", (_, row) => row.Of.Word.Word, Always: true),
            new("times", Integer, "How often, 0 when it was said not to have happened; empty when not said.", (_, row) => row.Of is CareEvent care ? care.Times : 0),
            new("times_bound", Text, "`<`, `>` or `~` where the times are a bound or about.", (_, row) => Mark((row.Of as CareEvent)?.TimesBound ?? Bound.Exact)),
            new("part", Number, "How much of a meal: 0 to 1.", (_, row) => row.Of.Value is Portion { Whole: > 0 } portion ? portion.Part / portion.Whole : null),
            new("seconds", Number, "How long it lasted.", (_, row) => (row.Of as CareEvent)?.Duration is { } long0 ? UnitConversion.ToCanonical(long0) : null),
        ]),
        Table<NoteItem>("labs", "One laboratory value.", note => Items(note).Where(row => row.Of is LabResult),
        [
            new("analyte", Text, "What was measured, as written.", (_, row) => row.Of.Name?.Text.ToLowerInvariant(), Privacy.Known, Always: true),
            new("value", Number, "The number; empty for a result in words.", (_, row) => (row.Of.Value as LabValue)?.Number),
            new("unit", Text, "The unit as written.", (_, row) => row.Of.Value is LabValue { Number: not null } value ? value.UnitOrWords : null, Privacy.Known),
            new("bound", Text, "`<`, `>` or `~` where the value is a bound or about.", (_, row) => Mark(row.Of.Value?.Bound ?? Bound.Exact)),
            new("words", Text, "A result in words.", (_, row) => row.Of.Value is LabValue { Number: null } value ? value.UnitOrWords : null, Privacy.Words),
            new("ref_low", Number, "The lower end of the laboratory's own range.", (_, row) => ((LabResult)row.Of).Reference?.Low),
            new("ref_high", Number, "The upper end.", (_, row) => ((LabResult)row.Of).Reference?.High),
        ]),
        Table<NoteItem>("acts", "One vaccine, worming or treatment against fleas and ticks.", note => Items(note).Where(row => row.Of is Act),
        [
            new("act", Text, "`vaccine`, `worming` or `flea-tick`.", (_, row) => row.Of.Word.Word, Always: true),
            new("topic", Text, "Against what, as written.", (_, row) => row.Of.Name?.Text, Privacy.Name),
            new("on", Date, "The day it was done; the day of the entry where none is written.", (_, row) => row.Of.Schedule.On?.Exact ?? row.In?.Date),
            new("due", Date, "The day it falls due again, by what is written.", (_, row) => Again(row)),
        ]),
        Table<NoteItem>("facts", "One lasting fact: a condition, an allergy, a usual range, a limit of the clinic.", note => Facts(note).Where(row => Lasting.Contains(row.Of.Word.Word)),
        [
            new("fact", Text, "`known`, `allergy`, `surgery`, `usual`, `call-if`, `home-check`, `accept` or `expect`.", (_, row) => row.Of.Word.Word, Always: true),
            new("about", Text, "The measure or part it is about.", (_, row) => row.Of.About?.Word),
            new("state", Text, "The state it is limited to.", (_, row) => row.Of.State?.Word),
            new("low", Number, "The lower end of a usual range, or the limit below which the clinic wants a call; canonical unit.", (_, row) => Ends(row.Of).Low),
            new("high", Number, "The upper end, or the limit above which the clinic wants a call.", (_, row) => Ends(row.Of).High),
            new("until", Date, "The last day it holds.", (_, row) => row.Of.Schedule.Until?.Latest),
            new("words", Text, "The fact in the owner's words.", (_, row) => row.Of.Name?.Text, Privacy.Words),
            new("per", Text, "Who said so.", (_, row) => row.Of.Body.First<Attribution>()?.Who, Privacy.Name),
        ]),
        Table<DueItem>("due", "One thing that falls due and is not done. `date` is the day of the line it rests on.", note => DueList.Of(note.Analysis.Record).Select(due => new Row<DueItem>(due.Line, note.Analysis.Note.EntryAt(due.Line)?.Head, null, due)),
        [
            new("kind", Text, "`check`, `weighing`, `visit`, `recheck`, `task`, `medicine` or `course-end`.", (_, row) => NameOf(row.Of.Kind), Always: true),
            new("what", Text, "What it is, as written.", (_, row) => row.Of.What.Length == 0 ? null : row.Of.What, Privacy.Words),
            new("due_on", Date, "The day it falls due; empty for a task from which no day follows.", (_, row) => row.Of.On),
            new("days_late", Integer, "How many days ago it was due; below 0 for what is to come.", (note, row) => row.Of.On is { } on ? note.Analysis.Today.DayNumber - on.DayNumber : null),
        ]),
        Table<NoteFinding>("findings", "One finding of a rule.", note => note.Analysis.Findings.Select(finding => new Row<NoteFinding>(finding.Line, note.Analysis.Note.EntryAt(finding.Line)?.Head, null, finding)),
        [
            new("rule", Text, "The name of the rule; `hnote about` explains it.", (_, row) => row.Of.Rule, Always: true),
            new("level", Text, "`info`, `watch`, `call`, `urgent`, or `error` for what could not be read.", (_, row) => row.Of.Level.ToString().ToLowerInvariant(), Always: true),
            new("open", YesNo, "True when it is of the current period and no later look has ended it.", (note, row) => note.Analysis.IsOpen(row.Of), Always: true),
            new("topic", Text, "What it is about.", (_, row) => row.Of.Topic.Length == 0 ? null : row.Of.Topic, Privacy.Words),
            new("message", Text, "What was found, as it is shown.", (_, row) => row.Of.Message, Privacy.Words),
            new("source", Text, "The publication behind it, or `common practice, no source`, or `this project's own choice`.", (_, row) => row.Of.Source, Privacy.Words),
            new("evidence", Text, "The lines it rests on, with blanks between them.", (_, row) => string.Join(' ', row.Of.Evidence.Select(line => line + 1)), Always: true),
        ]),
        Table<(string Kind, string Words)>("texts", "The owner's own words. Empty unless they are asked for.", Texts,
        [
            new("kind", Text, "`text`, `remark`, `question` or `not-understood`.", (_, row) => row.Of.Kind, Always: true),
            new("words", Text, "The words.", (_, row) => row.Of.Words, Privacy.Words, Always: true),
        ]),
    ];

    private static readonly string[] Lasting = ["known", "allergy", "surgery", "usual", "call-if", "phone-now-if", "home-check", "accept", "expect"];

    internal static string NameOf(DueKind kind) => kind == DueKind.CourseEnd ? "course-end" : kind.ToString().ToLowerInvariant();

    /// <summary>Every observation of every entry.</summary>
    internal static IEnumerable<Row<NoteItem>> Items(ExportedNote note) =>
        from entry in note.Analysis.Note.Entries
        from item in entry.Items
        select new Row<NoteItem>(item.Line, entry.Head, item.Value.Head.Time ?? entry.Head.Time, item.Value);

    internal static string? Mark(Bound bound) => bound switch { Bound.Below => "<", Bound.Above => ">", Bound.About => "~", _ => null };

    /// <summary>An amount in the unit people use: milligrams for a mass.</summary>
    internal static (decimal Amount, string Unit)? Amount(NoteValue? dose) =>
        MedicineOrder.AmountOf(dose) is { } amount ? amount.Unit == "kg" ? (amount.Amount * MilligramsAKilogram, "mg") : amount : null;

    private static ExportTable<ExportedNote> Pets() => new("pets", "One note, as read on one day.", note => [note],
    [
        new("pet_id", Text, "The pet, in all tables: worked out from its chip, else from the file.", (note, _) => note.PetId, Always: true),
        new("file", Text, "The file, below the folder that was named.", (note, _) => note.File, Privacy.Name, Always: true),
        new("line", Integer, "The line that names the pet, from 1; 1 where none does.", (note, _) => (note.Analysis.Note.Opening.Facts.FirstOrDefault(fact => fact.Value.Word.Word == "pet")?.Line ?? 0) + 1, Always: true),
        new("schema", Integer, "The version of these tables.", (_, _) => Version, Always: true),
        new("today", Date, "The day it was read on.", (note, _) => note.Analysis.Today, Always: true),
        new("name", Text, "The name.", (note, _) => note.Analysis.Pet.Name, Privacy.Name),
        new("species", Text, "`dog` or `cat`.", (note, _) => note.Analysis.Pet.Species switch { Species.Dog => "dog", Species.Cat => "cat", _ => null }),
        new("breed", Text, "The breed as written.", (note, _) => note.Analysis.Pet.Breed, Privacy.Known),
        new("sex", Text, "`male` or `female`.", (note, _) => note.Analysis.Pet.Male switch { true => "male", false => "female", null => null }),
        new("neutered", YesNo, "True when neutered; empty where not said.", (note, _) => note.Analysis.Pet.Neutered),
        new("born", Date, "The first day that the date of birth can mean.", (note, _) => note.Analysis.Pet.Born?.Earliest),
        new("age_days", Integer, "The age on the day of reading.", (note, _) => note.Analysis.Pet.AgeOn(note.Analysis.Today)?.Days),
        new("life_stage", Text, "The life stage on that day.", (note, _) => note.Analysis.Pet.StageOn(note.Analysis.Today)?.Key),
        new("size", Text, "The size class.", (note, _) => note.Analysis.Pet.SizeOn(note.Analysis.Today)),
        new("adult_weight_kg", Number, "The grown weight as written.", (note, _) => note.Analysis.Pet.AdultWeightKg),
        new("last_weight_kg", Number, "The last weighing.", (note, _) => note.Analysis.Record.WeightOn(note.Analysis.Today)?.Value.Number),
        new("chip", Text, "The number of the microchip.", (note, _) => note.Analysis.Note.Opening.Text("chip"), Privacy.Name),
        new("owner", Text, "The owner.", (note, _) => note.Analysis.Note.Opening.Text("owner"), Privacy.Name),
        new("vet", Text, "The vet.", (note, _) => note.Analysis.Note.Opening.Text("vet"), Privacy.Name),
        new("clinic", Text, "The clinic.", (note, _) => note.Analysis.Note.Opening.Text("clinic"), Privacy.Name),
        new("first_day", Date, "The first day of an entry.", (note, _) => note.Analysis.Record.Entries.Min(entry => entry.Day)),
        new("last_day", Date, "The last one up to the day of reading.", (note, _) => note.Analysis.Record.Entries.Where(entry => entry.Day <= note.Analysis.Today).Max(entry => entry.Day)),
        new("lines", Integer, "How many lines the file has.", (note, _) => note.Analysis.Note.Syntax.Lines.Length, Always: true),
    ]);

    private static ExportTable<Row<T>> Table<T>(string name, string about, Func<ExportedNote, IEnumerable<Row<T>>> rows, ImmutableArray<Column<Row<T>>> columns) => new(name, about, rows,
    [
        new("pet_id", Text, "The pet, in all tables.", (note, _) => note.PetId, Always: true),
        new("file", Text, "The file, below the folder that was named.", (note, _) => note.File, Privacy.Name, Always: true),
        new("line", Integer, "The line in the file, from 1.", (_, row) => row.Line + 1, Always: true),
        new("date", Date, "The day of the entry; empty in the opening.", (_, row) => row.In?.Date),
        new("time", Text, "The time of the line, else of its entry: `08:15`.", (_, row) => row.Time is { } time ? $"{time:HH\\:mm}" : null),
        new("entry", Text, "The kind of entry: `check`, `log`, `visit`.", (_, row) => row.In?.Kind),
        .. columns,
    ]);

    private static IEnumerable<Row<NoteItem>> Facts(ExportedNote note) =>
        note.Analysis.Note.Opening.Facts.Select(fact => new Row<NoteItem>(fact.Line, null, null, fact.Value))
            .Concat(note.Analysis.Note.Entries.SelectMany(entry => entry.Facts.Select(fact => new Row<NoteItem>(fact.Line, entry.Head, entry.Head.Time, fact.Value))));

    private static IEnumerable<Row<(LumpLife, int, LumpSize?)>> Lumps(ExportedNote note) =>
        from numbered in LumpNumbering.Of(note.Analysis.Record)
        from line in numbered.Life.Lines
        select new Row<(LumpLife, int, LumpSize?)>(line.Line, line.Head, line.Time, (numbered.Life, numbered.Number, numbered.Life.Sizes.FirstOrDefault(size => ReferenceEquals(size.Noted, line))));

    private static (decimal? Low, decimal? High) Ends(NoteItem fact) => fact switch
    {
        UsualFact usual => (In(usual.Range.Low, usual.Range.Unit), In(usual.Range.High, usual.Range.Unit)),
        CallIfFact { Limit: var limit } => In(limit.Number, limit.Unit) is var end && limit.Bound == Bound.Above ? (null, end) : (end, null),
        _ => (null, null),
    };

    private static decimal In(decimal number, Unit? unit) => unit is null ? number : UnitConversion.ToCanonical(new Amount(number, unit));

    private static DateOnly? Again(Row<NoteItem> act) => act.Of.Schedule.Until?.Latest
        ?? ((act.Of.Schedule.On?.Exact ?? act.In?.Date) is { } day && (act.Of.Schedule.For ?? act.Of.Schedule.Every ?? act.Of.Schedule.In) is { } span ? Schedule.Add(day, span) : null);

    private static IEnumerable<Row<(string, string)>> Texts(ExportedNote note) => !note.WithText ? []
        : Blocks(note.Analysis.Note.Opening.Texts, null)
            .Concat(note.Analysis.Note.Entries.SelectMany(entry => Blocks(entry.Texts, entry.Head)
                .Concat(entry.NotUnderstood.Select(line => new Row<(string, string)>(line, entry.Head, entry.Head.Time, ("not-understood", note.Analysis.Note.Syntax.Lines[line].Text.Trim()))))))
            .Concat(Items(note).SelectMany(row => Own(row.Of).Select(own => new Row<(string, string)>(row.Line, row.In, row.Time, own))))
            .OrderBy(row => row.Line);

    private static IEnumerable<Row<(string, string)>> Blocks(ImmutableArray<FreeTextBlock> texts, Grammar.Syntax.EntryHead? head) =>
        texts.Select(text => new Row<(string, string)>(text.Line, head, head?.Time, ("text", text.Markdown)));

    private static IEnumerable<(string, string)> Own(NoteItem item)
    {
        if (item is TextTask { Word.Word: "ask" } question)
        {
            yield return ("question", question.Text.Text);
        }

        if (item.Note is { } remark)
        {
            yield return ("remark", remark.Text);
        }
    }
}
