using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>Home care since the last check, by day and time.</summary>
internal static class LogBuilder
{
    public static Shown<LogLine> Build(PageContext context)
    {
        Shown<CurrentItem> shown = Shown<CurrentItem>.Last(
            [.. Timed(context.Items).Where(timed => (timed.Item.Item.Word.Kind is WordKind.Care or WordKind.Act && timed.Item.Item is not LabResult) || timed.Item.Item is TextTask { Word.Word: "done" })
                .OrderBy(timed => timed.Item.Entry.Day).ThenBy(timed => timed.Time).ThenBy(timed => timed.Item.Line).Select(timed => timed.Item)],
            PageLimits.LogLines);
        return new Shown<LogLine>([.. shown.Items.Select(item => Line(context, item))], shown.LeftOut);
    }

    /// <summary>A line without a time is put after the line above it in its entry.</summary>
    private static IEnumerable<(TimeOnly? Time, CurrentItem Item)> Timed(IEnumerable<CurrentItem> items)
    {
        CurrentItem? above = null;
        TimeOnly? time = null;
        foreach (CurrentItem item in items)
        {
            time = item.Time ?? (above?.Entry == item.Entry ? time : null);
            above = item;
            yield return (time, item);
        }
    }

    private static LogLine Line(PageContext context, CurrentItem item) => new(
        item.Entry.Day, item.Entry.Entry.Head.By is { } by ? NoteText.Field(by) : "", item.Time,
        What(item.Item), Amount(context, item), context.LevelOf(item));

    private static string What(NoteItem item) => item switch
    {
        DoseEvent dose => $"{PageWords.NameOfCare(item.Word.Word)} {NoteText.Field(dose.Medicine.Text)}",
        TextTask done => $"{PageWords.NameOfCare(item.Word.Word)}: {NoteText.Field(done.Text.Text)}",
        Act { Name: { } name } => $"{PageWords.NameOfCare(item.Word.Word)}: {NoteText.Field(name.Text)}",
        CareEvent { Food: { } food } => $"{PageWords.NameOfCare(item.Word.Word)}: {NoteText.Field(food.Text)}",
        _ => PageWords.NameOfCare(item.Word.Word),
    };

    private static string Amount(PageContext context, CurrentItem item)
    {
        IEnumerable<string> parts = item.Item switch
        {
            DoseEvent dose =>
            [
                (dose.Dose is null ? "" : ValuePrinter.Print(dose.Dose)) + PetCardBuilder.PerKilogram(context, dose.Dose, WeightThen(context, item)),
                .. dose.Manner.Select(manner => manner.Word.Replace('-', ' ')), Note(dose.Note),
            ],
            CareEvent care =>
            [
                care.Quantity is null ? "" : ValuePrinter.Print(care.Quantity), care.Times is { } times ? PageWords.Times(times) : "",
                care.Duration is { } duration ? ValuePrinter.Print(duration) : "", care.Distance is { } distance ? ValuePrinter.Print(distance) : "",
                ExaminationBuilder.Seen(context, item), Note(care.Note),
            ],
            NotSeen none => [PageWords.NoneSeen, Note(none.Note)],
            Act act => [act.Value is null ? "" : ValuePrinter.Print(act.Value), PageWords.Validity(act.Schedule), Note(act.Note)],
            _ => [],
        };
        return string.Join(", ", parts.Where(part => part.Length > 0));
    }

    private static Record.Readings.NoteReading? WeightThen(PageContext context, CurrentItem item) =>
        item.Entry.Day is { } day ? context.Analysis.Pet.WeightOn(day) : null;

    private static string Note(FreeWords? note) => note is null ? "" : NoteText.Field(note.Text);
}
