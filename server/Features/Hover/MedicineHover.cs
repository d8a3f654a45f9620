using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Courses;

namespace HealthNotes.Features.Hover;

/// <summary>On a medicine: its plan as written, the dose against the weight of the day as a fact, and when it was last given.</summary>
internal static class MedicineHover
{
    public static string? At(HoverLine at) => at.Item is DoseEvent or MedicinePlan ? Md.Join(Lines(at)) : null;

    /// <summary>The lines about the medicine of this line.</summary>
    public static IEnumerable<string> Lines(HoverLine at)
    {
        string name = at.Item!.Name!.Text;
        yield return $"**{Md.Escape(name)}**";
        foreach (DatedFact<MedicinePlan> plan in at.Document.Record.Facts.PlansByMedicine[CourseKey.MedicineName(name)].Where(plan => !(plan.Day > at.Day) && plan.Line != at.Index).TakeLast(2))
        {
            yield return $"**Plan** (line {plan.Line + 1}): {Md.Escape(at.Document.Syntax.Lines[plan.Line].Text.Trim())}";
        }

        if (DoseHint.Of(at.Document, at.Item.Value, at.Day, at.Us) is { } dose)
        {
            yield return dose.How;
        }

        yield return LastGiven(at, name);
    }

    private static string LastGiven(HoverLine at, string name)
    {
        Course doses = at.Document.Record.Of(CourseKey.Doses("gave", name));
        if ((at.Entry is { Head.Date: { } on } entry ? doses.Before(on, at.Item!.Head.Time ?? entry.Head.Time, at.Index).FirstOrDefault() : doses.Last) is not { Item: DoseEvent given } last)
        {
            return at.Entry is null ? "Not logged as given." : "Not logged as given before this line.";
        }

        string dose = given.Dose is null ? "" : ValuePrinter.Print(given.Dose) + " ";
        return $"**{(at.Entry is null ? "Last given" : "Given before this line")}:** {dose}{DayWords.Iso(last.Day)}{(given.Head.Time is { } time ? $" {time:HH\\:mm}" : "")}, {DayWords.From(at.Document.Today, last.Day)} (line {last.Line + 1}).";
    }
}
