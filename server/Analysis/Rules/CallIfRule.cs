using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>A reading past a line that the clinic drew for this pet.</summary>
public sealed class CallIfRule : IEntryRule
{
    /// <summary>Its name.</summary>
    internal const string RuleName = "call-if";

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new(RuleName, "reading", 2);

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(PetRecord at, PetEntry entry)
    {
        foreach (NoteReading reading in entry.Readings)
        {
            foreach (DrawnLine drawn in at.Facts.LimitsOn(LimitKey.For(reading), reading.Day, now: true).Concat(at.Facts.LimitsOn(LimitKey.For(reading), reading.Day)))
            {
                DatedFact<CallIfFact> line = drawn.Fact;
                if (LineCrossing.Crosses(reading.Value, drawn.IsAbove, drawn.Limit, inclusive: false))
                {
                    string set = line.Fact.Per?.When is { } when ? $" (set {(when is { Month: { } month, Day: { } day } ? Wording.Day(new DateOnly(when.Year, month, day), at.Facts.Today) : when.ToString())})" : "";
                    yield return this.At(line.Fact.IsNow ? FindingLevel.Urgent : FindingLevel.Call, reading.Line, reading.Span,
                        $"{Wording.Describe(reading, at.Facts.Pet.ShowUsUnits)}: {(drawn.IsAbove ? "above" : "below")} the clinic's {(line.Fact.IsNow ? "phone-now limit" : "limit")} of {Wording.Show(drawn.Limit, reading.Value.Unit, at.Facts.Pet.ShowUsUnits)}{set}.",
                        OwnLimits.SourceOf(line) ?? "the line drawn for this pet", line.Line);
                }
            }
        }
    }
}
