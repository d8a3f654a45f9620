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
/// <param name="Low">The least it may really be; null where that is not told.</param>
/// <param name="High">The most it may really be; null where that is not told.</param>
/// <param name="Kind">How exactly it is known.</param>
internal sealed record Mark(DateTime At, double Value, double? Low, double? High, MarkKind Kind)
{
    /// <summary>True for a value, false for a bound.</summary>
    public bool IsValue => Kind is MarkKind.Point or MarkKind.About;
}

/// <summary>A range that holds for a time; a null end is open.</summary>
internal sealed record Band(DateTime From, DateTime To, double? Low, double? High);

/// <summary>A thing that lasted: a medicine's plan.</summary>
/// <param name="Letter">What it is called on the charts.</param>
/// <param name="Name">What it is.</param>
/// <param name="From">Its first day.</param>
/// <param name="To">Its last day; null while it goes on.</param>
internal sealed record MedicineBar(string Letter, string Name, DateOnly From, DateOnly? To);

/// <summary>One chart.</summary>
/// <param name="Title">What it shows.</param>
/// <param name="Unit">The unit on its axis.</param>
/// <param name="Marks">Its values, in the order of time.</param>
/// <param name="Normal">The range shown as normal, where one is.</param>
/// <param name="Usual">This pet's usual range, where one is known.</param>
/// <param name="UsualFrom">Who says what is usual.</param>
/// <param name="FromZero">True where only an axis from zero is honest: a size, an amount.</param>
/// <param name="LeastSpan">The least that its axis spans, so that a small change does not look like a great one.</param>
/// <param name="Words">What it shows in words.</param>
/// <param name="Thinned">True when not every value is drawn.</param>
internal sealed record Chart(
    string Title, string Unit, IReadOnlyList<Mark> Marks, IReadOnlyList<Band> Normal, Band? Usual, string UsualFrom, bool FromZero, double LeastSpan, string Words, bool Thinned);

/// <summary>All charts of a page, on one time axis.</summary>
/// <param name="From">Where the axis starts.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Charts">The charts.</param>
/// <param name="LeftOut">How many more there would be.</param>
/// <param name="Visits">The days of visits to the clinic.</param>
/// <param name="Medicines">The medicines given in that time.</param>
/// <param name="MedicinesLeftOut">How many more there were.</param>
/// <param name="Earlier">True when the notes go back further than the axis.</param>
internal sealed record ChartSet(
    DateTime From, DateTime To, IReadOnlyList<Chart> Charts, int LeftOut, IReadOnlyList<DateOnly> Visits, IReadOnlyList<MedicineBar> Medicines, int MedicinesLeftOut, bool Earlier);
