using System.Xml.Linq;
using HealthNotes.Analysis;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Checks;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Html;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>
/// This pet's check as one HTML file to fill in on a phone: boxes, words to tap, a counter, and at the end the entry as text. It has a
/// script of its own, and makes no request. Pure: the same analysis gives the same bytes.
/// </summary>
public static class FillSheet
{
    private const int WordsInSight = 6;
    private const int MostWords = 40;

    /// <summary>The file.</summary>
    public static string Html(NoteAnalysis analysis)
    {
        var context = new PageContext(analysis, PageOptions.Default);
        var plan = CheckPlan.Of(analysis.Record);
        string name = SheetHead.NameOf(analysis);
        XElement main = Of(
            "main", Of("header", Of("h1", name), Nodes(HtmlWriter.Of(SheetHead.Of(context)))), Of("p", PageWords.FillLead), Of("noscript", Of("p", PageWords.FillNoScript)),
            Of("p.when", Field(PageWords.FillDay, Input("date", "day")), Field(PageWords.FillTime, Input("time", "time")), Field(PageWords.FillBy, Input("text", "by"))),
            plan.Items.Select(step => Step(context, step)), plan.Places.Select(place => Place(context, $"{place.Life.Key.Word} {place.Life.Name}")), plan.Asked.Select(Asked),
            Of("p", Field(null, Input("checkbox", "rest"), PageWords.FillRest)),
            Of("p", Field(PageWords.FillText, Of("textarea", new XAttribute("id", "free"), new XAttribute("rows", 3)))), Of("p", Field(PageWords.FillQuestion, Input("text", "question"))),
            Of(
                "section.entry", Of("h2", PageWords.FillEntry), Of("textarea", new XAttribute("id", "text"), new XAttribute("rows", 12), new XAttribute("readonly", ""), new XAttribute("aria-label", PageWords.FillEntry)),
                Of("p", Button("share", PageWords.FillShare), Button("copy", PageWords.FillCopy)), Of("p", new XAttribute("id", "told"), new XAttribute("role", "status"), new XAttribute("data-copied", PageWords.FillCopied))),
            Nodes(HtmlWriter.Of([SheetCautions.OfUrgent(context)])));
        return HtmlDocument.Of(PageWords.FillTitle(name), Stylesheet.Of("fill.css"), main.ToString(SaveOptions.DisableFormatting) + "\n", Stylesheet.Of("fill.js"));
    }

    private static XElement Step(PageContext context, CheckStep step)
    {
        string word = step.Item.Word.Word;
        return Part(
            word, word is "rr" or "hr" ? "count" : step.Item.IsMeasured ? "value" : "part", SheetList.NameOf(step),
            HowToTake.Of(word, context.Analysis.Pet.Species)?.InShort, SheetList.Ranges(context, step), SheetList.Last(context, step),
            word is "rr" or "hr" ? Counter(word) : step.Item.IsMeasured ? [Number(UnitOf(word, context.Units.AreUs))] : [Field(null, Of("input.ok", new XAttribute("type", "checkbox")), PageWords.Ok), .. Sides(step.Item.Word), .. Words(context, word), Own()]);
    }

    /// <summary>A lump or wound that is still there, to be measured again.</summary>
    private static XElement Place(PageContext context, string start) =>
        Part(start, "value", start, HowToTake.Of(start.Split(' ')[0], context.Analysis.Pet.Species)?.InShort, Prose.Empty, Prose.Empty, [Number("mm"), .. Words(context, start.Split(' ')[0]), Own()]);

    private static XElement Asked(CheckItem item) => Part(item.Word.Word, "part", Wording(item), null, Prose.Empty, Prose.Empty, [.. item.Word.Word == "gave" ? [] : (XElement[])[Of("div.words", Chip(PageWords.SheetAsUsual))], Own()]);

    private static string Wording(CheckItem item) => item.Word.Word == "gave" ? PageWords.SheetMedicinesGiven : Analysis.Rules.Wording.NameOf(item.Word.Word);

