using System.Xml.Linq;
using HealthNotes.Analysis.Rules;
using HealthNotes.Analysis.Trends;
using HealthNotes.Record.Checks;
using HealthNotes.Record.Courses;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>The list in the order of an examination: a box and a line for each part, a field for each measure.</summary>
internal static class SheetList
{
    public static XElement Of(PageContext context, CheckPlan plan) => Tag.Table(
        "table.list", PageWords.SheetListCaption, [PageWords.Part, PageWords.SheetHow, PageWords.SheetRange, PageWords.SheetLast, PageWords.SheetToday],
        plan.Items.GroupBy(step => step.Item.Stage).SelectMany(stage => stage.Select(step => Row(context, step)).Prepend(Stage(stage.Key))));

    private static XElement Stage(CheckStage stage) => Tag.Of("tr.stage", Tag.Of("th", new XAttribute("colspan", "5"), new XAttribute("scope", "rowgroup"), PageWords.NameOf(stage)));

    private static XElement Row(PageContext context, CheckStep step)
    {
        string word = step.Item.Word.Word;
        string how = HowToTake.Of(word, context.Analysis.Pet.Species)?.InShort ?? "";
        return Tag.Of(
            step.Item.IsMeasured ? "tr.measure" : "tr",
            Tag.Head(NameOf(step), " ", Tag.Of("code", step.LineStart)), Tag.Of("td.how", how), Tag.Of("td.range", Ranges(context, step)), Tag.Of("td.last", Last(context, step)),
            Tag.Of("td.today", Today(context, word, step.Item.IsMeasured)));
    }

    private static object[] Today(PageContext context, string word, bool isMeasured) => (word, isMeasured) switch
    {
        (_, false) => [Tag.Box(), " ", PageWords.Ok, " ", Tag.Field()],
        ("weight", _) => [PageWords.SheetWithPet, " ", Tag.Field(), Tag.Of("br"), PageWords.SheetAlone, " ", Tag.Field(), PageWords.SheetUnitOf(word, context.Units)],
        ("rr" or "hr", _) => [Tag.Field(), Tag.Field(), PageWords.SheetUnitOf(word, context.Units)],
        _ => [Tag.Field(), PageWords.SheetUnitOf(word, context.Units)],
    };

    /// <summary>The name of a part or measure, for people.</summary>
    public static string NameOf(CheckStep step) => step.Item.Word.Word is "rr" or "hr" ? PageWords.ChartOf(step.Item.Word.Word, step.Item.Word.Word == "rr" ? "asleep" : "rest") : Wording.NameOf(step.Item.Word.Word);

    /// <summary>The clinic's limits, else the reference range; and what is usual, where that is settled.</summary>
    public static IEnumerable<object> Ranges(PageContext context, CheckStep step)
    {
        string[] limits = [.. step.Same.SelectMany(course => SheetHead.LimitsOf(context, course)).Distinct()];
        UsualNow? own = SettledUsual.Of(context.Analysis.Record, step);
        string usual = own is not null && step.Last?.Reading is { } reading ? PageWords.SheetUsual(context.Units.Show(own.Low, own.High, reading.Value.OnScaleOfNine().Unit), own.Readings is null) : "";
        string normal = limits.Length == 0 && own is not { Readings: null } && step.Normal is { } range ? PageWords.SheetNormal(context.Units.Show(range)) : "";
        return [.. limits.Select(limit => Tag.Of("strong", limit)), string.Join("; ", new[] { usual, normal }.Where(part => part.Length > 0))];
    }

    /// <summary>The last value; of a part what is not as expected on any side, else its last line.</summary>
    public static IEnumerable<object> Last(PageContext context, CheckStep step) =>
        step.Item.IsMeasured ? step.Last?.Reading is { } reading ? [.. Said(context, context.Units.Show(reading.Value.Number, reading.Value.Unit), step.Last.Day)] : []
        : step.Standing.Length > 0 ? step.Standing.Take(SheetLimits.Standing).SelectMany((line, index) => Seen(context, line).Prepend(index == 0 ? "" : "; "))
        : step.Last is { } last ? Seen(context, last) : [];

    private static IEnumerable<object> Seen(PageContext context, Noted line)
    {
        string place = SiteWords.Of(line.Item!.Site);
        return Said(context, string.Join(": ", new[] { place, ExaminationBuilder.Seen(context, line.Line, line.Item) }.Where(part => part.Length > 0)), line.Day);
    }

    private static IEnumerable<object> Said(PageContext context, string text, DateOnly day) =>
        [Tag.Bdi(SheetLimits.Cut(NoteText.Field(text), SheetLimits.LastLength)), " ", Tag.Of("time", Wording.Day(day, context.Analysis.Today))];
}
