using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Readings;

namespace HealthNotes.Record.Pet;

/// <summary>The facts of a note, wherever they stand in it, and the day it is read on. The same object until an edit touches or moves one.</summary>
public sealed class PetFacts
{
    private static readonly bool[] Sides = [true, false];
    private readonly ImmutableArray<(int Line, EntryHead? In, NoteItem Item)> placed;
    private readonly Dictionary<(LimitKey Key, bool Above, bool Now), DrawnLine[]> limits;

    /// <summary>Collects the facts of a note.</summary>
    public PetFacts(Note note, PetProfile pet, DateOnly today)
    {
        placed = Placed(note);
        Pet = pet;
        Today = today;
        Usuals = WithClinic(note.Facts<UsualFact>(), note, fact => LimitKey.Of(fact.Vital, fact.State, fact.Place)).ToLookup(fact => LimitKey.Of(fact.Fact.Vital, fact.Fact.State, fact.Fact.Place));
        CallIfs = [.. WithClinic(note.Facts<CallIfFact>(), note, fact => (LimitKey.Of(fact.Vital, fact.State, fact.Place), fact.Limit.Bound, fact.IsNow)).Select(fact => new DrawnLine(fact))];
        limits = CallIfs.GroupBy(drawn => (drawn.Key, drawn.IsAbove, drawn.Fact.Fact.IsNow)).ToDictionary(same => same.Key, same => same.GroupBy(drawn => drawn.Fact.Day).OrderBy(day => day.Key)
            .Select(day => day.MinBy(drawn => drawn.IsAbove ? drawn.Limit : -drawn.Limit)!).ToArray());
        Conditions = new WordIndex(note.Facts<TextFact>().Where(fact => fact.Fact.Word.Word is "known" or "surgery"));
        Knowns = [.. Conditions.Facts.Where(fact => fact.Fact.Word.Word == "known")];
        Expects = note.Facts<ExpectFact>().ToLookup(fact => fact.Fact.Item);
        Allergies = [.. note.Facts<TextFact>().Where(fact => fact.Fact.Word.Word == "allergy")];
        Accepts = note.Facts<AcceptFact>().ToLookup(fact => fact.Fact.Rule.Text);
        OpeningTasks = [.. note.Opening.Facts.Where(fact => fact.Value.Word.Kind is WordKind.Task or WordKind.Act)];
        HomeCheck = WithClinic(note.Facts<HomeCheckFact>(today), note, _ => true).LastOrDefault();
        Plans = [.. note.Facts<MedicinePlan>()];
        MedicineRanges = WithClinic(note.Facts<MedicineRangeFact>(today), note, fact => CourseKey.MedicineName(fact.Medicine.Text)).ToLookup(fact => CourseKey.MedicineName(fact.Fact.Medicine.Text));
        MedicineStrengths = WithClinic(note.Facts<MedicineStrengthFact>(today), note, fact => CourseKey.MedicineName(fact.Medicine.Text)).ToLookup(fact => CourseKey.MedicineName(fact.Fact.Medicine.Text));
        Overrides = WithClinic(note.Facts<OverrideFact>(), note, fact => fact.Rule.Text).ToLookup(fact => fact.Fact.Rule.Text);
        PlansByMedicine = Plans.ToLookup(plan => CourseKey.MedicineName(plan.Fact.Medicine.Text));
    }

    /// <summary>Who the note is about. Its weights may be those of an earlier version: a rule asks the record for them.</summary>
    public PetProfile Pet { get; }

    /// <summary>The day the note is read on.</summary>
    public DateOnly Today { get; }

    /// <summary>The usual ranges that were written, by what they are for, in file order.</summary>
    public ILookup<LimitKey, DatedFact<UsualFact>> Usuals { get; }

    /// <summary>The lines the clinic drew, in file order.</summary>
    public ImmutableArray<DrawnLine> CallIfs { get; }

    /// <summary>
    /// The lines that hold on a day for one of these, at most one for each of them and side: what a visit draws takes the place of
    /// what was drawn before it, and of several lines of one day the strictest holds. A line of the opening is the oldest.
    /// </summary>
    /// <param name="keys">What they are for; the lines come in this order.</param>
    /// <param name="day">The day; null for the newest.</param>
    /// <param name="now">Those past which one phones now, instead of those past which one phones.</param>
    public IEnumerable<DrawnLine> LimitsOn(IEnumerable<LimitKey> keys, DateOnly? day, bool now = false) =>
        from key in keys
        from above in Sides
        where limits.ContainsKey((key, above, now))
        let drawn = Array.FindLast(limits[(key, above, now)], drawn => !(drawn.Fact.Day > day))
        where drawn is not null
        select drawn;

    /// <summary>The conditions the vet has named, in file order.</summary>
    public ImmutableArray<DatedFact<TextFact>> Knowns { get; }

    /// <summary>Those, and the operations: what explains a sign.</summary>
    public WordIndex Conditions { get; }

    /// <summary>What the clinic said will be seen, by part, in file order.</summary>
    public ILookup<LineWord, DatedFact<ExpectFact>> Expects { get; }

    /// <summary>The findings that are accepted, by rule, in file order.</summary>
    public ILookup<string, DatedFact<AcceptFact>> Accepts { get; }

    /// <summary>What the pet must not have, in file order.</summary>
    public ImmutableArray<DatedFact<TextFact>> Allergies { get; }

    /// <summary>The tasks and acts of the opening.</summary>
    public ImmutableArray<Placed<NoteItem>> OpeningTasks { get; }

    /// <summary>How often this pet is to be checked at home: the last line that says so up to today, or null.</summary>
    public DatedFact<HomeCheckFact>? HomeCheck { get; }

