using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Record.Pet;

/// <summary>Who the notes are about, as far as they say.</summary>
public sealed record PetProfile(
    string? Name,
    Species Species,
    string? Breed,
    bool? Male,
    bool? Neutered,
    PartialDate? Born,
    decimal? AdultWeightKg,
    bool OnInsulin,
    bool ShowUsUnits)
{
    /// <summary>Where grown animals are compared when no birth is written.</summary>
    internal const string StageWhenUnknown = "mature";

    /// <summary>A birth after this year is a slip, and must not run past the end of the calendar.</summary>
    private const int LastYear = 9000;

    /// <summary>All weighings, in file order.</summary>
    private IReadOnlyList<NoteReading> Weighed { get; init; } = [];

    /// <summary>Those that are points, by day.</summary>
    private ImmutableArray<NoteReading> Weights { get; init; } = [];

    /// <summary>Reads the opening, and takes the weighings of all entries. Facts that are not said are null; nothing is guessed.</summary>
    public static PetProfile Of(Note note, IReadOnlyList<NoteReading> weighings)
    {
        Opening opening = note.Opening;
        SexFact? sex = opening.First<SexFact>();
        decimal? adult = opening.First<AdultWeightFact>() is { } fact ? ReadValue.Of(fact.Weight)?.Number : null;
        bool insulin = note.Facts<MedicinePlan>().Any(plan => IsInsulin(plan.Fact.Medicine.Text))
            || note.Facts<TextFact>().Any(known => known.Fact.Word.Word == "known" && known.Fact.Text.Text.Contains("diabet", StringComparison.OrdinalIgnoreCase));
        return new PetProfile(
            opening.Text("pet"), opening.Species, opening.Text("breed"), sex?.Male, sex?.Neutered, opening.First<BornFact>()?.Date,
            adult, insulin, opening.First<UnitsFact>()?.Units.Word == "us")
        .WithWeighings(weighings);
    }

    /// <summary>True for the name of an insulin.</summary>
    public static bool IsInsulin(string medicine) => medicine.Contains("insulin", StringComparison.OrdinalIgnoreCase);

    /// <summary>The same pet with other weighings, in file order.</summary>
    public PetProfile WithWeighings(IReadOnlyList<NoteReading> weighings) =>
        Weighed.SequenceEqual(weighings) ? this
            : this with { Weighed = weighings, Weights = [.. weighings.Where(IsPoint).OrderBy(r => r.Day)] };

    /// <summary>The age on <paramref name="day"/>, or null when no birth is written.</summary>
    public Age? AgeOn(DateOnly day) => Born is null ? null : Age.On(Born, day);

    /// <summary>The day it comes to so many months; null when no birth is written, or no months are given.</summary>
    public DateOnly? GrownOn(int? months) => months is not { } count || AgeOn(DateOnly.MinValue) is not { } age ? null
        : age.Born.Year > LastYear ? DateOnly.MaxValue
        : age.Born.PlusMonths(count);

    /// <summary>The last weighing up to <paramref name="day"/>, or null.</summary>
    public NoteReading? WeightOn(DateOnly day)
    {
        int low = 0;
        int high = Weights.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = Weights[middle].Day <= day ? (middle + 1, high) : (low, middle);
        }

        return low == 0 ? null : Weights[low - 1];
    }

    /// <summary>True when every reading is looked up in the tables in the same way: all but the weights, and their size classes, are the same.</summary>
    public bool ComparesLike(PetProfile other) =>
        ReferenceEquals(this, other)
        || ((this with { Weighed = [], Weights = [] }) == (other with { Weighed = [], Weights = [] })
            && (AdultWeightKg is not null || SizeChanges().SequenceEqual(other.SizeChanges())));

    /// <summary>
    /// The size class: by the grown weight that is written, else by the last weighing of a grown animal; null when neither
    /// is known. A puppy's weight says nothing about its size class.
    /// </summary>
    public string? SizeOn(DateOnly day)
    {
        decimal? weight = AdultWeightKg ?? (AgeOn(day) is { Years: >= 1 } ? WeightOn(day)?.Value.Number : null);
        return weight is { } kg ? ClinicalTables.Default.SizeOf(Species, kg) : null;
    }

    private static bool IsPoint(NoteReading weight) => weight.Day is not null && weight.Value.Bound is Bound.Exact or Bound.About;

    /// <summary>The days on which a weighing puts the pet into another size class.</summary>
    private IEnumerable<(DateOnly? Day, string? Size)> SizeChanges()
    {
        string? before = null;
        for (int index = 0; index < Weights.Length; index++)
        {
            // of several weighings of one day the last counts
            bool last = index == Weights.Length - 1 || Weights[index + 1].Day != Weights[index].Day;
            string? size = last ? ClinicalTables.Default.SizeOf(Species, Weights[index].Value.Number) : before;
            if (size != before)
            {
                yield return (Weights[index].Day, size);
                before = size;
            }
        }
    }

    /// <summary>The life stage on <paramref name="day"/>; null when species or birth is not known.</summary>
    public LifeStage? StageOn(DateOnly day) =>
        AgeOn(day) is { Days: >= 0 } age ? ClinicalTables.Default.StageOf(Species, SizeOn(day), age) : null;

    /// <summary>How a reading is looked up in the tables; null when it is not compared: species or day unknown, panting, before birth.</summary>
    public ReadingKey? KeyOf(NoteReading reading)
    {
        if (Species == Species.Unknown || reading.Comparable is null || reading.Day is not { } day)
        {
            return null;
        }

        LifeStage? stage = StageOn(day);
        if (Born is not null && stage is null)
        {
            return null;
        }

        string state = reading.What == "glucose" && OnInsulin ? "on-insulin" : reading.Comparable;
        return new ReadingKey(reading.What, Species, stage?.Key ?? StageWhenUnknown, SizeOn(day), state, reading.What == "temp" ? reading.Site : null);
    }
}
