using HealthNotes.Grammar.Notes;

namespace HealthNotes.Features.Hints;

/// <summary>The value of a line.</summary>
internal static class ItemValue
{
    /// <summary>The value that a line holds, or null.</summary>
    public static NoteValue? Of(NoteItem? item) => item switch
    {
        Reading reading => reading.Value,
        Examined examined => examined.Size,
        Finding finding => finding.Size,
        CareEvent care => care.Quantity,
        AdultWeightFact weight => weight.Weight,
        UsualFact usual => usual.Range,
        CallIfFact call => call.Limit,
        DoseEvent dose => dose.Dose,
        MedicinePlan plan => plan.Dose,
        _ => null,
    };

    /// <summary>The times of a task, or null.</summary>
    public static Schedule? ScheduleOf(NoteItem? item) => item switch
    {
        Recheck recheck => recheck.Schedule,
        DueTask due => due.Schedule,
        _ => null,
    };
}
