using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Due;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>What is due, in words: the same on the page, in the list and in the calendar.</summary>
public static class DueText
{
    /// <summary>What it is.</summary>
    public static string Of(Record.Due.DueItem due) => due switch
    {
        { Task: Recheck recheck } => PageWords.LookAgain(Wording.NameOf(recheck.Item.Word).ToLowerInvariant(), SiteWords.Of(recheck.Site), SiteWords.IsSideOnly(recheck.Site)),
        { Kind: DueKind.Check, Every: { } days } => PageWords.NextCheck(days, due.FactLine is not null),
        { Kind: DueKind.Weighing, Every: { } days } => PageWords.NextWeighing(days),
        { Kind: DueKind.Visit, Every: { } days } => PageWords.NextVisit(days),
        { Kind: DueKind.Medicine } => PageWords.NextDose(NoteText.Field(due.What)),
        { Kind: DueKind.CourseEnd } => PageWords.LastDayOf(NoteText.Field(due.What)),
        _ => NoteText.Field(due.What),
    };

    /// <summary>What it is in a clinic's words, with what there is of a curve that is not whole.</summary>
    internal static string ForClinic(Record.Due.DueItem due, PageContext context)
    {
        string what = due is { Task: Recheck recheck } ? PageWords.RecheckOf(Wording.NameOf(recheck.Item.Word).ToLowerInvariant(), SiteWords.Of(recheck.Site), SiteWords.IsSideOnly(recheck.Site)) : Of(due);
        return DueTasks.PartOfCurve(context.Analysis.Record, due) is not [var first, .., var last] part ? what
            : what + PageWords.OnlyValues(part.Length, first.Day == due.On ? null : PageWords.On(first.Day, context.Analysis.Today), first.Time, last.Time);
    }

    /// <summary>When: how far it is from today, and the day.</summary>
    public static string When(DateOnly? on, DateOnly today) => PageWords.DueWhen(on, today);

    /// <summary>What it is and when.</summary>
    public static string Line(Record.Due.DueItem due, DateOnly today) => $"{Of(due)}: {When(due.On, today)}";
}
