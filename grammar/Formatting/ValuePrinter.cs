using System.Collections.Immutable;
using System.Globalization;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Formatting;

/// <summary>Writes a value in its one canonical form. Reading it again gives the same value.</summary>
public static class ValuePrinter
{
    /// <summary>The value as <c>format</c> writes it.</summary>
    public static string Print(NoteValue value) => value switch
    {
        CountOverTime count => $"{Mark(count.Bound)}{Number(count.Count)}/{Number(count.Time)}{count.Unit.Word}",
        PerMinute rate => Mark(rate.Bound) + Number(rate.Number),
        Measure measure => Mark(measure.Bound) + string.Join(' ', measure.Amounts.Select(Print)),
        Difference { Total.Unit: var unit, Less.Unit: var other } difference when unit == other =>
            $"{Mark(difference.Bound)}{Number(difference.Total.Number)}-{Print(difference.Less)}",
        Difference difference => $"{Mark(difference.Bound)}{Print(difference.Total)}-{Print(difference.Less)}",
        Diameters diameters => Mark(diameters.Bound) + Lengths(diameters.Lengths),
        LikeObject like => $"like {like.Object.Word}",
        Score score => $"{Mark(score.Bound)}{Number(score.Points)}/{Number(score.OutOf)}",
        Portion portion => Part(portion),
        Pressure pressure => $"{Mark(pressure.Bound)}{Number(pressure.Systolic)}{(pressure.Diastolic is { } low ? $"/{Number(low)}" : "")}",
        LabValue lab => lab.Number is { } number ? $"{Mark(lab.Bound)}{Number(number)}{lab.UnitOrWords}" : lab.UnitOrWords,
        ValueRange range => $"{Number(range.Low)}-{Number(range.High)}{range.Unit?.Word}",
        Limit limit => $"{Mark(limit.Bound)}{Number(limit.Number)}{limit.Unit?.Word}",
        _ => throw new ArgumentOutOfRangeException(nameof(value), value, "a value without a printed form"),
    };

    /// <summary>A number with its unit: <c>5mg</c>, <c>1/2 tablet</c>.</summary>
    public static string Print(Amount amount)
    {
        string number = amount.Over == 1 ? Number(amount.Number) : $"{Number(amount.Number)}/{Number(amount.Over)}";
        number = Mark(amount.Bound) + number;
        bool apart = amount.Unit.Quantity == Quantity.Dose || amount.Unit.Word.Contains('-', StringComparison.Ordinal);
        return apart ? $"{number} {amount.Unit.Word}" : number + amount.Unit.Word;
    }

    private static string Number(decimal number) => number.ToString(CultureInfo.InvariantCulture);

    internal static string Mark(Bound bound) => bound switch { Bound.About => "~", Bound.Below => "<", Bound.Above => ">", _ => "" };

    private static string Lengths(ImmutableArray<Amount> lengths) =>
        lengths.All(length => length.Unit == lengths[0].Unit)
            ? string.Join('x', lengths.Select(length => Number(length.Number))) + lengths[0].Unit.Word
            : string.Join(" x ", lengths.Select(Print));

    private static string Part(Portion portion) => (portion.Bound, portion.Part, portion.Whole) switch
    {
        (Bound.Exact, 1, 1) => "all",
        (Bound.Exact, 0, 1) => "none",
        (Bound.About, 3, 4) when portion.Text is not null => "most",
        (Bound.About, 1, 2) when portion.Text is not null => "half",
        (Bound.About, 1, 4) when portion.Text is not null => "little",
        (_, _, 100) => $"{Mark(portion.Bound)}{Number(portion.Part)}%",
        _ => $"{Mark(portion.Bound)}{Number(portion.Part)}/{Number(portion.Whole)}",
    };
}
