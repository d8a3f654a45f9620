using HealthNotes.Analysis.Rules;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Readings;

namespace HealthNotes.Features.Hints;

/// <summary>A dose against the weight of the day: a fact, not a judgement.</summary>
internal static class DoseHint
{
    /// <summary>The dose per kilogram at the last weighing up to <paramref name="day"/>; null without one, or where the dose isn't a mass.</summary>
    public static Computed? Of(Document document, NoteValue? dose, DateOnly day, bool us)
    {
        if (dose is null || document.Record.Pet.WeightOn(day) is not { Day: { } weighed } weight
            || DosePerWeight.MilligramsPerKilogram(dose, weight.Value.Number) is not { } perKilogram)
        {
            return null;
        }

        string shown = ShownIn.PerKilogram(perKilogram);
        string about = weight.Value.Bound == Bound.About || dose.Bound == Bound.About ? "about " : "";
        return new Computed(
            (about.Length > 0 ? "≈ " : "") + shown,
            $"{ValuePrinter.Print(dose)} at {Wording.Show(weight.Value.Number, "kg", us)}, weighed on {DayWords.Iso(weighed)}: {about}{shown}. A fact, not a judgement.",
            HintKinds.Dose);
    }
}
