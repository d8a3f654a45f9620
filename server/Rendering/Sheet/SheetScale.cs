using System.Globalization;
using System.Text;
using System.Xml.Linq;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Rendering.Html;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>A ruler in millimetres with a bar to check the print by, and everyday things drawn at their true size.</summary>
internal static class SheetScale
{
    /// <summary>The length of the ruler, and of the bar that shows whether the print is to scale.</summary>
    public const int RulerMm = 150;

    public const int BarMm = 100;

    private const int Tenth = 10;
    private const int Half = 5;
    private const decimal Gap = 4.5m;
    private const decimal LabelRoom = 15;

    /// <summary>Things that most people know, from small to large; their sizes are those of the vocabulary.</summary>
    private static readonly string[] Things = ["match-head", "peppercorn", "pea", "blueberry", "grape", "cherry", "walnut"];

    public static void Write(StringBuilder html)
    {
        html.Append("<div class=\"scale\" role=\"region\" tabindex=\"0\" aria-label=\"").Append(HtmlText.Escape(PageWords.SheetScaleRegion)).Append("\">\n<figure>\n").Append(Ruler().ToString(SaveOptions.DisableFormatting))
            .Append("\n<figcaption>").Append(HtmlText.Escape(PageWords.SheetRuler(BarMm))).Append("</figcaption>\n</figure>\n<figure>\n")
            .Append(Objects().ToString(SaveOptions.DisableFormatting)).Append("\n<figcaption>").Append(HtmlText.Escape(PageWords.SheetThings)).Append("</figcaption>\n</figure>\n</div>\n");
    }

    private static XElement Ruler()
    {
        XElement svg = Picture("ruler", PageWords.SheetRulerTitle(RulerMm), RulerMm + 6, 15);
        svg.Add(new XElement("rect", Class("bar"), Number("x", 3), Number("y", 12.2m), Number("width", BarMm), Number("height", 1.8m)));
        for (int mm = 0; mm <= RulerMm; mm++)
        {
            decimal length = mm % Tenth == 0 ? 6 : mm % Half == 0 ? 4.4m : 3;
            svg.Add(new XElement("line", Class("tick"), Number("x1", mm + 3), Number("x2", mm + 3), Number("y1", 0.2m), Number("y2", length)));
            if (mm % Tenth == 0)
            {
                svg.Add(new XElement("text", Number("x", mm + 3), Number("y", 9.4m), mm.ToString(CultureInfo.InvariantCulture)));
            }
        }

        return svg;
    }

    private static XElement Objects()
    {
        ComparisonObject[] things = [.. Things.Select(name => NoteVocabulary.Default.Objects.Find(name) ?? throw new InvalidOperationException($"no object {name}"))];
        decimal height = things.Max(thing => thing.TypicalMm) + 9;
        decimal width = things.Sum(thing => Math.Max(LabelRoom, thing.TypicalMm) + Gap);
        XElement svg = Picture("things", PageWords.SheetThingsTitle(things.Select(thing => $"{thing.Word.Replace('-', ' ')} {Mm(thing.TypicalMm)} mm")), width, height);
        decimal x = 0;
        foreach (ComparisonObject thing in things)
        {
            decimal room = Math.Max(LabelRoom, thing.TypicalMm);
            decimal middle = x + (room / 2);
            svg.Add(new XElement("circle", Class("thing"), Number("cx", middle), Number("cy", (height - 8) / 2), Number("r", thing.TypicalMm / 2)));
            svg.Add(new XElement("text", Number("x", middle), Number("y", height - 4.4m), thing.Word.Replace('-', ' ')));
            svg.Add(new XElement("text", Number("x", middle), Number("y", height - 1), $"{Mm(thing.TypicalMm)} mm"));
            x += room + Gap;
        }

        return svg;
    }

    /// <summary>A drawing whose user units are millimetres on paper.</summary>
    private static XElement Picture(string kind, string title, decimal width, decimal height) => new(
        "svg", Class(kind), new XAttribute("role", "img"), new XAttribute("aria-labelledby", $"{kind}-title"),
        new XAttribute("width", $"{Mm(width)}mm"), new XAttribute("height", $"{Mm(height)}mm"), new XAttribute("viewBox", $"0 0 {Mm(width)} {Mm(height)}"),
        new XElement("title", new XAttribute("id", $"{kind}-title"), title));

    private static XAttribute Class(string name) => new("class", name);

    private static XAttribute Number(string name, decimal number) => new(name, Mm(number));

    private static string Mm(decimal number) => number.ToString("0.##", CultureInfo.InvariantCulture);
}
