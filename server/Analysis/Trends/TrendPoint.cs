using HealthNotes.Grammar.Items;

namespace HealthNotes.Analysis.Trends;

/// <summary>
/// A value at a time. A bound (<c>&lt;2s</c>) is censored: it is ordered only against what lies wholly on its other side, and
/// gives no slope. An imprecise value (<c>~12</c>, <c>like pea</c>, a short count) keeps its number: its error is part of the
/// scatter that the test allows for, and two that were written alike tie.
/// </summary>
/// <param name="Time">The time, in days.</param>
/// <param name="Value">The value, or where its bound lies.</param>
/// <param name="Bound">Whether it is a point, about, or only a bound.</param>
public readonly record struct TrendPoint(double Time, double Value, Bound Bound = Bound.Exact)
{
    /// <summary>True when it is not a bound.</summary>
    public bool IsPoint => Bound is Bound.Exact or Bound.About;

    /// <summary>1 when <paramref name="later"/> is surely above <paramref name="earlier"/>, -1 when surely below, 0 when equal or not to be told.</summary>
    public static int Order(TrendPoint earlier, TrendPoint later) =>
        earlier.IsPoint && later.IsPoint ? later.Value.CompareTo(earlier.Value)
        : earlier.Least >= later.Most ? -1
        : later.Least >= earlier.Most ? 1
        : 0;

    private double Least => Bound == Bound.Below ? double.NegativeInfinity : Value;

    private double Most => Bound == Bound.Above ? double.PositiveInfinity : Value;
}
