using HealthNotes.Analysis.Problems;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Checks;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Due;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sections;

/// <summary>What was looked at and measured without a finding, what was not, laboratory values, and what is due.</summary>
internal static class LookedAtSections
{
    /// <summary>What was measured since the visit and no problem tells of, a line each.</summary>
    public static Section? Measured(PageContext context, PageModel model)
    {
        var text = new ProblemText(context);
        HashSet<CourseKey> told = [.. model.Problems.SelectMany(problem => problem.Parts).OfType<ValuePart>().Select(value => value.Key)];
        IEnumerable<ValuePart> values = NoteVocabulary.Default.LineWords.Terms.Where(word => word.Kind == WordKind.Vital || word.Word == "water").OrderBy(word => word.Order)
            .SelectMany(word => context.Analysis.Record.All(word.Word)).Select(course => SameVital.OnPage(course, context.Analysis.Record.All)).DistinctBy(course => course.Key)
            .Where(course => !told.Contains(course.Key) && course.Lines.Any(line => line.Reading is not null && context.IsCurrent(line.Line)))
            .Where(course => course.Key.Word != "glucose" || model.Days is null)
            .Select(course => ValueCourse.Of(context.Analysis.Record, course, null, found: false)).OfType<ValuePart>().Where(value => value.Key.Word != "weight" || value.From is not null);
        return Section.Of("measured", PageWords.InRange, Block.List(values.Select(value => Prose.Strong((value.Key.Word == "crt" ? PageWords.NameFor(context.Options.For, "crt") : PageWords.ChartOf(value.Key.Word, value.Key.Detail)) + ":") + " " + (value.Key.Word == "weight" ? text.WeightSince(value) : text.Of(value, null))
            + (value.Normal is { } normal && value.Key.Word != "pain" ? $", {(value.Key.Word == "bcs" ? PageWords.IdealIs(context.Units.Show(normal)) : IsWithin(normal, value.Now.Value) ? PageWords.GeneralRange(context.Units.Show(normal)) : PageWords.OutsideGeneral(context.Units.Show(normal)))}" : ""))));
    }

    /// <summary>The parts without a finding in the last check, and what was not looked at.</summary>
    public static Section? LookedAt(PageContext context)
    {
        DatedEntry? check = context.Period.Check;
        IReadOnlyList<CurrentItem> items = [.. context.Items.Where(item => check is not null && item.Entry.Day == check.Day && item.Entry.IsCheck)];
        string[] fine = [.. items.Where(item => item.Item is Examined).OrderBy(item => item.Item.Word.Order)
            .GroupBy(item => item.Item.Word).Where(group => group.All(item => (item.Item.Ok || item.Item.Words.IsEmpty || item.Item.Words.All(sign => sign.Word.For(context.Analysis.Pet.Species, context.Analysis.Pet.Male != false) is { Level: Level.Expected } word && (!word.IsNeutral || group.Key.Word == "node"))) && context.LevelOf(item) is null && !context.HasProblem(item.Line))).Select(group => PageWords.PartSeen(NameOf(context, group.Key.Word), string.Join(", ", group.Select(item => (group.Key.Word == "node" ? SiteWords.Of(item.Item.Site) + " " : "") + ExaminationBuilder.Seen(context, item)).Where(seen => seen.Length > 0).Distinct())))];
        var coverage = new CheckCoverage(CheckItems.For(context.Analysis.Pet));
        CheckCoverage.Seen seen = items.Select(item => item.Entry.Entry).Distinct().Select(coverage.In).Aggregate(default(CheckCoverage.Seen), (left, right) => left | right);
        string[] skipped = [.. context.Items.Where(item => item.Item is Skipped).Select(item => (Skipped)item.Item)
            .GroupBy(skip => $"{Wording.NameOf(skip.Item.Word)} {SiteWords.Of(skip.Site)}".TrimEnd().ToLowerInvariant())
            .Select(same => PageWords.SkippedBecause(same.Key, same.Last().Reason is { } reason ? NoteText.Field(reason.Text) : "")).Take(PageLimits.ListItems)];
        string? day = check?.Day is { } on ? PageWords.On(on, context.Analysis.Today) : null;
        IEnumerable<string> missing = check is null ? [] : coverage.Named(coverage.Tell(seen).Missing).Where(item => !IsOther(context, items, item.Word.Word)).Select(item => LastOn(context, item));
        string[] not = [.. skipped.Concat(missing.Where(item => !skipped.Any(skip => skip.StartsWith(item, StringComparison.Ordinal))))];
        return Section.Of(
            "looked-at", PageWords.LookedAt,
            Block.Paragraph(day is not null && fine.Length > 0 ? PageWords.LookedAtIn(day, fine) : ""),
            Block.Paragraph(seen.RestOk ? PageWords.RestTicked : ""),
            Block.Paragraph(not.Length == 0 ? "" : seen.RestOk && day is not null ? PageWords.NotMeasuredIn(day, not) : PageWords.NotLookedAtIn(day, not)));
    }

