using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Notes;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>Laboratory values of the current period beside the laboratory's own range; no other range is known here.</summary>
internal static class LabBuilder
{
    public static Shown<LabRow> Build(PageContext context) => Shown<LabRow>.Last(
        [.. context.Items.Where(item => item.Item is LabResult).Select(item => Row(item, (LabResult)item.Item))], PageLimits.TableRows);

    private static LabRow Row(CurrentItem item, LabResult lab) => new(
        item.Entry.Day, NoteText.Field(lab.Name!.Text), NoteText.Field(ValuePrinter.Print(lab.Value!)), lab.Reference is { } range ? ValuePrinter.Print(range) : "",
        string.Join(", ", new[] { lab.Reference is { } own && IsOutside((LabValue)lab.Value!, own) ? PageWords.OutsideOfLab : "", lab.Note is { } note ? NoteText.Field(note.Text) : "" }.Where(word => word.Length > 0)));

    private static bool IsOutside(LabValue value, ValueRange range) => value.Number is { } number && value.Bound switch
    {
        Bound.Below => number <= range.Low,
        Bound.Above => number >= range.High,
        _ => number < range.Low || number > range.High,
    };
}
