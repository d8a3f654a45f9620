using System.Net;
using HealthNotes.Analysis;

namespace HealthNotes.Rendering;

/// <summary>The visit page: what a vet reads in two minutes. Pure: the same analysis gives the same page, to the byte.</summary>
public static class VisitPage
{
    /// <summary>The page as Markdown that also reads well as plain text.</summary>
    public static string Markdown(NoteAnalysis analysis) => $"# {analysis.Pet.Name ?? "Pet"}\n";

    /// <summary>The page as one self-contained HTML file.</summary>
    public static string Html(NoteAnalysis analysis) =>
        $"<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Visit page</title></head><body><main><pre>{WebUtility.HtmlEncode(Markdown(analysis))}</pre></main></body></html>\n";
}
