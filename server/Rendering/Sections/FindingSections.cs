using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sections;

/// <summary>Findings, each with the lines it rests on and its source.</summary>
internal static class FindingSections
{
    public static Section? Attention(PageModel model)
    {
        Attention attention = model.Attention;
        IReadOnlyList<FindingItem> items = attention.Items.Items;
        return Section.Of(
            "attention", PageWords.Attention,
            Block.Paragraph(items.Count == 0 ? PageWords.NothingCrossed(model.Period) : ""),
            Block.Paragraph(items.Count < 2 ? "" : PageWords.Totals(items.CountBy(item => item.Level))),
            Block.List(items.Select(Finding)),
            Block.LeftOut(attention.Items.LeftOut),
            Block.Paragraph(attention.LinesNotUnderstood == 0 ? "" : PageWords.AlsoNotUnderstood(attention.LinesNotUnderstood)),
            Block.Paragraph(attention.Older.Count == 0 ? "" : Prose.Small(PageWords.Older(attention.Older))));
    }

    public static Section? ToKnow(PageModel model) => Section.Of(
        "to-know", PageWords.ToKnow,
        Block.List(model.ToKnow.Items.Select(finding => Day(finding.Day) + Prose.Message(finding.Message) + Again(finding) + " " + Prose.Small(PageWords.SourceIs(finding.Source)))),
        Block.LeftOut(model.ToKnow.LeftOut));

    /// <summary>A line as written, after its number.</summary>
    public static Prose Line(WrittenLine line) =>
        $"{(line.Day is { } day ? PageWords.LineOn(line.Number, day) : PageWords.LineNumber(line.Number))}: " + Prose.Quote(line.Text);

    private static ListItem Finding(FindingItem finding) => new(
        PageWriter.Mark(finding.Level) + " " + Day(finding.Day) + Prose.Message(finding.Message),
        [
            .. finding.Evidence.Items.Select(Line),
            .. finding.Evidence.LeftOut > 0 ? (Prose[])[PageWords.LeftOutEvidence(finding.Evidence.LeftOut)] : [],
            .. finding.Again.Items.Count > 0 ? (Prose[])[PageWords.AlsoOn(finding.Again.Items, finding.Again.LeftOut)] : [],
            Prose.Small(PageWords.SourceIs(finding.Source)),
        ]);

    private static string Again(FindingItem finding) => finding.Again.Items.Count == 0 ? "" : $" {PageWords.AlsoOn(finding.Again.Items, finding.Again.LeftOut)}.";

    private static Prose Day(DateOnly? day) => day is { } known ? $"{PageWords.Iso(known)}: " : "";
}
