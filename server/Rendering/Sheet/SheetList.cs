using System.Collections.Immutable;
using HealthNotes.Analysis.Rules;
using HealthNotes.Analysis.Trends;
using HealthNotes.Record.Checks;
using HealthNotes.Record.Courses;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>The list in the order of an examination: a box and a line for each part, a field for each measure.</summary>
internal static class SheetList
{
    public static Table Of(PageContext context, CheckPlan plan) => new(
        PageWords.SheetListCaption, [PageWords.Part, PageWords.SheetHow, PageWords.SheetRange, PageWords.SheetLast, PageWords.SheetToday],
        [.. plan.Items.GroupBy(step => step.Item.Stage).SelectMany(stage => stage.Select(step => Row(context, step)).Prepend([PageWords.NameOf(stage.Key)]))])
    { Class = "list" };

    private static ImmutableArray<Prose> Row(PageContext context, CheckStep step) =>
    [
        (Prose)NameOf(step) + " " + Prose.Quote(step.LineStart), HowToTake.Of(step.Item.Word.Word, context.Analysis.Pet.Species)?.InShort ?? "", Ranges(context, step), Last(context, step),
        Today(context, step.Item.Word.Word, step.Item.IsMeasured),
    ];

    private static Prose Today(PageContext context, string word, bool isMeasured) => (word, isMeasured) switch
    {
        (_, false) => SheetPaper.Box + $" {PageWords.Ok} " + Prose.Blank("field long"),
        ("weight", _) => (Prose)PageWords.SheetWithPet + " " + SheetPaper.Field + Prose.Blank("break") + PageWords.SheetAlone + " " + SheetPaper.Field + PageWords.SheetUnitOf(word, context.Units),
        ("rr" or "hr", _) => SheetPaper.Field + SheetPaper.Field + PageWords.SheetUnitOf(word, context.Units),
        _ => SheetPaper.Field + PageWords.SheetUnitOf(word, context.Units),
    };

    /// <summary>The name of a part or measure, for people.</summary>
    public static string NameOf(CheckStep step) => step.Item.Word.Word is "rr" or "hr" ? PageWords.ChartOf(step.Item.Word.Word, step.Item.Word.Word == "rr" ? "asleep" : "rest") : Wording.NameOf(step.Item.Word.Word);

    /// <summary>The clinic's limits, else the reference range; and what is usual, where that is settled.</summary>
    public static Prose Ranges(PageContext context, CheckStep step)
    {
        string[] limits = [.. step.Same.SelectMany(course => SheetHead.LimitsOf(context, course)).Distinct()];
        UsualNow? own = SettledUsual.Of(context.Analysis.Record, step);
        string usual = own is not null && step.Last?.Reading is { } reading ? PageWords.SheetUsual(context.Units.Show(own.Low, own.High, reading.Value.OnScaleOfNine().Unit), own.Readings is null) : "";
        string normal = limits.Length == 0 && own is not { Readings: null } && step.Normal is { } range ? PageWords.SheetNormal(context.Units.Show(range)) : "";
        return Prose.Join("", limits.Select(Prose.Strong)) + string.Join("; ", new[] { usual, normal }.Where(part => part.Length > 0));
    }

    /// <summary>The last value; of a part what is not as expected on any side, else its last line.</summary>
    public static Prose Last(PageContext context, CheckStep step) =>
        step.Item.IsMeasured ? step.Last?.Reading is { } reading ? Said(context, context.Units.Show(reading.Value.Number, reading.Value.Unit), step.Last.Day) : Prose.Empty
        : Prose.Join("; ", (step.Standing.Length > 0 ? step.Standing.Take(SheetLimits.Standing) : new[] { step.Last }.OfType<Noted>()).Select(line => Seen(context, line)));

    private static Prose Seen(PageContext context, Noted line)
    {
        string place = SiteWords.Of(line.Item!.Site);
        return Said(context, string.Join(": ", new[] { place, ExaminationBuilder.Seen(context, line.Line, line.Item) }.Where(part => part.Length > 0)), line.Day);
    }

    private static Prose Said(PageContext context, string text, DateOnly day) => (Prose)SheetLimits.Cut(NoteText.Field(text), SheetLimits.LastLength) + " " + Prose.Small(Wording.Day(day, context.Analysis.Today));
}
