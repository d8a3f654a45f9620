using System.Collections.Immutable;
using System.Globalization;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>Medicines of this note. A dose is offered only where a plan of this note states it, for the day of the entry.</summary>
internal static class MedicineOffers
{
    private const int MostNames = 60;
    private static readonly string[] Doses = ["gave", "missed", "stop"];

    /// <summary>Lines that say a planned medicine was given.</summary>
    public static IEnumerable<Offer> GaveLines(NoteAround note, ImmutableArray<MedicineOrder> plan, int group)
    {
        foreach (MedicineOrder medicine in plan)
        {
            string given = WithDose(medicine);
            bool already = note.OtherItems().Any(item => item.Value is DoseEvent { Word.Word: "gave" } gave && CourseKey.MedicineName(gave.Medicine.Text) == medicine.Medicine);
            yield return new Offer($"gave {given}", CompletionKind.Medicine, group, (already ? "again; " : "") + Plan(medicine))
            {
                Spellings = [medicine.Plan.Medicine.Text, given],
                Key = "word:gave",
            };
        }
    }

    /// <summary>Names (and planned doses) after <c>gave</c>, <c>missed</c>, <c>stop</c> and <c>med</c>, or the dose after a name.</summary>
    public static IEnumerable<Offer> For(LineState line, ImmutableArray<MedicineOrder> plan, int group)
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
    private static string WithDose(MedicineOrder medicine) =>
        medicine.Plan.Dose is { } dose ? $"{medicine.Plan.Medicine.Text} {ValuePrinter.Print(dose)}" : OneWord(medicine.Plan.Medicine.Text);

    /// <summary>Without an amount behind it only the first word is the name.</summary>
    private static string OneWord(string name) => name.Replace(' ', '-');

    private static string Plan(MedicineOrder medicine)
    {
        string every = medicine.Plan.Schedule.Every is { } interval ? $"every {ValuePrinter.Print(interval)}, " : "";
        string when = medicine.Plan.Manner.Any(manner => manner.Kind == StateKind.When) ? "as needed, " : "";
        return string.Create(CultureInfo.InvariantCulture, $"planned {every}{when}line {medicine.Line + 1}");
    }

    private static IEnumerable<Offer> Names(LineState line, ImmutableArray<MedicineOrder> plan, int group, int? from)
    {
        bool withDose = line.Word.Word is "gave" or "missed" && !line.HasValue;
        bool ordered = line.Word.Word == "med";
        foreach (MedicineOrder medicine in plan)
        {
            if (!ordered || line.Note.Entry is not null)
            {
                string text = withDose ? WithDose(medicine) : ordered ? medicine.Plan.Medicine.Text : OneWord(medicine.Plan.Medicine.Text);
                yield return new Offer(text, CompletionKind.Medicine, group, Plan(medicine)) { From = from, Spellings = [medicine.Plan.Medicine.Text] };
            }
        }

        foreach (string other in Earlier(line.Note))
        {
            if (!plan.Any(medicine => medicine.Medicine == CourseKey.MedicineName(other)))
            {
                yield return new Offer(ordered ? other : OneWord(other), CompletionKind.Medicine, group + 1, "in this note, not planned for this day") { From = from, Spellings = [other] };
            }
        }
    }

    /// <summary>Behind a medicine's name: the dose of its plan.</summary>
    private static IEnumerable<Offer> Dose(LineState line, ImmutableArray<MedicineOrder> plan, string name, int group) =>
        plan
            .Where(medicine => line.Word.Word is "gave" or "missed" && medicine.Plan.Dose is not null && medicine.Medicine == CourseKey.MedicineName(name))
            .Select(medicine => new Offer(ValuePrinter.Print(medicine.Plan.Dose!), CompletionKind.Medicine, group, Plan(medicine)) { Preselect = true });

    /// <summary>The names that other lines used up to the day, the latest first.</summary>
    private static IEnumerable<string> Earlier(NoteAround note) => Doses.SelectMany(word => note.Document.Record.All(word))
        .Select(course => course.Before(note.Day, TimeOnly.MaxValue).FirstOrDefault(line => line.Line != note.Line)).OfType<Noted>()
        .Select(line => (line.Day, line.Line, Name: line.Item!.Name!.Text))
        .Concat(note.Document.Record.Facts.Plans.Where(plan => plan.Day <= note.Day && plan.Line != note.Line).Select(plan => (plan.Day!.Value, plan.Line, Name: plan.Fact.Medicine.Text)))
        .OrderDescending().Select(line => line.Name).DistinctBy(CourseKey.MedicineName).Take(MostNames);
}
