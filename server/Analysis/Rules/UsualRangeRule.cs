using HealthNotes.Analysis.Findings;
using HealthNotes.Record;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>A reading outside the range that this pet's vet calls usual for it.</summary>
public sealed class UsualRangeRule : IEntryRule
{
    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("usual-range", "reading", 3);

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(PetRecord at, PetEntry entry)
    {
        foreach (NoteReading reading in entry.Readings)
        {
            if (OwnLimits.UsualFor(at.Facts, reading) is not { } usual)
            {
                continue;
            }

            decimal low = OwnLimits.Canonical(usual.Fact.Range.Low, usual.Fact.Range.Unit);
            decimal high = OwnLimits.Canonical(usual.Fact.Range.High, usual.Fact.Range.Unit);
            bool above = LineCrossing.Crosses(reading.Value, above: true, high, inclusive: false);
            if (above || LineCrossing.Crosses(reading.Value, above: false, low, inclusive: false))
            {
                string shown = at.Facts.Pet.KeyOf(reading) is { } key && ClinicalTables.Default.NormalFor(key) is { } normal ? $" Shown as normal: {Wording.Show(normal, at.Facts.Pet.ShowUsUnits)}." : "";
                FindingLevel level = entry.Entry.Head.Kind == "visit" ? FindingLevel.Info : FindingLevel.Watch;
                yield return this.At(level, reading.Line, reading.Span,
                    $"{Wording.Describe(reading, at.Facts.Pet.ShowUsUnits)}: {(above ? "above" : "below")} {(usual.From is null ? "this pet's usual" : "the clinic's range")} {Wording.Show(low, high, reading.Value.Unit, at.Facts.Pet.ShowUsUnits)} ({usual.From ?? $"line {usual.Line + 1}"}).",
                    OwnLimits.SourceOf(usual) ?? "the usual range written for this pet", usual.Line).And($"{(level > FindingLevel.Info ? "Take it again when the pet is calm." : "")}{shown}");
            }
        }
    }
}
