using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Pet;
using HealthNotes.Analysis.Ranges;
using HealthNotes.Analysis.Readings;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Analysis.Rules;

/// <summary>What a rule may look at.</summary>
public sealed record RuleContext(
    Note Note,
    PetProfile Pet,
    ImmutableArray<NoteReading> Readings,
    ClinicalTables Tables,
    DateOnly Today)
{
    /// <summary>Where grown animals are compared when no birth is written.</summary>
    private const string StageWhenUnknown = "mature";

    /// <summary>The usual ranges that were written, in file order. Collected once: rules ask for them at every reading.</summary>
    public ImmutableArray<DatedFact<UsualFact>> Usuals { get; } = [.. Note.Facts<UsualFact>()];

    /// <summary>The lines the clinic drew, in file order.</summary>
    public ImmutableArray<DatedFact<CallIfFact>> CallIfs { get; } = [.. Note.Facts<CallIfFact>()];

    /// <summary>The conditions the vet has named, in file order.</summary>
    public ImmutableArray<DatedFact<TextFact>> Knowns { get; } = [.. Note.Facts<TextFact>().Where(fact => fact.Fact.Word.Word == "known")];

    /// <summary>How a reading is looked up in the tables; null when it is not compared: species or day unknown, panting, before birth.</summary>
    public static ReadingKey? KeyOf(NoteReading reading, PetProfile pet, ClinicalTables tables)
    {
        if (pet.Species == Species.Unknown || reading.Comparable is null || reading.Day is not { } day)
        {
            return null;
        }

        if (pet.Born is not null && pet.StageOn(day, tables) is null)
        {
            return null;
        }

        string stage = pet.StageOn(day, tables)?.Key ?? StageWhenUnknown;
        string state = reading.What == "glucose" && pet.OnInsulin ? "on-insulin" : reading.Comparable;
        return new ReadingKey(reading.What, pet.Species, stage, pet.SizeOn(day, tables), state, reading.What == "temp" ? reading.Site : null);
    }

    /// <summary>How a reading is looked up in the tables; null when it is not compared.</summary>
    public ReadingKey? KeyOf(NoteReading reading) => KeyOf(reading, Pet, Tables);

    /// <summary>A finding at one line, resting on it and on <paramref name="evidence"/>.</summary>
    public static NoteFinding At(string rule, FindingLevel level, int line, TextSpan span, string message, string source, params IEnumerable<int> evidence) =>
        new(rule, level, line, span, message, source, [.. evidence.Append(line).Distinct().Order()]);

    /// <summary>Every item of the entries, with its entry.</summary>
    public IEnumerable<(Entry Entry, int Line, NoteItem Item)> Items() =>
        Note.Entries.SelectMany(entry => entry.Items.Select(item => (entry, item.Line, item.Value)));
}