    /// <summary>The plans of all medicines, past ones too, in file order.</summary>
    public ImmutableArray<DatedFact<MedicinePlan>> Plans { get; }

    /// <summary>Those plans by the medicine's name as it is compared, in the order of each one's first line.</summary>
    public ILookup<string, DatedFact<MedicinePlan>> PlansByMedicine { get; }

    /// <summary>The single doses that the clinic orders, by the medicine's name as it is compared.</summary>
    public ILookup<string, DatedFact<MedicineRangeFact>> MedicineRanges { get; }

    /// <summary>What one tablet holds, by the same name.</summary>
    public ILookup<string, DatedFact<MedicineStrengthFact>> MedicineStrengths { get; }

    /// <summary>What the clinic's rules lower of what is urgent, by rule.</summary>
    public ILookup<string, DatedFact<OverrideFact>> Overrides { get; }

    /// <summary>The medicines that a plan names, in file order.</summary>
    public IEnumerable<string> PlannedMedicines => Plans.Select(plan => plan.Fact.Medicine.Text);

    /// <summary>The key of the life stage today; grown where no birth is written.</summary>
    public string StageToday => Pet.StageOn(Today)?.Key ?? PetProfile.StageWhenUnknown;

    /// <summary>True when the very same lines stand in the same entries.</summary>
    /// <param name="note">Another version of the note.</param>
    /// <param name="moved">True when some of them stand further up or down: findings that name their lines have to say so.</param>
    public bool SameIn(Note note, out bool moved) => SameAs(Placed(note), out moved);

    /// <summary>The same for the facts of another version.</summary>
    public bool SameAs(PetFacts other, out bool moved) => SameAs(other.placed, out moved);

    private bool SameAs(ImmutableArray<(int Line, EntryHead? In, NoteItem Item)> other, out bool moved)
    {
        moved = false;
        if (placed.Length != other.Length)
        {
            return false;
        }

        for (int index = 0; index < placed.Length; index++)
        {
            if (!ReferenceEquals(placed[index].Item, other[index].Item) || placed[index].In != other[index].In)
            {
                return false;
            }

            moved |= placed[index].Line != other[index].Line;
        }

        return true;
    }

    /// <summary>The facts of a note, and those of the clinic's rules that set something no other line sets.</summary>
    private static IEnumerable<DatedFact<T>> WithClinic<T, TKey>(IEnumerable<DatedFact<T>> own, Note note, Func<T, TKey> of)
        where T : NoteItem
    {
        if (note.Clinic.IsEmpty)
        {
            return own;
        }

        List<DatedFact<T>> facts = [.. own];
        foreach (ClinicRules rules in note.Clinic.Where(rules => rules.HoldsFor(note.Opening.Species)))
        {
            HashSet<TKey> set = [.. facts.Select(fact => of(fact.Fact))];
            facts.InsertRange(0, rules.Lines.Facts<T>().Where(fact => !set.Contains(of(fact.Fact))).Select(fact => fact with { Line = -1, From = rules.Name }));
        }

        return facts;
    }

    private static ImmutableArray<(int Line, EntryHead? In, NoteItem Item)> Placed(Note note)
    {
        ImmutableArray<(int, EntryHead?, NoteItem)>.Builder facts = ImmutableArray.CreateBuilder<(int, EntryHead?, NoteItem)>();
        facts.AddRange(note.Opening.Facts.Select(fact => (fact.Line, (EntryHead?)null, fact.Value)));
        foreach (Entry entry in note.Entries)
        {
            foreach (Placed<NoteItem> fact in entry.Facts)
            {
                facts.Add((fact.Line, entry.Head, fact.Value));
            }
        }

        return facts.DrainToImmutable();
    }
}

/// <summary>What a written limit is for; an empty state or place allows every one that is compared.</summary>
public readonly record struct LimitKey(string Vital, string State, string Place)
{
    /// <summary>The key of a fact.</summary>
    public static LimitKey Of(LineWord vital, StateWord? state, StateWord? place) => new(vital.Word, state is null ? "" : state.Comparable ?? "never", place?.Word ?? "");

    /// <summary>The keys of the facts that concern a reading, what is written of it most closely first; none for one that is never compared (panting and the like).</summary>
    public static IEnumerable<LimitKey> For(NoteReading reading) => reading.Comparable is { } state ? For(reading.What, state, reading.Site is { } place ? [place] : []) : [];

    /// <summary>The same for all readings of a course.</summary>
    public static IEnumerable<LimitKey> For(CourseKey course) => course.Detail.Split(' ') is [var state, .. var places] ? For(course.Word, state, places) : [];

    private static IEnumerable<LimitKey> For(string vital, string state, string[] places) =>
        places.Append("").SelectMany(place => (LimitKey[])[new(vital, state, place), new(vital, "", place)]).Distinct();
}

/// <summary>A line the clinic drew.</summary>
public sealed record DrawnLine(DatedFact<CallIfFact> Fact)
{
    /// <summary>The limit in the canonical unit of its vital.</summary>
    public decimal Limit { get; } = Fact.Fact.Limit is { Unit: { } unit } limit ? UnitConversion.ToCanonical(new Amount(limit.Number, unit)) : Fact.Fact.Limit.Number;

    /// <summary>What it is for.</summary>
    public LimitKey Key { get; } = LimitKey.Of(Fact.Fact.Vital, Fact.Fact.State, Fact.Fact.Place);

    /// <summary>True where what is above the limit is past it.</summary>
    public bool IsAbove => Fact.Fact.Limit.Bound == Bound.Above;
}
