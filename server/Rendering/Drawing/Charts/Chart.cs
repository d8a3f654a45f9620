namespace HealthNotes.Rendering.Drawing.Charts;

/// <summary>How exactly a mark on a chart is known.</summary>
internal enum MarkKind
{
    /// <summary>Measured.</summary>
    Point,

    /// <summary>About.</summary>
    About,

    /// <summary>It is below this.</summary>
    Below,

    /// <summary>It is above this.</summary>
    Above,
}

/// <summary>One value on a chart, in the shown unit.</summary>
/// <param name="At">When.</param>
/// <param name="Value">The value, or where its bound lies.</param>
/// <param name="Low">The least it may really be; null where that is not known.</param>
/// <param name="High">The most it may really be; null where that is not known.</param>
/// <param name="Kind">How exactly it is known.</param>
/// <param name="AtClinic">True for what was measured at a visit: another scale, and a frightened pet.</param>
internal sealed record Mark(DateTime At, double Value, double? Low, double? High, MarkKind Kind, bool AtClinic = false)
{
    /// <summary>True for a value, false for a bound.</summary>
    public bool IsValue => Kind is MarkKind.Point or MarkKind.About;

    /// <summary>Its day.</summary>
    public DateOnly Day => DateOnly.FromDateTime(At);
}

/// <summary>Values that belong together: a chart may hold several lumps.</summary>
/// <param name="Label">What stands at its end; empty on a chart of one thing.</param>
/// <param name="Marks">Its values, in the order of time.</param>
internal sealed record Series(string Label, IReadOnlyList<Mark> Marks);

/// <summary>A range that holds for a time; a null end is open.</summary>
internal sealed record Band(DateTime From, DateTime To, double? Low, double? High);

/// <summary>A line that the clinic drew.</summary>
/// <param name="From">Since when.</param>
/// <param name="Value">Where it lies, in the shown unit.</param>
/// <param name="Above">True where a higher value is past it.</param>
/// <param name="Words">What it asks for, in the unit that is counted.</param>
internal sealed record LimitLine(DateTime From, double Value, bool Above, string Words);

/// <summary>One dose of a medicine and how long it was the plan.</summary>
/// <param name="From">The first day.</param>
/// <param name="To">The last day; null while it goes on.</param>
/// <param name="Amount">The amount alone; empty where none is written.</param>
/// <param name="Words">The amount and how often.</param>
/// <param name="Began">The first day, where it lies before the first day of the chart, too.</param>
internal sealed record DoseBar(DateOnly From, DateOnly? To, string Amount, string Words, DateOnly Began);

/// <summary>A medicine with the changes of its dose.</summary>
internal sealed record MedicineBar(string Name, IReadOnlyList<DoseBar> Doses);

/// <summary>Something that happened on a day: a visit, surgery, a vaccine.</summary>
internal sealed record ChartEvent(DateOnly Day, string Words);

/// <summary>One chart.</summary>
/// <param name="Title">What it shows.</param>
/// <param name="Unit">The unit on its axis.</param>
/// <param name="Series">What is drawn.</param>
/// <param name="Normal">The reference range, where one is shown.</param>
/// <param name="Usual">This pet's usual range, where one is known.</param>
/// <param name="UsualFrom">Whose it is.</param>
/// <param name="Limits">The clinic's limits.</param>
/// <param name="FromZero">True where only an axis from zero is honest: a size, an amount.</param>
/// <param name="LeastSpan">The least that its axis spans, so that a small change does not look like a great one.</param>
/// <param name="Doubt">What the upright lines stand for: an error of counting or of measuring.</param>
/// <param name="Caption">What it shows, where several things share it; else empty.</param>
/// <param name="Words">What it shows in words.</param>
/// <param name="Thinned">True when not every value is drawn.</param>
internal sealed record Chart(
    string Title, string Unit, IReadOnlyList<Series> Series, IReadOnlyList<Band> Normal, Band? Usual, string UsualFrom, IReadOnlyList<LimitLine> Limits, bool FromZero, double LeastSpan,
    string Doubt, string Caption, string Words, bool Thinned)
{
    /// <summary>All values.</summary>
    public IEnumerable<Mark> Marks => Series.SelectMany(series => series.Marks);
}

/// <summary>All charts of a page, on one time axis.</summary>
/// <param name="From">Where the axis starts.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Charts">The charts.</param>
/// <param name="LeftOut">How many more there would be.</param>
/// <param name="Events">Visits, surgery and vaccines in that time.</param>
/// <param name="Medicines">The medicines that began, changed or ended in that time: these are drawn.</param>
/// <param name="Earlier">True when the notes go back further than the axis.</param>
internal sealed record ChartSet(
    DateTime From, DateTime To, IReadOnlyList<Chart> Charts, int LeftOut, IReadOnlyList<ChartEvent> Events, IReadOnlyList<MedicineBar> Medicines, bool Earlier);
