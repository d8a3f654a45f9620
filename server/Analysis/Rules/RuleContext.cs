using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>What holds for a whole note, and every rule may look at: the pet, its facts, the tables, the day.</summary>
public sealed class RuleContext
{
    /// <summary>Where grown animals are compared when no birth is written.</summary>
    private const string StageWhenUnknown = "mature";

    /// <summary>Collects the facts of a note.</summary>
    public RuleContext(Note note, PetProfile pet, ClinicalTables tables, DateOnly today)
    {
        Pet = pet;
        Tables = tables;
        Today = today;
        Usuals = [.. note.Facts<UsualFact>()];
        CallIfs = [.. note.Facts<CallIfFact>().Select(fact => new DrawnLine(fact, note.Syntax.Lines[fact.Line].Text.Trim()))];
        Knowns = [.. note.Facts<TextFact>().Where(fact => fact.Fact.Word.Word == "known")];
        Conditions = [.. note.Facts<TextFact>().Where(fact => fact.Fact.Word.Word is "known" or "surgery")];
        Expects = [.. note.Facts<ExpectFact>()];
        Allergies = [.. note.Facts<TextFact>().Where(fact => fact.Fact.Word.Word == "allergy")];
        Accepts = [.. note.Facts<AcceptFact>()];
        OpeningTasks = [.. note.Opening.Facts.Where(fact => fact.Value.Word.Kind is WordKind.Task or WordKind.Act)];
        HomeCheck = note.Facts<HomeCheckFact>(today).LastOrDefault();
        Plans = [.. note.Facts<MedicinePlan>()];
        PlannedMedicines = [.. note.Facts<MedicinePlan>().Select(plan => plan.Fact.Medicine.Text)];
    }

    /// <summary>Who the note is about.</summary>
    public PetProfile Pet { get; }

    /// <summary>The clinical tables.</summary>
    public ClinicalTables Tables { get; }

    /// <summary>The day it is read on.</summary>
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

    /// <summary>The key of the life stage today; grown where no birth is written.</summary>
    public string StageToday => Pet.StageOn(Today)?.Key ?? StageWhenUnknown;

    /// <summary>The plans of all medicines, past ones too, in file order.</summary>
    public ImmutableArray<DatedFact<MedicinePlan>> Plans { get; }

    /// <summary>The medicines that a plan names, in file order.</summary>
    public ImmutableArray<string> PlannedMedicines { get; }

    /// <summary>How a reading is looked up in the tables; null when it is not compared: species or day unknown, panting, before birth.</summary>
    public static ReadingKey? KeyOf(NoteReading reading, PetProfile pet, ClinicalTables tables)
    {
        if (pet.Species == Species.Unknown || reading.Comparable is null || reading.Day is not { } day)
        {
            return null;
        }

        LifeStage? stage = pet.StageOn(day);
        if (pet.Born is not null && stage is null)
        {
            return null;
        }

        string state = reading.What == "glucose" && pet.OnInsulin ? "on-insulin" : reading.Comparable;
        return new ReadingKey(reading.What, pet.Species, stage?.Key ?? StageWhenUnknown, pet.SizeOn(day), state, reading.What == "temp" ? reading.Site : null);
    }

    /// <summary>How a reading is looked up in the tables; null when it is not compared.</summary>
    public ReadingKey? KeyOf(NoteReading reading) => KeyOf(reading, Pet, Tables);

    /// <summary>A finding at one line, resting on it and on <paramref name="evidence"/>.</summary>
    public static NoteFinding At(string rule, FindingLevel level, int line, TextSpan span, string message, string source, params IEnumerable<int> evidence) =>
        new(rule, level, line, span, message, source, [.. evidence.Append(line).Distinct().Order()]);
}

/// <summary>A line the clinic drew, and its text as written.</summary>
public sealed record DrawnLine(DatedFact<CallIfFact> Fact, string Written);
