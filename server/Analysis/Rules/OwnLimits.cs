using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>What the vet wrote for this pet: its usual range, and the lines at which to call.</summary>
internal static class OwnLimits
{
    /// <summary>The latest <c>usual</c> that holds for a reading's vital, state and day; null when there is none.</summary>
    public static DatedFact<UsualFact>? UsualFor(PetFacts context, NoteReading reading) =>
        LimitKey.For(reading).Select(key => context.Usuals[key].LastOrDefault(usual => Holds(usual.Day, reading.Day))).MaxBy(usual => usual?.Line ?? int.MinValue);

    /// <summary>Where a limit or a range comes from: the clinic's rules and who set it; null for a line of the note.</summary>
    public static string? SourceOf<T>(DatedFact<T> fact)
        where T : NoteItem => fact.From is null ? null : fact.Fact.Body.First<Attribution>() is { } per ? $"{fact.From}, per {per.Who}" : fact.From;

    /// <summary>True when the value lies within the usual range; a bound never does.</summary>
    public static bool Holds(UsualFact usual, ReadValue value) =>
        value.Bound is Bound.Exact or Bound.About && Canonical(usual.Range.Low, usual.Range.Unit) <= value.Number && value.Number <= Canonical(usual.Range.High, usual.Range.Unit);

    /// <summary>A number of a fact in the canonical unit of its vital.</summary>
    public static decimal Canonical(decimal number, Unit? unit) => unit is null ? number : UnitConversion.ToCanonical(new Amount(number, unit));

    /// <summary>A fact of the opening always holds; one of a visit holds from that day on.</summary>
    private static bool Holds(DateOnly? since, DateOnly? day) => since is null || day is null || since <= day;
}
