using System.Text;
using HealthNotes.Rendering.Markdown;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Html;

/// <summary>Puts the page together as one HTML file that needs nothing else.</summary>
internal static class HtmlPage
{
    public static string Of(PageText page)
    {
        var html = new StringBuilder();
        html.Append($"""
            <!doctype html>
            <html lang="{PageWords.Language}">
            <head>
            <meta charset="utf-8">
            <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src '{Stylesheet.Hash}'; base-uri 'none'; form-action 'none'">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <meta name="color-scheme" content="light dark">
            <meta name="referrer" content="no-referrer">
            <meta name="format-detection" content="telephone=no">
            <title>{HtmlText.Escape(page.Title)}</title>
            <style>{Stylesheet.Text}</style>
            </head>
            <body>
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
        return html.Append("<p class=\"last-word\">").Append(HtmlText.Escape(page.LastWord)).Append("</p>\n</footer>\n</body>\n</html>\n").ToString();
    }

    private static void Section(StringBuilder html, PageSection section)
    {
        html.Append($"<section class=\"{section.Key}\" aria-labelledby=\"{section.Key}\">\n<h2 id=\"{section.Key}\">{HtmlText.Escape(section.Title)}</h2>\n");
        foreach (SectionPart part in section.Parts)
        {
            html.Append(part switch
            {
                OwnPart own => NoteMarkdown.OwnToHtml(own.Markdown),
                FreePart free => $"<blockquote dir=\"auto\">\n{NoteMarkdown.FreeToHtml(free.Markdown)}</blockquote>\n",
                _ => "",
            });
        }

        html.Append("</section>\n");
    }
}
