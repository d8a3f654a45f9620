using System.Xml.Linq;
using HealthNotes.Rendering.Html;

namespace HealthNotes.Rendering.Sheet;

/// <summary>The frame of a sheet: sides of paper in one self-contained HTML file.</summary>
internal static class SheetPaper
{
    /// <summary>The file.</summary>
    public static string Html(string title, Paper paper, params XElement[] sides)
    {
        Stylesheet common = Stylesheet.Of("sheet.css");
        var style = new Stylesheet($"{common.Text}\n@page {{ size: {paper}; margin: {(paper == Paper.A4 ? "9mm" : "6mm 9mm")}; }}\n@media print {{ html {{ font-size: {(paper == Paper.A4 ? "7.2pt" : "6.9pt")}; }} }}\n");
        return HtmlDocument.Of(title, style, $"<main>\n{string.Join('\n', sides.Select(side => side.ToString(SaveOptions.DisableFormatting)))}\n</main>\n");
    }

    /// <summary>A side under its heading.</summary>
    public static XElement Side(string name, params object?[] content) =>
        Tag.Of($"section.side.{name}", new XAttribute("aria-labelledby", name), content);
}
