using HealthNotes.Analysis;
namespace HealthNotes.Rendering;
/// <summary>stub</summary>
public static class VisitPage { /// <summary>stub</summary>
public static string Markdown(NoteAnalysis a) => ""; /// <summary>stub</summary>
public static string Html(NoteAnalysis a) => ""; }
