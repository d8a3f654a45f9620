using HealthNotes.Analysis.Rules;
using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Readings;

namespace HealthNotes.Features.Hover;

/// <summary>On a value: what follows from it, with its uncertainty, the other units, and what a vital is compared with.</summary>
internal static class ValueHover
{
    public static string? At(HoverLine at)
    {
        if (at.Item?.Value is { } value && at.IsIn(value.Span))
        {
            return OfValue(at, value) is not { } said ? null
                : at.Item is Reading { Word: { Kind: WordKind.Vital } word } ? Md.Join([said, .. Ranges.Of(at, word.Word)])
                : said;
        }

        return DateHover.Due(at) is { } due ? DateHover.Day(at, due) : null;
    }

    /// <summary>What a reading says, with how it was worked out.</summary>
    public static string Here(HoverLine at, NoteReading reading) =>
        $"**Here:** {(Computed.Of(at.Item?.Value, at.Us) is { } computed ? computed.How : ValuesBefore.Show(reading.Value, at.Us) + ".")}";

    private static string? OfValue(HoverLine at, NoteValue value) => value switch
    {
        CountOverTime or LikeObject => Computed.Of(value, at.Us)?.How is { } how ? Md.Join([how, value is LikeObject like ? $"Other units: {Both(like.Object.TypicalMm, "mm")}." : ""]) : null,
        PerMinute rate => $"{Wording.Show(rate.Number, "/min")}, written as a rate: how it was counted is not known.",
        Portion { Whole: > 0 } portion => $"{Wording.Round(portion.Part * 100 / portion.Whole, 0)}% of the meal.",
        Score { OutOf: 5 } score when at.Item is Reading { Word.Word: "bcs" } => $"{Wording.Round(score.Points, 1)} of 5, on the scale of nine: {Wording.Show((score.Points * 2) - 1, "/9")}.{Md.Source("AAHA weight management toolkit")}",
        Score score => $"{Wording.Round(score.Points, 1)} of {Wording.Round(score.OutOf, 1)}.",
        ValueRange { Unit: { } unit } range => $"{Wording.Show(ShownIn.Canonical(range.Low, unit), ShownIn.Canonical(range.High, unit), unit.Canonical)}, or {Wording.Show(ShownIn.Canonical(range.Low, unit), ShownIn.Canonical(range.High, unit), unit.Canonical, us: true)}.",
        Limit { Unit: { } unit } limit => Both(ShownIn.Canonical(limit.Number, unit), unit.Canonical) + ".",
        _ when at.Item is DoseEvent or MedicinePlan => DoseHint.Of(at.Document, value, at.Day, at.Us)?.How,
        Difference difference => ReadValue.Of(value) is { } read ? Md.Join([Computed.Of(difference, at.Us)!.How, $"Other units: {Both(read.Number, read.Unit)}."]) : null,
        Diameters diameters => $"{Sides(diameters, us: false)}, or {Sides(diameters, us: true)}.{(diameters.Lengths.Length > 1 ? " The longest is compared." : "")}",
        _ => ReadValue.Of(value) is { } read ? $"{Bounded(value)}{Both(read.Number, read.Unit)}." : null,
    };

    private static string Both(decimal number, string unit)
    {
        string metric = Wording.Show(number, unit);
        string us = Wording.Show(number, unit, us: true);
        return metric == us ? metric : $"{metric}, or {us}";
    }

    private static string Sides(Diameters diameters, bool us) => string.Join(" x ", diameters.Lengths.Select(length => Wording.Show(UnitConversion.ToCanonical(length), "mm", us)));

    private static string Bounded(NoteValue value) => value.Bound switch { Bound.Below => "Below ", Bound.Above => "Above ", Bound.About => "About ", _ => "" };
}
