using System.Xml.Linq;
using HealthNotes.Analysis.Rules;
using HealthNotes.Record.Checks;
using HealthNotes.Record.Lumps;
using HealthNotes.Rendering.Drawing.Body;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>The map of the body, to mark what is new, and the lumps to measure again under their numbers.</summary>
internal static class SheetBody
{
    public static XElement Of(PageContext context, CheckPlan plan)
    {
        (int Number, LumpLife Life)[] places = [.. plan.Places.TakeLast(SheetLimits.Places)];
        BodyMark[] marks = [.. places.Select(place => Mark(context, place.Number, place.Life))];
        int next = LumpNumbering.Of(context.Analysis.Record).Length + 1;
        int blank = Math.Max(1, SheetLimits.PlaceRows - places.Length);
        int more = plan.Places.Length - places.Length;
        return Tag.Of(
            "div.scan",
            Tag.Of("div.maps", Enum.GetValues<BodyView>().Select(view => Tag.Of(
                "figure", BodyDrawing.Of(context.Analysis.Pet.Species, view, marks, $"map-{view.ToString().ToLowerInvariant()}"), Tag.Of("figcaption", PageWords.NameOf(context.Analysis.Pet.Species, view))))),
            Tag.Of(
                "div.places", Tag.Of("h3", PageWords.SheetPlaces), Tag.Of("p", HowToTake.Of("lump")?.Steps),
                Tag.Table(
                    "table", PageWords.SheetPlacesCaption, [PageWords.Number, PageWords.Kind, PageWords.SheetLast, PageWords.SheetToday],
                    places.Select(place => Row(context, place.Number, place.Life)).Concat(Enumerable.Range(next, blank).Select(number => Row(context, $"{number}", "", PageWords.SheetNewPlace)))),
                more == 0 ? null : Tag.Of("p", PageWords.LeftOut(more))));
    }

    private static XElement Row(PageContext context, int number, LumpLife life) => Row(
        context, $"{number}", $"{Wording.NameOf(life.Key.Word).ToLowerInvariant()} {SheetLimits.Cut(SiteWords.Of(life), SheetLimits.PlaceLength)}",
        life.LastSize is { } size ? $"{ExaminationBuilder.Size(context, size)} " : "", Wording.Day(life.LastSize?.Day ?? life.Last.Day, context.Analysis.Today));

    private static XElement Row(PageContext context, string number, string what, string last, string day = "") => Tag.Of(
        "tr", Tag.Head(number), Tag.Of("td", Tag.Bdi(what)), Tag.Of("td", last, day.Length == 0 ? null : Tag.Of("time", day)), Tag.Of("td.today", Tag.Field(), context.Units.NameOf("mm")));

    private static BodyMark Mark(PageContext context, int number, LumpLife life) => new(
        number, life.Key.Word,
        PageWords.MarkInWords(number, Wording.NameOf(life.Key.Word), SiteWords.Of(life), life.LastSize is { } size ? ExaminationBuilder.Size(context, size) : ""),
        life.Site is null ? [] : [.. BodySpot.Of(life.Site, context.Analysis.Pet.Species)]);
}
