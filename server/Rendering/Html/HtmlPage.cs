using System.Text;
using HealthNotes.Rendering.Markdown;

namespace HealthNotes.Rendering.Html;

/// <summary>Puts the visit page together as one HTML file.</summary>
internal static class HtmlPage
{
    public static string Of(PageText page, Paper? paper)
    {
        var html = new StringBuilder();
        html.Append($"""
            <header>
            <h1><bdi>{HtmlText.Escape(page.Name)}</bdi></h1>
            <div class="intro">{NoteMarkdown.OwnToHtml(Md.Text(page.Intro) + "\n" + Md.Text(page.Summary))}</div>

            """);
        if (page.Pet.Parts.Count > 0)
        {
            Section(html, page.Pet);
        }

        html.Append("</header>\n<main>\n");
        foreach (PageSection section in page.Sections)
        {
            Section(html, section);
        }

        html.Append("</main>\n<footer>\n");
        Section(html, page.Closing);
        html.Append("<p class=\"last-word\">").Append(HtmlText.Escape(page.LastWord)).Append("</p>\n</footer>\n");
        return HtmlDocument.Of(page.Title, Stylesheet.VisitPageOn(paper), html.ToString());
    }

    /// <summary>A section under its heading.</summary>
    public static void Section(StringBuilder html, PageSection section)
    {
        html.Append($"<section class=\"{section.Key}\" aria-labelledby=\"{section.Key}\">\n<h2 id=\"{section.Key}\">{HtmlText.Escape(section.Title)}</h2>\n");
        foreach (SectionPart part in section.Parts)
        {
            html.Append(part switch
            {
                OwnPart own => NoteMarkdown.OwnToHtml(own.Markdown),
                FreePart free => $"<blockquote dir=\"auto\">\n{NoteMarkdown.FreeToHtml(free.Markdown)}</blockquote>\n",
                FigurePart figure => figure.Html,
                _ => "",
            });
        }

        html.Append("</section>\n");
    }
}
