using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Data;

namespace HealthNotes.Record.Readings;

/// <summary>How far a value may really be from what is written, a row of <c>measuring-errors.tsv</c>.</summary>
/// <param name="What">The vital, or <c>water</c>.</param>
/// <param name="Way"><c>person</c> for a weight written as a difference; <c>any</c> however else it was measured.</param>
/// <param name="Plus">So much in the canonical unit.</param>
/// <param name="Percent">So many percent of the value; the larger of the two is used.</param>
public sealed record MeasuringError(string What, string Way, decimal Plus, decimal Percent)
{
    private const string Person = "person";
    private const string Any = "any";

    private static readonly Lazy<ImmutableArray<MeasuringError>> Rows = new(() =>
        [.. ClinicalData.Rows("measuring-errors.tsv").Select(row => new MeasuringError(row["what"], row["way"], row.Number("plus") ?? 0, row.Number("percent") ?? 0))]);

    /// <summary>The least and the most that a reading may really be, in its own unit: what its count tells, else its row. Null for a bound, and where nothing is known.</summary>
    public static (decimal Low, decimal High)? Of(NoteReading reading) => reading.Value switch
    {
        { Bound: Bound.Below or Bound.Above } => null,
        { Low: { } low, High: { } high } => (low, high),
        { Number: var number } => Of(reading.What, reading.Written.Contains('-', StringComparison.Ordinal) ? Person : Any, number),
    };

    /// <summary>The same of a number that was worked out, such as the water of a day.</summary>
    public static (decimal Low, decimal High)? Of(string what, decimal number) => Of(what, Any, number);

    private static (decimal Low, decimal High)? Of(string what, string way, decimal number)
    {
        MeasuringError? row = Rows.Value.FirstOrDefault(one => one.What == what && one.Way == way) ?? Rows.Value.FirstOrDefault(one => one.What == what && one.Way == Any);
        decimal off = row is null ? 0 : Math.Max(row.Plus, number * row.Percent / 100);
        return row is null ? null : (Math.Max(0, number - off), number + off);
    }
}
