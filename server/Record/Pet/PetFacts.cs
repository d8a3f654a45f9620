using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Courses;

namespace HealthNotes.Record.Pet;

/// <summary>The facts of a note, wherever they stand in it, and the day it is read on. The same object until an edit touches or moves one.</summary>
public sealed class PetFacts
{
    private readonly ImmutableArray<(int Line, EntryHead? In, NoteItem Item)> placed;

    /// <summary>Collects the facts of a note.</summary>
    public PetFacts(Note note, PetProfile pet, DateOnly today)
    {
        placed = Placed(note);
        Pet = pet;
        Today = today;
        Usuals = [.. note.Facts<UsualFact>()];
        CallIfs = [.. note.Facts<CallIfFact>().Select(fact => new DrawnLine(fact, note.Syntax.Lines[fact.Line].Text.Trim()))];
        Conditions = [.. note.Facts<TextFact>().Where(fact => fact.Fact.Word.Word is "known" or "surgery")];
        Knowns = Conditions.RemoveAll(fact => fact.Fact.Word.Word != "known");
        Expects = [.. note.Facts<ExpectFact>()];
        Allergies = [.. note.Facts<TextFact>().Where(fact => fact.Fact.Word.Word == "allergy")];
        Accepts = [.. note.Facts<AcceptFact>()];
        OpeningTasks = [.. note.Opening.Facts.Where(fact => fact.Value.Word.Kind is WordKind.Task or WordKind.Act)];
        HomeCheck = note.Facts<HomeCheckFact>(today).LastOrDefault();
        Plans = [.. note.Facts<MedicinePlan>()];
        PlansByMedicine = Plans.ToLookup(plan => CourseKey.MedicineName(plan.Fact.Medicine.Text));
    }

    /// <summary>Who the note is about. Its weights may be those of an earlier version: a rule asks the record for them.</summary>
    public PetProfile Pet { get; }

    /// <summary>The day the note is read on.</summary>
    public DateOnly Today { get; }

    /// <summary>The usual ranges that were written, in file order.</summary>
    public ImmutableArray<DatedFact<UsualFact>> Usuals { get; }

    /// <summary>The lines the clinic drew, in file order.</summary>
    public ImmutableArray<DrawnLine> CallIfs { get; }

    /// <summary>The conditions the vet has named, in file order.</summary>
    public ImmutableArray<DatedFact<TextFact>> Knowns { get; }

    /// <summary>Those, and the operations: what explains a sign.</summary>
    public ImmutableArray<DatedFact<TextFact>> Conditions { get; }

    /// <summary>What the clinic said will be seen, in file order.</summary>
    public ImmutableArray<DatedFact<ExpectFact>> Expects { get; }

    /// <summary>The findings that are accepted, in file order.</summary>
    public ImmutableArray<DatedFact<AcceptFact>> Accepts { get; }

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

/// <summary>A line the clinic drew, and its text as written.</summary>
public sealed record DrawnLine(DatedFact<CallIfFact> Fact, string Written);
