using System.Globalization;
using System.Text;
using HealthNotes.Analysis.Findings;
using HealthNotes.Rendering.Blocks;

namespace HealthNotes.Rendering.Html;

/// <summary>Writes a tree of blocks as HTML.</summary>
internal static class HtmlWriter
{
    private const int DateLength = 10;
    private const int FirstRank = 2;

    /// <summary>The page as one file.</summary>
    public static string Of(BlockPage page, Stylesheet style)
    {
        var html = new StringBuilder($"<header>\n<h1><bdi>{HtmlText.Escape(page.Name)}</bdi></h1>\n<div class=\"intro\">");
        html.AppendJoin('\n', page.Intro.Select(text => $"<p>{Of(text)}</p>")).Append("</div>\n");
        Write(html, page.Head, FirstRank);
        html.Append("</header>\n<main>\n");
        foreach (Section section in page.Sections)
        {
            Write(html, section, FirstRank);
        }

        html.Append("</main>\n<footer>\n");
        Write(html, page.Closing, FirstRank);
        html.Append("<p class=\"last-word\">").Append(HtmlText.Escape(page.LastWord)).Append("</p>\n</footer>\n");
        return HtmlDocument.Of(page.Title, style, html.ToString());
    }

    /// <summary>Sides of paper as one file.</summary>
    public static string Of(string title, Stylesheet style, params ReadOnlySpan<Section> sides)
    {
        var html = new StringBuilder("<main>\n");
        for (int side = 0; side < sides.Length; side++)
        {
            Write(html, sides[side], side == 0 ? 1 : FirstRank);
        }

        return HtmlDocument.Of(title, style, html.Append("</main>\n").ToString());
    }

    /// <summary>Blocks, to stand in a page of another frame; their headings are of the third rank and below.</summary>
    public static string Of(IEnumerable<Block> blocks)
    {
        var html = new StringBuilder();
        foreach (Block block in blocks)
        {
            Write(html, block, FirstRank + 1);
        }

        return html.ToString();
    }

    /// <summary>Running text.</summary>
    public static string Of(Prose text)
    {
        var html = new StringBuilder();
        Write(html, text);
        return html.ToString();
    }

    private static void Write(StringBuilder html, Block? block, int rank)
    {
        switch (block)
        {
            case Section section:
                html.Append($"<section class=\"{section.Class ?? section.Key}\" aria-labelledby=\"{section.Key}\">\n<h{rank} id=\"{section.Key}\">{Of(section.Title)}</h{rank}>\n");
                foreach (Block inner in section.Blocks)
                {
                    Write(html, inner, rank + 1);
                }

                html.Append("</section>\n");
                break;
            case Paragraph paragraph:
                html.Append(paragraph.Class is { } kind ? $"<p class=\"{kind}\">" : "<p>").Append(Of(paragraph.Text)).Append("</p>\n");
                break;
            case Group group:
                html.Append($"<div class=\"{group.Class}\">\n");
                foreach (Block inner in group.Blocks)
                {
                    Write(html, inner, rank);
                }

                html.Append("</div>\n");
                break;
            case BulletList list:
                Write(html, list);
                break;
            case Table table:
                Write(html, table);
                break;
            case Figure figure:
                html.Append(figure.Html);
                break;
            case CopyBlock copy:
                html.Append("<pre class=\"copy\">").Append(HtmlText.Escape(copy.Text)).Append("</pre>\n");
                break;
            case FreeBlock free:
                html.Append("<blockquote dir=\"auto\">\n").Append(FreeMarkdown.ToHtml(free.Markdown)).Append("</blockquote>\n");
                break;
        }
    }

    private static void Write(StringBuilder html, BulletList list)
    {
        string tag = list.IsNumbered ? "ol" : "ul";
        html.Append('<').Append(tag).Append(list.Items.Any(item => item.Text.Level is not null) ? " class=\"findings\">\n" : ">\n");
        foreach (ListItem item in list.Items)
        {
            html.Append("<li").Append(Class(item.Text.Level)).Append('>');
            Write(html, item.Text);
            html.Append(item.Below.IsEmpty ? "" : $"\n<ul>\n{string.Concat(item.Below.Select(below => $"<li>{Of(below)}</li>\n"))}</ul>\n").Append("</li>\n");
        }

        html.Append("</").Append(tag).Append(">\n");
    }