    /// <summary>True for what has another name (a muscle score is a look at the muscle), and for the mammary glands of a male.</summary>
    private static bool IsOther(PageContext context, IReadOnlyList<CurrentItem> items, string word) =>
        (word == "muscle" && items.Any(item => item.Item.Word.Word == "mcs")) || (word == "gland" && context.Analysis.Pet.Male == true);

    /// <summary>A part, and of what is measured the last day it was.</summary>
    private static string LastOn(PageContext context, CheckItem item)
    {
        DateOnly? last = item.IsMeasured ? context.Analysis.Record.All(item.Word.Word).SelectMany(course => course.Lines).Where(line => line.Reading is not null).Select(line => (DateOnly?)line.Day).Max() : null;
        return last is { } day ? PageWords.LastOn(NameOf(context, item.Word.Word), PageWords.On(day, context.Analysis.Today)) : NameOf(context, item.Word.Word);
    }

    private static string NameOf(PageContext context, string word) => PageWords.NameFor(context.Options.For, word).ToLowerInvariant().Replace("(crt)", "(CRT)", StringComparison.Ordinal);

    /// <summary>Laboratory values beside the laboratory's own range; no other range is known here.</summary>
    public static Section? Lab(PageContext context)
    {
        Shown<CurrentItem> lab = Shown<CurrentItem>.Last([.. context.Items.Where(item => item.Item is LabResult)], PageLimits.TableRows);
        return Section.Of(
            "lab", PageWords.Lab,
            Block.Table(PageWords.LabCaption, [PageWords.Day, PageWords.Kind, PageWords.Value, PageWords.LabRange], [.. lab.Items.Select(item => Row(item, (LabResult)item.Item))]),
            Block.LeftOut(lab.LeftOut));
    }

    /// <summary>What is due and is not told at the top of the page; reminders of checks and weighings are the owner's.</summary>
    public static Section? Due(PageContext context, IReadOnlySet<int> told)
    {
        bool owner = context.Options.For == Audience.Owner;
        Shown<DueItem> due = Shown<DueItem>.First([.. DueList.Of(context.Analysis.Record).Where(item => item.Kind is DueKind.Check or DueKind.Weighing or DueKind.Visit ? owner : !told.Contains(item.Line))], PageLimits.ListItems);
        return Section.Of(
            "due", PageWords.Due,
            Block.List(due.Items.Select(item => (Prose)(owner ? DueText.Line(item, context.Analysis.Today) : $"{DueText.ForClinic(item, context)}: {DueText.When(item.On, context.Analysis.Today)}"))),
            Block.LeftOut(due.LeftOut));
    }

    private static bool IsWithin(Record.Ranges.NormalRange normal, Record.Readings.ReadValue value) => !(value.Number < normal.Low) && !(value.Number > normal.High);

    private static Prose[] Row(CurrentItem item, LabResult lab)
    {
        string outside = lab.Reference is { } own && IsOutside((LabValue)lab.Value!, own) ? PageWords.OutsideOfLab : "";
        string value = string.Join(", ", new[] { NoteText.Field(ValuePrinter.Print(lab.Value!)), outside, lab.Note is { } note ? NoteText.Field(note.Text) : "" }.Where(part => part.Length > 0));
        return [PageWords.Iso(item.Entry.Day), NoteText.Field(lab.Name!.Text), value, lab.Reference is { } range ? ValuePrinter.Print(range) : PageWords.RangeNotGiven];
    }

    private static bool IsOutside(LabValue value, ValueRange range) => value.Number is { } number && value.Bound switch
    {
        Bound.Below => number <= range.Low,
        Bound.Above => number >= range.High,
        _ => number < range.Low || number > range.High,
    };
}
