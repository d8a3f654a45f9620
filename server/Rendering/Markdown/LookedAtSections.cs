using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Markdown;

/// <summary>Writes what was looked at and measured.</summary>
internal static class LookedAtSections
{
    public static IEnumerable<PageSection?> All(PageModel model) => [Examination(model.Examination), Vitals(model.Vitals), Lab(model.Lab)];

    private static PageSection? Examination(Examination examination)
    {
        SectionBuilder section = new();
        section.Table(PageWords.CheckCaption(examination.Day), [PageWords.Part, PageWords.Place, PageWords.Seen, PageWords.AsWritten, PageWords.LevelColumn], [.. examination.Check.Items.Select(Part)]);
        section.LeftOut(examination.Check.LeftOut);
        section.Table(
            examination.HasCheck ? PageWords.SinceCaption : PageWords.LookedAtCaption,
            [PageWords.Part, PageWords.Place, PageWords.When, PageWords.Seen, PageWords.AsWritten, PageWords.LevelColumn],
            [.. examination.Since.Items.Select(part => { string[] cells = Part(part); return (string[])[cells[0], cells[1], When(part.Day, part.Time), .. cells[2..]]; })]);
        section.LeftOut(examination.Since.LeftOut);
        return section.Build("examination", examination.HasCheck ? PageWords.CheckHeadToTail : PageWords.LookedAt);
    }

    private static string[] Part(ExaminedPart part) =>
        [Md.Text(part.Part), Md.Text(part.Place), Md.Text(part.Seen), Md.CellCode(part.Written), PageWriter.Mark(part.Level)];

    private static PageSection? Vitals(VitalsTable vitals)
    {
        bool sameDay = vitals.Rows.Items.All(row => row.InCheck);
        SectionBuilder section = new();
        section.Table(
            PageWords.VitalsCaption,
            [PageWords.Vital, PageWords.When, PageWords.AsWritten, PageWords.Value, PageWords.Taken, PageWords.Normal, PageWords.UsualHere, PageWords.LevelColumn],
            [.. vitals.Rows.Items.Select(row => (string[])
            [
                Md.Text(row.Vital), sameDay ? "" : When(row.Day, row.Time), Md.CellCode(row.Written), Md.Text(row.Value), Md.Text(row.Taken),
                Md.Text(row.Normal), Md.Text(row.Usual), row.Level is null ? PageWords.NameOf(row.Verdict) : PageWriter.Mark(row.Level),
            ])]);
        section.LeftOut(vitals.Rows.LeftOut);
        section.Paragraph(vitals.Sources.Count == 0 ? "" : Md.Small($"{PageWords.RangeSourcesLead} {string.Join(" ", vitals.Sources.Select(s => PageWords.RangeSources(s.Label, s.Values)))}"));
        return section.Build("vitals", PageWords.Vitals);
    }

    private static PageSection? Lab(Shown<LabRow> lab) => new SectionBuilder()
        .Table(
            PageWords.LabCaption, [PageWords.Day, PageWords.Kind, PageWords.Value, PageWords.LabRange, PageWords.LabRemark],
            [.. lab.Items.Select(row => (string[])[PageWords.Iso(row.Day), Md.Text(row.What), Md.Text(row.Value), Md.Text(row.Reference), Md.Text(row.Remark)])])
        .LeftOut(lab.LeftOut)
        .Build("lab", PageWords.Lab);

    private static string When(DateOnly? day, TimeOnly? time) => time is { } clock ? $"{PageWords.Iso(day)} {clock:HH:mm}" : PageWords.Iso(day);
}
