using HealthNotes.Features.Actions.Lines;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>The units that a bare number of a line may have been meant in.</summary>
internal static class UnitChoices
{
    /// <summary>
    /// What may stand behind the number, in the order it is offered. Empty for a dose: its unit is for who ordered it to
    /// say, and only a plan in the note can tell it.
    /// </summary>
    public static IReadOnlyList<string> For(LineWord word, bool overTime, bool inSchedule)
    {
        if (inSchedule)
        {
            return ["d", "w", "mo", "h"];
        }

        return word.Takes.Select(slot => Of(slot.Kind, word.Word, overTime)).FirstOrDefault(units => units.Length > 0) ?? [];
    }

    /// <summary>The unit's row; null for the end of a scale.</summary>
    public static Unit? UnitOf(string written) => written[0] == '/' ? null : NoteVocabulary.Default.Units.Find(written);

    /// <summary>The unit of a medicine as the plan for it says; null when there is none, or it has two.</summary>
    public static string? OfPlan(LineAt at, string medicine)
    {
        string[] units = [.. at.Document.Note.Facts<Grammar.Notes.MedicinePlan>()
            .Where(plan => plan.Fact.Medicine.Text.Equals(medicine, StringComparison.OrdinalIgnoreCase))
            .Select(plan => plan.Fact.Dose).OfType<Grammar.Notes.Measure>()
            .Select(dose => dose.Amounts[0].Unit).Distinct()
            .Select(unit => unit.Quantity == Quantity.Dose ? " " + unit.Word : unit.Word)];
        return units.Length == 1 ? units[0] : null;
    }

    private static string[] Of(SlotKind slot, string word, bool overTime) => slot switch
    {
        SlotKind.Rate => overTime ? ["s", "min"] : [],
        SlotKind.Temperature => ["C", "F"],
        SlotKind.Mass => ["kg", "lb", "g"],
        SlotKind.Glucose => ["mmol/L", "mg/dL"],
        SlotKind.Size => ["mm", "cm", "in"],
        SlotKind.Volume => ["ml", "l", "cup"],
        SlotKind.Duration => ["min", "s", "h"],
        SlotKind.Distance => ["km", "mi"],
        SlotKind.Amount when word == "food" => ["g", "oz", " can"],
        SlotKind.Score => word switch { "mcs" => ["/3"], "pain" => ["/10"], _ => ["/9", "/5"] },
        _ => [],
    };
}
