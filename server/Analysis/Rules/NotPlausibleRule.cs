using HealthNotes.Analysis.Findings;
using HealthNotes.Record;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>A number no living pet has: a slip of the pen, or a count without its seconds.</summary>
public sealed class NotPlausibleRule : IEntryRule
{
    /// <summary>From so many times on a weight is held to be ten times off.</summary>
    private const decimal NearTen = 7;

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("not-plausible", "reading", 1);

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(PetRecord at, PetEntry entry)
    {
        foreach ((NoteReading reading, decimal? kg, int? line) in entry.Slips)
        {
            bool us = at.Facts.Pet.ShowUsUnits;
            string hint = reading is { What: "hr" or "rr", Value.Low: null } && reading.Value.Number > 0
                ? $" If you counted {reading.Written} in 15 seconds, write {reading.Written}/15s."
                : " Check the number and its unit.";
            decimal times = kg is > 0 && reading.Value.Number > 0 ? reading.Value.Number / kg.Value : 0;
            hint = times is > NearTen and < 100 / NearTen ? $" Is the decimal point in the right place? {Wording.Show(reading.Value.Number / 10, "kg", us)} would fit."
                : times is > NearTen / 100 and < 1 / NearTen ? $" Is the decimal point in the right place? {Wording.Show(reading.Value.Number * 10, "kg", us)} would fit."
                : hint;
            string other = kg is not { } against ? "" : line is { } where ? $" of {Wording.Show(against, "kg", us)} (line {where + 1})" : $" of {Wording.Show(against, "kg", us)} when grown";
            yield return this.At(FindingLevel.Error, reading.Line, reading.Span,
                $"{Wording.NameOf(reading.What)} {Wording.Show(reading.Value.Number, reading.Value.Unit, us)} can't be right{(other.Length == 0 ? "" : " for a pet" + other)}.{hint}",
                kg is not null ? WeightLimits.Default.SourceOf("slip-times") : ClinicalTables.Default.Plausible.TryGetValue(reading.What, out NormalRange? range) ? range.Source : RuleBook.NoteFormat,
                line is { } evidence ? [evidence] : []);
        }
    }
}
