using System.Globalization;
using System.Xml.Linq;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Data;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>A ruler in millimetres with a bar to check the print by, and everyday things drawn at their true size.</summary>
internal static class SheetScale
{
    /// <summary>The length of the ruler, and of the bar that shows whether the print is to scale.</summary>
    public const int RulerMm = 150;

    public const int BarMm = 100;

    private const decimal Inch = 25.4m;
    private const int Sixteenth = 16;
    private const int Tenth = 10;
    private const int Half = 5;
    private const decimal Gap = 4.5m;
    private const decimal LabelRoom = 18;

    /// <summary>Things that most people know, from small to large; their sizes are those of the vocabulary.</summary>
    private static readonly string[] Things = ["match-head", "peppercorn", "pea", "blueberry", "grape", "cherry"];

    /// <summary>Ruler and things; the ruler in inches where the note asks for US units.</summary>
    public static Figure Of(bool us) => new(new XElement(
        "div", Class("scale"), new XAttribute("role", "region"), new XAttribute("tabindex", "0"), new XAttribute("aria-label", PageWords.SheetScaleRegion),
        new XElement("figure", Ruler(us), new XElement("figcaption", PageWords.SheetRuler(us, BarMm))), new XElement("figure", Objects(us), new XElement("figcaption", PageWords.SheetThings))).ToString(SaveOptions.DisableFormatting) + "\n");

    /// <summary>The points of body condition in a few words.</summary>
    public static Block[] BodyCondition()
    {
        IReadOnlyList<TsvRow> rows = ClinicalData.Rows("body-condition.tsv");
        return
        [
            new Table(PageWords.SheetBodyCondition, [.. rows.Select(row => row["points"])], [[.. rows.Select(row => (Prose)row["words"])]]) { Class = "condition", HasNames = false },
            new Paragraph(PageWords.SheetSources(rows.Select(row => row["source"]).Distinct()), "sources"),
        ];
    }

    private static XElement Ruler(bool us)
    {
        decimal part = us ? Inch / Sixteenth : 1;
        (int parts, int whole, int half) = us ? (6 * Sixteenth, Sixteenth, Sixteenth / 2) : (RulerMm, Tenth, Half);
        XElement svg = Picture("ruler", PageWords.SheetRulerTitle(us, RulerMm), RulerMm + 8, 15);
        svg.Add(new XElement("rect", Class("bar"), Number("x", 3), Number("y", 12.2m), Number("width", us ? 4 * Inch : BarMm), Number("height", 1.8m)));
        for (int tick = 0; tick <= parts; tick++)
        {
            decimal x = 3 + (tick * part);
            svg.Add(new XElement("line", Class("tick"), Number("x1", x), Number("x2", x), Number("y1", 0.2m), Number("y2", tick % whole == 0 ? 6 : tick % half == 0 ? 4.4m : 3)));
            if (tick % whole == 0)
            {
                svg.Add(new XElement("text", Number("x", x), Number("y", 9.4m), (us ? tick / whole : tick).ToString(CultureInfo.InvariantCulture)));
            }
        }

        return svg;
    }

    private static XElement Objects(bool us)
    {
        ComparisonObject[] things = [.. Things.Select(name => NoteVocabulary.Default.Objects.Find(name) ?? throw new InvalidOperationException($"no object {name}"))];
        decimal height = things.Max(thing => thing.TypicalMm) + 9;
        decimal width = things.Sum(thing => Math.Max(LabelRoom, thing.TypicalMm) + Gap);
        XElement svg = Picture("things", PageWords.SheetThingsTitle(things.Select(thing => $"{thing.Word.Replace('-', ' ')} {Wording.Show(thing.TypicalMm, "mm", us)}")), width, height);
        decimal x = 0;
        foreach (ComparisonObject thing in things)
        {
            decimal room = Math.Max(LabelRoom, thing.TypicalMm);
            decimal middle = x + (room / 2);
            svg.Add(new XElement("circle", Class("thing"), Number("cx", middle), Number("cy", (height - 8) / 2), Number("r", thing.TypicalMm / 2)));
            svg.Add(new XElement("text", Number("x", middle), Number("y", height - 4.4m), thing.Word.Replace('-', ' ')));
            svg.Add(new XElement("text", Number("x", middle), Number("y", height - 1), Wording.Show(thing.TypicalMm, "mm", us)));
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
