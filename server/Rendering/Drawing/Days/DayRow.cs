namespace HealthNotes.Rendering.Drawing.Days;

/// <summary>One day of the grid, or a stretch of days without a note; every cell in words or digits.</summary>
internal sealed record DayRow(string Day, string Doses, string Meals, string Water, string Urine, string Stool, string Vomit, string Other, string Glucose);

/// <summary>The days that are shown, and how many earlier ones there are.</summary>
internal sealed record DayGrid(IReadOnlyList<DayRow> Rows, int LeftOut);
