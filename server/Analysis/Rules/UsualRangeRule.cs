using HealthNotes.Analysis.Findings;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>A reading outside the range that this pet's vet calls usual for it.</summary>
public sealed class UsualRangeRule : IEntryRule
{
    /// <inheritdoc/>
    public string Name => "usual-range";

    /// <inheritdoc/>
    public string Topic => "reading";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(EntryContext at)
    {
        foreach (NoteReading reading in at.Readings)
        {
            if (!ClinicalTables.Default.IsPlausible(reading) || OwnLimits.UsualFor(at.Note, reading) is not { } usual)
            {
                continue;
            }

            decimal low = OwnLimits.Canonical(usual.Fact.Range.Low, usual.Fact.Range.Unit);
            decimal high = OwnLimits.Canonical(usual.Fact.Range.High, usual.Fact.Range.Unit);
            bool above = LineCrossing.Crosses(reading.Value, above: true, high, inclusive: false);
            if (above || LineCrossing.Crosses(reading.Value, above: false, low, inclusive: false))
            {
                string shown = at.Note.KeyOf(reading) is { } key && ClinicalTables.Default.NormalFor(key) is { } normal ? $" Shown as normal: {Wording.Show(normal, at.Note.Pet.ShowUsUnits)}." : "";
                FindingLevel level = at.Entry.Head.Kind == "visit" ? FindingLevel.Info : FindingLevel.Watch;
                yield return RuleContext.At(Name, level, reading.Line, reading.Span,
                    $"{Wording.Describe(reading, at.Note.Pet.ShowUsUnits)}: {(above ? "above" : "below")} this pet's usual {Wording.Show(low, high, reading.Value.Unit, at.Note.Pet.ShowUsUnits)} (line {usual.Line + 1}).{(level > FindingLevel.Info ? $" {Wording.Advice(level)} Take it again when the pet is calm." : "")}{shown}",
                    "the usual range written for this pet", usual.Line);
            }
        }
    }
}
