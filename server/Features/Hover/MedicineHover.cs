using System.Collections.Immutable;
using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Notes;

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
        foreach (DatedFact<MedicinePlan> plan in at.Document.Note.Facts<MedicinePlan>(at.Day).Where(plan => Same(plan.Fact.Medicine.Text, name) && plan.Line != at.Index).TakeLast(2))
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
        ImmutableArray<Entry> entries = at.Document.Note.Entries;
        int from = at.Entry is { } own ? EntriesBefore.FirstFrom(entries, own.Line) : entries.Length - 1;
        for (int i = from; i >= 0; i--)
        {
            for (int j = entries[i].Items.Length - 1; j >= 0; j--)
            {
                Placed<NoteItem> item = entries[i].Items[j];
                bool before = at.Entry is null || item.Line < at.Index;
                if (before && item.Value is DoseEvent { Word.Word: "gave" } given && Same(given.Medicine.Text, name))
                {
                    string dose = given.Dose is null ? "" : ValuePrinter.Print(given.Dose);
                    string day = entries[i].Head.Date is { } date ? $"{DayWords.Iso(date)}{(given.Head.Time is { } time ? $" {time:HH\\:mm}" : "")}, {DayWords.From(at.Document.Today, date)}" : "on a day that is not written";
                    return $"**{(at.Entry is null ? "Last given" : "Given before this line")}:** {dose} {day} (line {item.Line + 1}).".Replace("  ", " ", StringComparison.Ordinal);
                }
            }
        }

        return at.Entry is null ? "Not noted as given." : "Not noted as given before this line.";
    }

    private static bool Same(string left, string right) => string.Equals(left, right, StringComparison.OrdinalIgnoreCase);
}
