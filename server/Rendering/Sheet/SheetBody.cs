using System.Collections.Immutable;
using System.Xml.Linq;
using HealthNotes.Analysis.Rules;
using HealthNotes.Record.Checks;
using HealthNotes.Record.Lumps;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Drawing.Body;
using HealthNotes.Rendering.Html;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>The map of the body, to mark what is new, and the lumps to measure again under their numbers.</summary>
internal static class SheetBody
{
    public static Group Of(PageContext context, CheckPlan plan)
    {
        (int Number, LumpLife Life)[] places = [.. plan.Places.TakeLast(SheetLimits.Places)];
        BodyMark[] marks = [.. places.Select(place => Mark(context, place.Number, place.Life))];
        int next = LumpNumbering.Of(context.Analysis.Record).Length + 1;
        int blank = Math.Max(1, SheetLimits.PlaceRows - places.Length);
        int more = plan.Places.Length - places.Length;
        return new Group(
            "scan",
            [
                new Figure($"<div class=\"maps\">\n{string.Concat(Enum.GetValues<BodyView>().Select(view => Map(context, view, marks)))}</div>\n"),
                Section.Of(
                    "places", PageWords.SheetPlaces, Block.Paragraph(HowToTake.Of("lump")?.Steps ?? ""),
                    new Table(
                        PageWords.SheetPlacesCaption, [PageWords.Number, PageWords.Kind, PageWords.SheetLast, PageWords.SheetToday],
                        [.. places.Select(place => Row(context, place.Number, place.Life)), .. Enumerable.Range(next, blank).Select(number => Row(context, $"{number}", "", PageWords.SheetNewPlace))]),
                    Block.LeftOut(more))!,
            ]);
    }

    private static string Map(PageContext context, BodyView view, BodyMark[] marks) =>
        $"<figure>\n{BodyDrawing.Of(context.Analysis.Pet.Species, view, marks, $"map-{view.ToString().ToLowerInvariant()}").ToString(SaveOptions.DisableFormatting)}\n<figcaption>{HtmlText.Escape(PageWords.NameOf(context.Analysis.Pet.Species, view))}</figcaption>\n</figure>\n";

    private static ImmutableArray<Prose> Row(PageContext context, int number, LumpLife life) => Row(
        context, $"{number}", $"{Wording.NameOf(life.Key.Word).ToLowerInvariant()} {SheetLimits.Cut(SiteWords.Of(life), SheetLimits.PlaceLength)}",
        (Prose)(life.LastSize is { } size ? $"{ExaminationBuilder.Size(context, size)} " : "") + Prose.Small(Wording.Day(life.LastSize?.Day ?? life.Last.Day, context.Analysis.Today)));

    private static ImmutableArray<Prose> Row(PageContext context, string number, string what, Prose last) => [number, what, last, SheetPaper.Field + context.Units.NameOf("mm")];

    private static BodyMark Mark(PageContext context, int number, LumpLife life) => new(
        number, life.Key.Word,
        PageWords.MarkInWords(number, Wording.NameOf(life.Key.Word), SiteWords.Of(life), life.LastSize is { } size ? ExaminationBuilder.Size(context, size) : ""),
        life.Site is null ? [] : [.. BodySpot.Of(life.Site, context.Analysis.Pet.Species)]);
}
