using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Data;

namespace HealthNotes.Analysis.Trends;

/// <summary>A row of <c>trends.tsv</c>: when a change over time is spoken of.</summary>
/// <param name="What">The word of the course.</param>
/// <param name="Conditions">The wordings of a known condition for which it holds besides the row without one; empty for that.</param>
/// <param name="Least">On how many days there must be a value.</param>
/// <param name="Span">How many days the first and the last must lie apart.</param>
/// <param name="Days">How many days before the last count.</param>
/// <param name="Last">How many days with values are used at most, the latest.</param>
/// <param name="P">The largest p at which a change is held to be one.</param>
/// <param name="Percent">How many percent of the middle value the change over the time must be.</param>
/// <param name="Change">How much it must be, in the unit.</param>
/// <param name="GrownMonths">The age from which values count; null for any age.</param>
/// <param name="AtVisits">Whether readings at the clinic count: fright moves a pulse, a breathing rate and more.</param>
/// <param name="Up">The level of a rise.</param>
/// <param name="Down">The level of a fall.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Source">Where method and numbers are from.</param>
public sealed record TrendRow(
    string What,
    ImmutableArray<string> Conditions,
    int Least,
    int Span,
    int Days,
    int Last,
    double P,
    double Percent,
    double Change,
    int? GrownMonths,
    bool AtVisits,
    FindingLevel Up,
    FindingLevel Down,
    string Unit,
    string Source)
{
    private static readonly Lazy<ImmutableArray<TrendRow>> Rows = new(() =>
        [.. ClinicalData.Rows("trends.tsv").Select(Read)]);

    /// <summary>All rows, in file order.</summary>
    public static ImmutableArray<TrendRow> All => Rows.Value;

    /// <summary>The row for a word; null when no change is looked for.</summary>
    public static TrendRow? For(string what) => All.FirstOrDefault(row => row.What == what && row.Conditions.IsEmpty);

    private static TrendRow Read(TsvRow row) => new(
        row["what"], [.. row.Several("condition")], (int)row.Number("least")!, (int)row.Number("span")!, (int)row.Number("days")!, (int)row.Number("last")!,
        (double)row.Number("p")!, (double)row.Number("percent")!, (double)row.Number("change")!, (int?)row.Number("grown-months"), row["visits"] == "yes",
        Enum.Parse<FindingLevel>(row["up"], ignoreCase: true), Enum.Parse<FindingLevel>(row["down"], ignoreCase: true), row["unit"], row["source"]);
}