    /// <summary>
    /// A table with caption and scopes. On a narrow screen the style stacks its cells; each carries its column's name for
    /// that, and the roles keep it a table for readers that go by the layout.
    /// </summary>
    private static void Write(StringBuilder html, Table table)
    {
        html.Append("<table role=\"table\"").Append(table.Class is { } kind ? $" class=\"{kind}\"" : "").Append(">\n<caption>").Append(HtmlText.Escape(table.Caption)).Append("</caption>\n")
            .Append(table.Headers.IsEmpty ? "" : $"<thead role=\"rowgroup\">\n<tr role=\"row\">{string.Concat(table.Headers.Select(header => $"<th role=\"columnheader\" scope=\"col\">{HtmlText.Escape(header)}</th>"))}</tr>\n</thead>\n").Append("<tbody role=\"rowgroup\">\n");
        foreach (System.Collections.Immutable.ImmutableArray<Prose> row in table.Rows)
        {
            if (row.Length == 1 && table.Headers.Length > 1)
            {
                html.Append($"<tr role=\"row\" class=\"stage\"><th role=\"rowheader\" scope=\"rowgroup\" colspan=\"{table.Headers.Length}\">{Of(row[0])}</th></tr>\n");
                continue;
            }

            html.Append("<tr role=\"row\"").Append(Class(row[^1].Level)).Append('>');
            for (int i = 0; i < row.Length; i++)
            {
                string tag = i == 0 && table.HasNames && !row[i].IsEmpty ? "th" : "td";
                html.Append('<').Append(tag).Append(tag == "th" ? " role=\"rowheader\" scope=\"row\"" : " role=\"cell\"").Append(table.Headers.IsEmpty ? "" : $" data-label=\"{HtmlText.Escape(table.Headers[i])}\"").Append('>');
                Write(html, row[i]);
                html.Append("</").Append(tag).Append('>');
            }

            html.Append("</tr>\n");
        }

        html.Append("</tbody>\n</table>\n");
    }

    private static void Write(StringBuilder html, Prose text)
    {
        foreach (Inline part in text.Parts)
        {
            switch (part)
            {
                case Words words:
                    Write(html, words.Text);
                    break;
                case Quoted quoted:
                    html.Append("<code>").Append(Isolated(quoted.Text)).Append("</code>");
                    break;
                case Strong strong:
                    html.Append("<strong>").Append(Isolated(strong.Text)).Append("</strong>");
                    break;
                case LevelMark mark:
                    html.Append("<strong class=\"level ").Append(NameOf(mark.Level)).Append("\">").Append(HtmlText.Escape(mark.Name)).Append("</strong>");
                    break;
                case Blank blank:
                    html.Append(blank.Kind == "break" ? "<br/>" : $"<span class=\"{blank.Kind}\"></span>");
                    break;
                case Small small:
                    html.Append("<small>");
                    Write(html, small.Text);
                    html.Append("</small>");
                    break;
                case Link link:
                    html.Append("<a href=\"").Append(HtmlText.Escape(link.Target)).Append("\">");
                    Write(html, link.Text);
                    html.Append("</a>");
                    break;
            }
        }
    }

    /// <summary>Plain words, with right-to-left text set apart from what is around it and dates kept in one piece.</summary>
    private static void Write(StringBuilder html, ReadOnlySpan<char> text)
    {
        bool isolate = HtmlText.RunsRightToLeft(text);
        html.Append(isolate ? "<bdi>" : "");
        int from = 0;
        for (int at = 0; at + DateLength <= text.Length; at++)
        {
            if (IsDate(text, at))
            {
                html.Append(HtmlText.Escape(text[from..at])).Append("<time>").Append(text.Slice(at, DateLength)).Append("</time>");
                from = at + DateLength;
                at = from - 1;
            }
        }

        html.Append(HtmlText.Escape(text[from..])).Append(isolate ? "</bdi>" : "");
    }

    private static string Isolated(string text) => HtmlText.RunsRightToLeft(text) ? $"<bdi>{HtmlText.Escape(text)}</bdi>" : HtmlText.Escape(text);

    /// <summary>True for <c>2026-10-04</c> that no digit follows or precedes, and that the calendar has.</summary>
    private static bool IsDate(ReadOnlySpan<char> text, int at) =>
        text[at + 4] == '-' && text[at + 7] == '-'
        && (at == 0 || !char.IsAsciiDigit(text[at - 1])) && (at + DateLength == text.Length || !char.IsAsciiDigit(text[at + DateLength]))
        && DateOnly.TryParseExact(text.Slice(at, DateLength), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _);

    private static string Class(FindingLevel? level) => level is { } marked ? $" class=\"{NameOf(marked)}\"" : "";

    private static string NameOf(FindingLevel level) => level switch
    {
        FindingLevel.Urgent => "urgent",
        FindingLevel.Call => "call",
        FindingLevel.Watch => "watch",
        _ => "info",
    };
}
