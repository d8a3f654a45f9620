using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Html;

/// <summary>
/// The frame of every HTML file that is made here: one file that needs nothing else. Its policy allows its own style and
/// pictures that are part of it, and nothing more: no request, and no script but that of the sheet to fill in.
/// </summary>
internal static class HtmlDocument
{
    /// <summary>The whole file.</summary>
    /// <param name="title">Its title, plain text.</param>
    /// <param name="style">Its style sheet.</param>
    /// <param name="body">What stands in its body, markup.</param>
    /// <param name="script">A script of its own, for the one file that is filled in; every other has none.</param>
    public static string Of(string title, Stylesheet style, string body, Stylesheet? script = null) => $"""
        <!doctype html>
        <html lang="{PageWords.Language}">
        <head>
        <meta charset="utf-8">
        <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src '{style.Hash}';{(script is null ? "" : $" script-src '{script.Hash}';")} img-src data:; base-uri 'none'; form-action 'none'">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <meta name="color-scheme" content="light dark">
        <meta name="referrer" content="no-referrer">
        <meta name="format-detection" content="telephone=no">
        {PageMark.Html}
        <title>{HtmlText.Escape(title)}</title>
        <style>{style.Text}</style>
        </head>
        <body>
        {body}{(script is null ? "" : $"<script>{script.Text}</script>\n")}</body>
        </html>

        """;
}
