using HealthNotes.Analysis;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Html;
using HealthNotes.Rendering.Markdown;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Sections;

namespace HealthNotes.Rendering.Pages;

/// <summary>The visit page: what a vet reads in two minutes. Pure: the same analysis gives the same page, to the byte.</summary>
public static class VisitPage
{
    /// <summary>The page as Markdown that also reads well as plain text.</summary>
    public static string Markdown(NoteAnalysis analysis, PageOptions? options = null) => MarkdownWriter.Of(Blocks(analysis, options));

    /// <summary>The page as one self-contained HTML file: no script, nothing loaded from elsewhere.</summary>
    public static string Html(NoteAnalysis analysis, PageOptions? options = null) => HtmlWriter.Of(Blocks(analysis, options), Stylesheet.VisitPageOn(options?.Paper, PageWriter.Footer(Context(analysis, options))));

    /// <summary>Five lines of plain text for a clinic's own record.</summary>
    public static string Plain(NoteAnalysis analysis, PageOptions? options = null) => PageWriter.Plain(Context(analysis, options));

    private static BlockPage Blocks(NoteAnalysis analysis, PageOptions? options) => PageWriter.Write(Context(analysis, options));

    private static PageContext Context(NoteAnalysis analysis, PageOptions? options) => new(analysis, options ?? PageOptions.Default);
}
