using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Record.Readings;

/// <summary>A value in canonical units.</summary>
/// <param name="Number">The value.</param>
/// <param name="Unit">Its unit: <c>/min</c>, <c>Cel</c>, <c>kg</c>, <c>s</c>, <c>mm</c>, <c>mL</c>, <c>mmol/L</c>, or a scale such as <c>/9</c>.</param>
/// <param name="Low">The lowest it may really be; null where the way of measuring tells nothing.</param>
/// <param name="High">The highest it may really be; null where the way of measuring tells nothing.</param>
/// <param name="Bound">Whether it is a point, about, or only a bound.</param>
public sealed record ReadValue(decimal Number, string Unit, decimal? Low, decimal? High, Bound Bound)
{
    /// <summary>The value of a note's line in canonical units; null when it has none (a portion, a range, a time of nothing).</summary>
    public static ReadValue? Of(NoteValue value) => value switch
    {
        CountOverTime count => CountRate.Of(count) is { } rate ? new(rate.PerMinute, "/min", rate.Low, rate.High, count.Bound) : null,
        PerMinute rate => new(rate.Number, "/min", null, null, rate.Bound),
        Measure { Quantity: Quantity.Dose or Quantity.DoseRate or Quantity.Portion } => null,
        Measure measure => new(UnitConversion.ToCanonical(measure), measure.Amounts[0].Unit.Canonical, null, null, measure.Bound),
        Difference difference => new(UnitConversion.ToCanonical(difference.Total) - UnitConversion.ToCanonical(difference.Less), "kg", null, null, difference.Bound),
        Diameters diameters => new(diameters.Lengths.Max(UnitConversion.ToCanonical), "mm", null, null, diameters.Bound),
        LikeObject like => new(like.Object.TypicalMm, "mm", like.Object.LowMm, like.Object.HighMm, Bound.About),
        Score score => new(score.Points, $"/{score.OutOf:0.###}", null, null, score.Bound),
        _ => null,
    };

    /// <summary>True for a score that may be given out of nine: its scale of five is turned into that.</summary>
    public bool IsOfNine { get; init; }

    /// <summary>A score in the scale of the ranges table, where the scale can be turned into it: body condition /5 into /9 by 2n - 1.</summary>
    /// <remarks>3/5 equals 5/9: AAHA weight management toolkit. 6, 7, 8 of 9 are 3.5, 4, 4.5 of 5: summary of the uniform obesity definition.</remarks>
    public ReadValue OnScaleOfNine() => IsOfNine && Unit == "/5" ? this with { Number = (Number * 2) - 1, Unit = "/9" } : this;
}
