using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Data;

namespace HealthNotes.Analysis.Trends;

/// <summary>A row of <c>usual-values.tsv</c>: how this pet's own usual value of a vital is worked out, and from where on a reading is spoken of.</summary>
/// <param name="What">The vital.</param>
/// <param name="State">The state, or any.</param>
/// <param name="BothSides">True when a reading below the usual is spoken of as well.</param>
/// <param name="Least">The least number of earlier readings.</param>
/// <param name="OnDays">On how many days they must lie.</param>
/// <param name="Days">How many days back they may lie.</param>
/// <param name="Last">How many are used at most, the latest.</param>
/// <param name="HalfLife">In how many days a reading comes to weigh half as much.</param>
/// <param name="IsCount">True for what is counted: the larger a count, the more it scatters by chance.</param>
/// <param name="Ordinary">How far one reading of an ordinary pet scatters, one standard deviation in percent of the median; 0 where that is not known.</param>
/// <param name="OrdinaryCount">For how many of the pet's own readings that counts.</param>
/// <param name="Times">How many spreads away a reading must be.</param>
/// <param name="Percent">How many percent of the median away it must be.</param>
/// <param name="Floor">How far away it must be at least, in the unit.</param>
/// <param name="From">The number below which nothing is reported.</param>
/// <param name="GrownMonths">The age from which readings count; null for any age.</param>
/// <param name="AtVisits">Whether readings at the clinic count: fright moves a pulse, a breathing rate and more.</param>
/// <param name="Mild">The level there.</param>
/// <param name="Clear">The level at <paramref name="ClearAt"/> times the distance.</param>
/// <param name="ClearAt">See <paramref name="Clear"/>.</param>
/// <param name="Again">The level when several readings in a row are far away together; null when it makes no difference.</param>
/// <param name="AgainTimes">How many standard errors their mean must be away.</param>
/// <param name="ApartHours">How many hours two of them must lie apart.</param>
/// <param name="ApartDays">How many days back they may lie.</param>
/// <param name="Source">Where the numbers are from.</param>
public sealed record UsualRow(
    string What,
    string State,
    bool BothSides,
    int Least,
    int OnDays,
    int Days,
    int Last,
    double HalfLife,
    bool IsCount,
    decimal Ordinary,
    int OrdinaryCount,
    decimal Times,
    decimal Percent,
    decimal Floor,
    decimal? From,
    int? GrownMonths,
    bool AtVisits,
    FindingLevel Mild,
    FindingLevel Clear,
    decimal ClearAt,
    FindingLevel? Again,
    decimal AgainTimes,
    int ApartHours,
    int ApartDays,
    string Source)
{
    private static readonly Lazy<ImmutableArray<UsualRow>> Rows = new(() =>
        [.. ClinicalData.Rows("usual-values.tsv").Select(Read)]);

    private readonly double[] weights = [.. Enumerable.Range(0, Days + 1).Select(days => Math.Pow(0.5, days / HalfLife))];

    /// <summary>The row for a course; null when no usual value is worked out for it.</summary>
    public static UsualRow? For(CourseKey key)
    {
        foreach (UsualRow row in Rows.Value)
        {
            if (row.What == key.Word && (row.State == "any" || key.Detail == row.State || key.Detail.StartsWith(row.State + " ", StringComparison.Ordinal)))
            {
                return row;
            }
        }

        return null;
    }

    /// <summary>A value on the scale on which it scatters the same at any height: the root of a count (Bartlett, J R Stat Soc Suppl 1936;3:68-78, from memory).</summary>
    public decimal OnScale(decimal value) => IsCount ? (decimal)Math.Sqrt((double)value) : value;

    /// <summary>The value that lies so far from another on that scale; never below nothing.</summary>
    public decimal Away(decimal value, decimal distance)
    {
        decimal there = OnScale(value) + distance;
        return there <= 0 ? 0 : IsCount ? there * there : there;
    }

    /// <summary>What a reading so many days earlier weighs.</summary>
    public double WeightAfter(int days) => weights[Math.Min(days, weights.Length - 1)];

    private static UsualRow Read(TsvRow row) => new(
        row["what"], row["state"], row["side"] == "both", (int)row.Number("least")!, (int)row.Number("on-days")!, (int)row.Number("days")!, (int)row.Number("last")!,
        (double)row.Number("half-life")!, row["scale"] == "root", (decimal)(row.Number("ordinary") ?? 0), (int)(row.Number("ordinary-count") ?? 0), (decimal)row.Number("times")!, (decimal)row.Number("percent")!, (decimal)row.Number("floor")!, row.Number("from"),
        (int?)row.Number("grown-months"), row["visits"] == "yes", Level(row["mild"]), Level(row["clear"]), (decimal)row.Number("clear-at")!,
        row["again"].Length == 0 ? null : Level(row["again"]), (decimal)(row.Number("again-times") ?? 0), (int)(row.Number("apart-hours") ?? 0), (int)(row.Number("apart-days") ?? 0), row["source"]);

    private static FindingLevel Level(string name) => Enum.Parse<FindingLevel>(name, ignoreCase: true);
}
