using System.Globalization;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>Medicines of this note. A dose is offered only where a plan of this note states it, for the day of the entry.</summary>
internal static class MedicineOffers
{
    private const int MostNames = 60;

    /// <summary>Lines that say a planned medicine was given.</summary>
    public static IEnumerable<Offer> GaveLines(NoteAround note, CarePlan plan, int group)
    {
        foreach (PlannedMedicine medicine in plan.Current)
        {
            string given = WithDose(medicine);
            bool already = note.OtherItems().Any(item => item.Value is DoseEvent { Word.Word: "gave" } gave && CarePlan.SameMedicine(gave.Medicine.Text, medicine.Name));
            yield return new Offer($"gave {given}", CompletionKind.Medicine, group, (already ? "again; " : "") + Plan(medicine))
            {
                Spellings = [medicine.Name, given],
                Key = "word:gave",
            };
        }
    }

    /// <summary>Names (and planned doses) after <c>gave</c>, <c>missed</c>, <c>stop</c> and <c>med</c>, or the dose after a name.</summary>
    public static IEnumerable<Offer> For(LineState line, CarePlan plan, int group)
    {
        Token name = line.Read.Marks.FirstOrDefault(mark => mark.Kind == TokenKind.Name);
        if (name.Span.Length > 0)
        {
            IEnumerable<Offer> dose = line.Last == name && !line.HasValue ? Dose(line, plan, line.TextOf(name), group) : [];
            return line.HasValue || name.Span.End > line.At.Start ? [] : dose.Concat(Names(line, plan, group, name.Span.Start));
        }

        // behind what was not understood no name would read
        return line.Last.Kind is TokenKind.Unknown or TokenKind.Text ? [] : Names(line, plan, group, null);
    }

    /// <summary>The medicine with its planned dose, as it is written behind <c>gave</c>.</summary>
    private static string WithDose(PlannedMedicine medicine) =>
        medicine.Plan.Dose is { } dose ? $"{medicine.Name} {ValuePrinter.Print(dose)}" : OneWord(medicine.Name);

    /// <summary>Without an amount behind it only the first word is the name.</summary>
    private static string OneWord(string name) => name.Replace(' ', '-');

    private static string Plan(PlannedMedicine medicine)
    {
        string every = medicine.Plan.Schedule.Every is { } interval ? $"every {ValuePrinter.Print(interval)}, " : "";
        string when = medicine.Plan.Manner.Any(manner => manner.Kind == StateKind.When) ? "as needed, " : "";
        return string.Create(CultureInfo.InvariantCulture, $"planned {every}{when}line {medicine.Line + 1}");
    }

    private static IEnumerable<Offer> Names(LineState line, CarePlan plan, int group, int? from)
    {
        bool withDose = line.Word.Word is "gave" or "missed" && !line.HasValue;
        bool ordered = line.Word.Word == "med";
        foreach (PlannedMedicine medicine in plan.Current)
        {
            if (!ordered || line.Note.Entry is not null)
            {
                string text = withDose ? WithDose(medicine) : ordered ? medicine.Name : OneWord(medicine.Name);
                yield return new Offer(text, CompletionKind.Medicine, group, Plan(medicine)) { From = from, Spellings = [medicine.Name] };
            }
        }

        foreach (string other in Earlier(line.Note))
        {
            if (!plan.Current.Any(medicine => CarePlan.SameMedicine(medicine.Name, other)))
            {
                yield return new Offer(ordered ? other : OneWord(other), CompletionKind.Medicine, group + 1, "in this note, not planned for this day") { From = from, Spellings = [other] };
            }
        }
    }

    /// <summary>Behind a medicine's name: the dose of its plan.</summary>
    private static IEnumerable<Offer> Dose(LineState line, CarePlan plan, string name, int group) =>
        plan.Current
            .Where(medicine => line.Word.Word is "gave" or "missed" && medicine.Plan.Dose is not null && CarePlan.SameMedicine(medicine.Name, name))
            .Select(medicine => new Offer(ValuePrinter.Print(medicine.Plan.Dose!), CompletionKind.Medicine, group, Plan(medicine)) { Preselect = true });

    /// <summary>The names that lines before this one used, the latest first.</summary>
    private static List<string> Earlier(NoteAround note)
    {
        var names = new List<string>();
        int left = Lookback.Lines;
        IEnumerable<Entry> entries = note.Entry is null ? [] : note.EarlierEntries().Prepend(note.Entry);
        foreach (Entry entry in entries)
        {
            if (names.Count >= MostNames || (left -= entry.Items.Length) < 0)
            {
                break;
            }

            for (int index = entry.Items.Length - 1; index >= 0; index--)
            {
                string? name = entry.Items[index] is { Value: DoseEvent or MedicinePlan } item && item.Line != note.Line ? item.Value.Name!.Text : null;
                if (name is not null && !names.Exists(other => CarePlan.SameMedicine(other, name)))
                {
                    names.Add(name);
                }
            }
        }

        return names;
    }
}
