using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Html;

namespace HealthNotes.Rendering.Sheet;

/// <summary>The frame of a sheet: sides of paper in one self-contained HTML file.</summary>
internal static class SheetPaper
{
    /// <summary>Room to write a word or a number in.</summary>
    public static Prose Field { get; } = Prose.Blank("field");

    /// <summary>A box to tick.</summary>
    public static Prose Box { get; } = Prose.Blank("box");

    /// <summary>The file.</summary>
    public static string Html(string title, Paper paper, params ReadOnlySpan<Section> sides) => HtmlWriter.Of(
        title,
        new Stylesheet($"{Stylesheet.Of("sheet.css").Text}\n@page {{ size: {paper}; margin: {(paper == Paper.A4 ? "9mm" : "6mm 9mm")}; }}\n@media print {{ html {{ font-size: {(paper == Paper.A4 ? "7.2pt" : "6.9pt")}; }} }}\n"),
        sides);

    /// <summary>A side under its heading.</summary>
    public static Section Side(string name, string title, params IEnumerable<Block?> blocks) => new(name, title, [.. blocks.OfType<Block>()], $"side {name}");
}