    private static XElement Part(string start, string kind, string name, string? how, Prose ranges, Prose last, object[] content) => Of(
        $"section.{kind}", new XAttribute("data-start", start), Of("h2", name), how is null ? null : Of("p.how", how), Before(null, ranges), Before($"{PageWords.SheetLast}: ", last), content);

    /// <summary>What today's value is compared with; nothing where nothing is known.</summary>
    private static XElement? Before(string? label, Prose known) => known.IsEmpty ? null : Of("p.last", label, Nodes(HtmlWriter.Of(known)));

    /// <summary>What the writer of blocks wrote.</summary>
    private static IEnumerable<XNode> Nodes(string html) => XElement.Parse($"<p>{html}</p>", LoadOptions.PreserveWhitespace).Nodes();

    /// <summary>An element; it has an end tag even when it holds nothing. Its class stands behind a dot: <c>td.last</c>.</summary>
    private static XElement Of(string name, params object?[] content) => new(name.Split('.')[0], name.Contains('.') ? new XAttribute("class", name.Split('.', 2)[1]) : null, content, "");

    private static object[] Counter(string word) =>
    [
        new XAttribute("data-state", word == "rr" ? " asleep" : ""),
        Of("select.seconds", new XAttribute("aria-label", PageWords.FillSeconds), ((int[])[30, 15]).Select(seconds => Of("option", new XAttribute("value", seconds), PageWords.SheetIn(seconds)))),
        Of("button.tap", new XAttribute("type", "button"), PageWords.FillStart), Of("button.undo", new XAttribute("type", "button"), PageWords.FillUndo), Number(""),
    ];

    private static XElement Number(string unit) => Of("label.number", Of("input.n", new XAttribute("inputmode", "decimal"), new XAttribute("aria-label", PageWords.FillNumber), new XAttribute("data-unit", unit)), " ", unit);

    private static XElement Own() => Of("input.own", new XAttribute("placeholder", PageWords.FillOwn), new XAttribute("aria-label", PageWords.FillOwn));

    /// <summary>Left and right, for a part that comes in a pair.</summary>
    private static IEnumerable<XElement> Sides(LineWord word) => NoteVocabulary.Default.Regions.Find(word.Word)?.Sides is SideRule.Pair
        ? [Of("div.sides", ((string[])["L", "R"]).Select(side => Chip(side)))] : [];

    /// <summary>The words of a part, the expected ones first.</summary>
    private static IEnumerable<XElement> Words(PageContext context, string part)
    {
        bool male = context.Analysis.Pet.Male ?? false;
        string[] words = [.. from word in NoteVocabulary.Default.Describing(part).Terms
                             where word.Part != "any"
                             let meaning = word.For(context.Analysis.Pet.Species, male)
                             where meaning is not null
                             orderby meaning.Level
                             select word.Word];
        yield return Of("div.words", words.Take(WordsInSight).Select(Chip));
        if (words.Length > WordsInSight)
        {
            yield return Of("details", Of("summary", PageWords.FillMore), Of("div.words", words.Skip(WordsInSight).Take(MostWords).Select(Chip)));
        }
    }

    private static XElement Chip(string word) => Of("button.chip", new XAttribute("type", "button"), new XAttribute("aria-pressed", "false"), word);

    private static XElement Button(string id, string text) => Of("button", new XAttribute("type", "button"), new XAttribute("id", id), text);

    private static XElement Input(string type, string id) => Of("input", new XAttribute("type", type), new XAttribute("id", id));

    private static XElement Field(string? before, XElement input, string? behind = null) => Of("label", before is null ? null : before + " ", input, behind is null ? null : " " + behind);

    /// <summary>The unit that the note is written in.</summary>
    private static string UnitOf(string word, bool us) => (word, us) switch
    {
        ("weight", true) => "lb",
        ("weight", _) => "kg",
        ("temp", true) => "F",
        ("temp", _) => "C",
        ("glucose", true) => "mg/dL",
        ("glucose", _) => "mmol/L",
        ("bcs", _) => "/9",
        ("mcs", _) => "/3",
        ("pain", _) => "/10",
        _ => "s",
    };
}
