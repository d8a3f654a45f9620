using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Markdown;

/// <summary>Writes findings, each with the lines it rests on and its source.</summary>
internal static class FindingSections
{
    public static PageSection? Attention(PageModel model)
    {
        Attention attention = model.Attention;
        SectionBuilder section = new();
        section.Paragraph(attention.Items.Items.Count == 0 ? Md.Text(PageWords.NothingCrossed(model.Period)) : "");
        section.Paragraph(attention.Items.Items.Count < 2 ? "" : PageWords.Totals(attention.Items.Items.CountBy(item => item.Level)));
        section.List(attention.Items.Items.Select(Finding));
        section.LeftOut(attention.Items.LeftOut);
        section.Paragraph(attention.LinesNotUnderstood == 0 ? "" : PageWords.AlsoNotUnderstood(attention.LinesNotUnderstood));
        section.Paragraph(attention.Older.Count == 0 ? "" : Md.Small(PageWords.Older(attention.Older)));
        return section.Build("attention", PageWords.Attention);
    }

    public static PageSection? ToKnow(PageModel model) => new SectionBuilder()
        .List(model.ToKnow.Items.Select(finding => $"{Day(finding.Day)}{Md.Message(finding.Message)}{Again(finding)} {Md.Small(PageWords.SourceIs(finding.Source))}"))
        .LeftOut(model.ToKnow.LeftOut)
        .Build("to-know", PageWords.ToKnow);

    /// <summary>A line as written, after its number.</summary>
    public static string Line(WrittenLine line) =>
        $"{(line.Day is { } day ? PageWords.LineOn(line.Number, day) : PageWords.LineNumber(line.Number))}: {Md.Code(line.Text)}";

    private static (string Item, IEnumerable<string> Below) Finding(FindingItem finding)
    {
        IEnumerable<string> below = finding.Evidence.Items.Select(Line)
            .Concat(finding.Evidence.LeftOut > 0 ? [PageWords.LeftOutEvidence(finding.Evidence.LeftOut)] : [])
            .Concat(finding.Again.Items.Count > 0 ? [PageWords.AlsoOn(finding.Again.Items, finding.Again.LeftOut)] : [])
            .Append(Md.Small(PageWords.SourceIs(finding.Source)));
        return ($"{PageWriter.Mark(finding.Level)} {Day(finding.Day)}{Md.Message(finding.Message)}", below);
    }

    private static string Again(FindingItem finding) => finding.Again.Items.Count == 0 ? "" : $" {PageWords.AlsoOn(finding.Again.Items, finding.Again.LeftOut)}.";

    private static string Day(DateOnly? day) => day is { } known ? $"{PageWords.Iso(known)}: " : "";
}
