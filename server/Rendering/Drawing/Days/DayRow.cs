namespace HealthNotes.Rendering.Drawing.Days;

/// <summary>One day of the grid, or days that read the same.</summary>
/// <param name="From">The first day.</param>
/// <param name="To">The last day.</param>
/// <param name="Cells">A cell a column, in words; empty where nothing was written.</param>
internal sealed record DayRow(DateOnly From, DateOnly To, IReadOnlyList<string> Cells);

/// <summary>The glucose of one day that was measured several times.</summary>
/// <param name="Day">The day.</param>
/// <param name="Insulin">What was given, and when.</param>
/// <param name="Values">Each value with its time.</param>
internal sealed record CurveRow(DateOnly Day, string Insulin, string Values);

/// <summary>Home care day by day.</summary>
/// <param name="Today">The day it is read, which tells years that need not be written.</param>
/// <param name="Columns">What the cells are: each medicine, then what was eaten, drunk and passed.</param>
/// <param name="Rows">The days.</param>
/// <param name="LeftOut">How many earlier days there are.</param>
/// <param name="NeverLogged">Medicines with a plan of which no dose is written in that time.</param>
/// <param name="Curves">The days with a glucose curve, the latest ones.</param>
internal sealed record DayGrid(DateOnly Today, IReadOnlyList<string> Columns, IReadOnlyList<DayRow> Rows, int LeftOut, IReadOnlyList<(string Medicine, DateOnly? Last, DateOnly From)> NeverLogged, IReadOnlyList<CurveRow> Curves)
{
    /// <summary>The days of the period up to the last row of which nothing is written.</summary>
    public IReadOnlyList<(DateOnly From, DateOnly To)> WithoutNote { get; init; } = [];
}
