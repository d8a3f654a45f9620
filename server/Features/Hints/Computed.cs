using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Readings;

namespace HealthNotes.Features.Hints;

/// <summary>What follows from a value as it was written.</summary>
/// <param name="Label">The value, with its sign: <c>= 72/min</c>.</param>
/// <param name="How">How it was worked out, with its uncertainty.</param>
/// <param name="Kind">The kind of hint.</param>
internal sealed record Computed(string Label, string How, string Kind)
{
    /// <summary>What follows from a value; null where the line says it already.</summary>
    public static Computed? Of(NoteValue? value, bool us) => value switch
    {
        CountOverTime count => Rate(count),
        LikeObject like => Size(like.Object, us),
        Difference difference => Weighing(difference, us),
        Measure measure when Converts(measure.Quantity) && measure.Amounts.Any(amount => !ShownIn.IsRead(amount.Unit, us)) =>
            Converted(measure, Wording.Show(UnitConversion.ToCanonical(measure), measure.Amounts[0].Unit.Canonical, us), measure.Amounts[0].Unit),
        Diameters diameters when diameters.Lengths.Any(length => !ShownIn.IsRead(length.Unit, us)) =>
            Converted(diameters, string.Join(" x ", diameters.Lengths.Select(length => Wording.Show(UnitConversion.ToCanonical(length), "mm", us))), diameters.Lengths[0].Unit),
        ValueRange { Unit: { } unit } range when !ShownIn.IsRead(unit, us) =>
            Converted(range, Wording.Show(ShownIn.Canonical(range.Low, unit), ShownIn.Canonical(range.High, unit), unit.Canonical, us), unit),
        Limit { Unit: { } unit } limit when !ShownIn.IsRead(unit, us) =>
            Converted(limit, Wording.Show(ShownIn.Canonical(limit.Number, unit), unit.Canonical, us), unit),
        _ => null,
    };

    private static bool Converts(Quantity quantity) =>
        quantity is Quantity.Temperature or Quantity.Mass or Quantity.Length or Quantity.Volume or Quantity.Glucose;

    private static Computed? Rate(CountOverTime count)
    {
        if (CountRate.Of(count) is not { } rate)
        {
            return null;
        }

        string seconds = Wording.Round(count.Time * count.Unit.Factor, 1);
        string counted = Wording.Round(count.Count, 2);
        return new Computed(
            $"{Sign(count.Bound)} {Wording.Round(rate.PerMinute, 0)}/min",
            $"{counted} counted in {seconds} s: {counted} × 60 / {seconds} = {Wording.Round(rate.PerMinute, 0)} a minute. One count more or less makes it {Wording.Round(rate.Low, 0)} to {Wording.Round(rate.High, 0)}.",
            HintKinds.Rate);
    }

    private static Computed Size(ComparisonObject thing, bool us)
    {
        string spread = thing.LowMm == thing.HighMm ? "" : $", between {Wording.Show(thing.LowMm, "mm", us)} and {Wording.Show(thing.HighMm, "mm", us)}";
        return new Computed(
            "≈ " + Wording.Show(thing.TypicalMm, "mm", us),
            $"{thing.Definition}: about {Wording.Show(thing.TypicalMm, "mm", us)}{spread}. Source: {thing.Source}.",
            HintKinds.Size);
    }

    private static Computed Weighing(Difference difference, bool us)
    {
        decimal total = UnitConversion.ToCanonical(difference.Total);
        decimal less = UnitConversion.ToCanonical(difference.Less);
        string shown = Wording.Show(total - less, "kg", us);
        return new Computed(
            $"{Sign(difference.Bound)} {shown}",
            $"{ValuePrinter.Print(difference.Total)} together, less {ValuePrinter.Print(difference.Less)} alone: {shown}. As finely as the two were read, it may be out by {Wording.Show(Step(difference.Total) + Step(difference.Less), "kg", us)}.",
            HintKinds.Difference);
    }

    /// <summary>Half of the last digit that was written: 83.2 was read to a tenth, and is known to half of one.</summary>
    private static decimal Step(Amount amount)
    {
        decimal digit = 1;
        for (int i = 0; i < amount.Number.Scale; i++)
        {
            digit /= 10;
        }

        return digit / 2 * amount.Unit.Factor / amount.Unit.Divisor;
    }

    private static Computed Converted(NoteValue value, string shown, Unit unit) =>
        new($"{(value is Limit ? "=" : Sign(value.Bound))} {shown}", $"{ValuePrinter.Print(value)} is {shown}, rounded for reading. Conversion: {unit.Source}.", HintKinds.Conversion);

    private static string Sign(Bound bound) => bound switch { Bound.About => "≈", Bound.Below => "<", Bound.Above => ">", _ => "=" };
}
