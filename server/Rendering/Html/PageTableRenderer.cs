using Markdig.Extensions.Tables;
using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace HealthNotes.Rendering.Html;

/// <summary>
/// A table with caption and scopes. On a narrow screen the style stacks its cells; each carries its column's name for
/// that, and the roles keep it a table for readers that go by the layout.
/// </summary>
internal sealed class PageTableRenderer : HtmlObjectRenderer<Table>
{
    /// <inheritdoc/>
    protected override void Write(HtmlRenderer renderer, Table obj)
    {
        renderer.EnsureLine();
        renderer.WriteLine("<table role=\"table\">");
        if (obj.GetData(PageStructure.CaptionKey) is ParagraphBlock caption)
        {
            renderer.Write("<caption>");
            renderer.WriteLeafInline(caption);
            renderer.WriteLine("</caption>");
        }

        List<string> headers = [];
        bool inBody = false;
        foreach (Block block in obj)
        {
            var row = (TableRow)block;
            if (row.IsHeader)
            {
                headers = [.. row.Select(cell => PlainText((TableCell)cell))];
                renderer.WriteLine("<thead role=\"rowgroup\">");
                WriteHeader(renderer, row);
                renderer.WriteLine("</thead>");
                continue;
            }

            if (!inBody)
            {
                renderer.WriteLine("<tbody role=\"rowgroup\">");
                inBody = true;
            }

            WriteRow(renderer, row, headers);
        }

        renderer.Write(inBody ? "</tbody>\n" : "").WriteLine("</table>");
    }

    private static void WriteHeader(HtmlRenderer renderer, TableRow row)
    {
        renderer.Write("<tr role=\"row\">");
        foreach (Block cell in row)
        {
            renderer.Write("<th role=\"columnheader\" scope=\"col\">");
            WriteCell(renderer, (TableCell)cell);
            renderer.Write("</th>");
        }

        renderer.WriteLine("</tr>");
    }

    private static void WriteRow(HtmlRenderer renderer, TableRow row, List<string> headers)
    {
        renderer.Write("<tr role=\"row\"");
        if (row.Count > 0 && FirstInline((TableCell)row[^1]) is { } last && PageStructure.LevelClass(last) is { } level)
        {
            renderer.Write(" class=\"").Write(level).Write('"');
        }

        renderer.Write('>');
        for (int i = 0; i < row.Count; i++)
        {
            var cell = (TableCell)row[i];
            bool namesRow = i == 0 && FirstInline(cell) is not null;
            string tag = namesRow ? "th" : "td";
            renderer.Write('<').Write(tag).Write(namesRow ? " role=\"rowheader\" scope=\"row\"" : " role=\"cell\"");
            renderer.Write(" data-label=\"").Write(HtmlText.Escape(i < headers.Count ? headers[i] : "")).Write("\">");
            WriteCell(renderer, cell);
            renderer.Write("</").Write(tag).Write('>');
        }

        renderer.WriteLine("</tr>");
    }

    private static void WriteCell(HtmlRenderer renderer, TableCell cell)
    {
        foreach (Block block in cell)
        {
            if (block is LeafBlock leaf)
            {
                renderer.WriteLeafInline(leaf);
            }
        }
    }

    private static Inline? FirstInline(TableCell cell) => cell.Count > 0 && cell[0] is LeafBlock leaf ? leaf.Inline?.FirstChild : null;

    private static string PlainText(TableCell cell) =>
        cell.Count > 0 && cell[0] is LeafBlock { Inline: { } inline } ? string.Concat(inline.FindDescendants<LiteralInline>().Select(literal => literal.Content.ToString())) : "";
}
