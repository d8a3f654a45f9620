using System.Collections.Immutable;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>Medicines of this note. A dose is offered only where a plan of this note states it, for the day of the entry.</summary>
internal static class MedicineOffers
{
    private const int MostNames = 60;
    private const int NotYet = 2;
    private const int DoubleGroup = 99;
    private static readonly string[] Doses = ["gave", "missed", "stop"];

    /// <summary>Lines that say a planned medicine was given, what is due first.</summary>
    public static IEnumerable<Offer> GaveLines(NoteAround note, TimeOnly? time, ImmutableArray<MedicineOrder> plan, int group)
    {
        foreach (NextDose next in NextDose.InOrder(note, time, plan))
        {
            string given = Whole(next.Order);
            yield return new Offer($"gave {given}", CompletionKind.Medicine, next.IsDouble ? DoubleGroup : next.IsDue ? group : group + NotYet, next.Text)
            {
                Spellings = [next.Order.Plan.Medicine.Text, given],
                Key = "word:gave",
                Below = next.IsDouble,
            };
        }
    }

    /// <summary>The lines of those that are due.</summary>
    public static IEnumerable<Offer> DueLines(NoteAround note, TimeOnly time, ImmutableArray<MedicineOrder> plan) => GaveLines(note, time, plan, 0).Where(offer => offer.Group == 0);

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

    /// <summary>The same with how it goes in, and with food.</summary>
    private static string Whole(MedicineOrder medicine) => string.Join(' ', [WithDose(medicine), .. Manner(medicine)]);

    private static IEnumerable<string> Manner(MedicineOrder medicine) => medicine.Plan.Manner
        .Where(manner => manner.Kind is StateKind.Route or StateKind.Food).OrderBy(manner => manner.Kind)
        .Select(manner => manner.Kind == StateKind.Route ? manner.Word : manner.Synonyms[0]);

    /// <summary>Without an amount behind it only the first word is the name.</summary>
    private static string OneWord(string name) => name.Replace(' ', '-');

    private static IEnumerable<Offer> Names(LineState line, ImmutableArray<MedicineOrder> plan, int group, int? from)
    {
        bool withDose = line.Word.Word is "gave" or "missed" && !line.HasValue;
        bool ordered = line.Word.Word == "med";
        foreach (NextDose next in NextDose.InOrder(line.Note, line.Time, plan))
        {
            if (!ordered || line.Note.Entry is not null)
            {
                string name = next.Order.Plan.Medicine.Text;
                string text = !withDose ? ordered ? name : OneWord(name) : line.Word.Word == "gave" ? Whole(next.Order) : WithDose(next.Order);
                bool last = next.IsDouble && line.Word.Word == "gave";
                yield return new Offer(text, CompletionKind.Medicine, last ? DoubleGroup : group, next.Text) { From = from, Spellings = [name], Below = last };
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
        NextDose.InOrder(line.Note, line.Time, plan)
            .Where(next => line.Word.Word is "gave" or "missed" && next.Order.Plan.Dose is not null && next.Order.Medicine == CourseKey.MedicineName(name))
            .Select(next => new Offer(string.Join(' ', [ValuePrinter.Print(next.Order.Plan.Dose!), .. line.Word.Word == "gave" ? Manner(next.Order) : []]), CompletionKind.Medicine, group, next.Text)
            {
                Preselect = !next.IsDouble,
            });

    /// <summary>The names that other lines used up to the day, the latest first.</summary>
    private static IEnumerable<string> Earlier(NoteAround note) => Doses.SelectMany(word => note.Document.Record.All(word))
        .Select(course => course.Before(note.Day, TimeOnly.MaxValue).FirstOrDefault(line => line.Line != note.Line)).OfType<Noted>()
        .Select(line => (line.Day, line.Line, Name: line.Item!.Name!.Text))
        .Concat(note.Document.Record.Facts.Plans.Where(plan => plan.Day <= note.Day && plan.Line != note.Line).Select(plan => (plan.Day!.Value, plan.Line, Name: plan.Fact.Medicine.Text)))
        .OrderDescending().Select(line => line.Name).DistinctBy(CourseKey.MedicineName).Take(MostNames);
}
