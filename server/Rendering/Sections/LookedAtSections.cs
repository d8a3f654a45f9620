using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sections;

/// <summary>Writes what was looked at and measured.</summary>
internal static class LookedAtSections
{
    public static IEnumerable<Section?> All(PageModel model) => [Examination(model.Examination), Vitals(model.Vitals), Lab(model.Lab)];

    private static Section? Examination(Examination examination) => Section.Of(
        "examination", examination.HasCheck ? PageWords.CheckHeadToTail : PageWords.LookedAt,
        Block.Table(PageWords.CheckCaption(examination.Day), [PageWords.Part, PageWords.Place, PageWords.Seen, PageWords.AsWritten, PageWords.LevelColumn], [.. examination.Check.Items.Select(Part)]),
        Block.LeftOut(examination.Check.LeftOut),
        Block.Table(
            examination.HasCheck ? PageWords.SinceCaption : PageWords.LookedAtCaption,
            [PageWords.Part, PageWords.Place, PageWords.When, PageWords.Seen, PageWords.AsWritten, PageWords.LevelColumn],
            [.. examination.Since.Items.Select(part => { Prose[] cells = Part(part); return (Prose[])[cells[0], cells[1], When(part.Day, part.Time), .. cells[2..]]; })]),
        Block.LeftOut(examination.Since.LeftOut));

    private static Prose[] Part(ExaminedPart part) =>
        [part.Part, part.Place, part.Seen, Prose.Quote(part.Written), PageWriter.Mark(part.Level)];

    private static Section? Vitals(VitalsTable vitals)
    {
        bool sameDay = vitals.Rows.Items.All(row => row.InCheck);
        return Section.Of(
            "vitals", PageWords.Vitals,
            Block.Table(
            PageWords.VitalsCaption,
            [PageWords.Vital, PageWords.When, PageWords.AsWritten, PageWords.Value, PageWords.Taken, PageWords.Normal, PageWords.UsualHere, PageWords.LevelColumn],
            [.. vitals.Rows.Items.Select(row => (Prose[])
            [
                row.Vital, sameDay ? "" : When(row.Day, row.Time), Prose.Quote(row.Written), row.Value, row.Taken,
                row.Normal, row.Usual, row.Level is null ? PageWords.NameOf(row.Verdict) : PageWriter.Mark(row.Level),
            ])]),
            Block.LeftOut(vitals.Rows.LeftOut),
            Block.Paragraph(vitals.Sources.Count == 0 ? "" : Prose.Small($"{PageWords.RangeSourcesLead} {string.Join(" ", vitals.Sources.Select(s => PageWords.RangeSources(s.Label, s.Values)))}")));
    }

    private static Section? Lab(Shown<LabRow> lab) => Section.Of(
        "lab", PageWords.Lab,
        Block.Table(
            PageWords.LabCaption, [PageWords.Day, PageWords.Kind, PageWords.Value, PageWords.LabRange, PageWords.LabRemark],
            [.. lab.Items.Select(row => (Prose[])[PageWords.Iso(row.Day), row.What, row.Value, row.Reference, row.Remark])]),
        Block.LeftOut(lab.LeftOut));

    private static string When(DateOnly? day, TimeOnly? time) => time is { } clock ? $"{PageWords.Iso(day)} {clock:HH:mm}" : PageWords.Iso(day);
}
