using System.Globalization;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Hints;

/// <summary>How a line was read, where that is more than its letters.</summary>
internal static class ReadingHint
{
    private const string How = "This is how the line was read. Write it in other words if it is not what you meant.";

    /// <summary>The reading at the end of a line; null where the line says it itself.</summary>
    public static HintText? Of(LineSyntax line, int index)
    {
        int end = LineAt.ContentEnd(line);
        string written = line.Text[line.Indent..end];
        bool more = line.Items.Length > 1 || IsMore(line, line.Items[0]);
        string label = more && !MeaningPrinter.Print(line).Equals(written, StringComparison.OrdinalIgnoreCase) ? "= " + string.Join("; ", line.Items.Select(Reading))
            : line.Items is [{ Note: { } remark } item] && TakesRemark(item) ? $"remark: \"{remark.Text}\""
            : "";
        return label.Length == 0 ? null : new HintText(new Place(index, end), label, How, HintKinds.Reading);
    }

    /// <summary>That a line without its mark was kept as free text and nothing else; null for any other line.</summary>
    public static HintText? OfText(LineSyntax line, int index) => line.Kind == LineKind.FreeText && line.Text[line.Indent] != '>'
        ? new HintText(new Place(index, LineAt.ContentEnd(line)), "= noted as text", How, HintKinds.Reading)
        : null;

    /// <summary>True where something stands in the reading that the letters do not say, or say the other way round.</summary>
    private static bool IsMore(LineSyntax line, NoteItem item) =>
        item.Head.Lead is not null || item.Head.Span.Length == 0
        || (item.Site is { } site && site.Span.Start < item.Head.Span.Start)
        || (item.Head.Time is not null && line.Marks.Any(mark => mark.Kind == TokenKind.Time && mark.Span.Start > item.Head.Span.Start))
        || item.Absent.Length > 0 || item is NotSeen || (item.Word.Word == "missed" && item.Head.Span.In(line.Text) is "gave")
        || (item.Value is Measure { Amounts: [{ Unit: var unit }] } measure && char.IsAsciiDigit(measure.Span.In(line.Text)[^1]) && unit.Word.Length > 0);

    /// <summary>A remark is shown where it may be a word that was not understood; a reason or a caption is what the line is for.</summary>
    private static bool TakesRemark(NoteItem item) => item.Word.Kind is WordKind.Exam or WordKind.Scan or WordKind.Vital or WordKind.Care && !item.Word.Has(SlotKind.Medicine);

    private static string Reading(NoteItem item)
    {
        string text = ItemPrinter.ForReader(item with { Head = item.Head with { Time = null } });
        if (item.Value is Measure measure)
        {
            // a person writes a blank before the unit
            string apart = string.Join(' ', measure.Amounts.Select(amount => ValuePrinter.Print(amount)[..^amount.Unit.Word.Length].TrimEnd() + " " + amount.Unit.Word));
            text = text.Replace(string.Join(' ', measure.Amounts.Select(ValuePrinter.Print)), apart, StringComparison.Ordinal);
        }

        text = item.Note is { } note ? text.Replace($" \"{note.Text}\"", $", remark: \"{note.Text}\"", StringComparison.Ordinal) : text;
        return item.Head.Time is { } time ? $"{text}, {time.ToString("HH:mm", CultureInfo.InvariantCulture)}" : text;
    }
}
