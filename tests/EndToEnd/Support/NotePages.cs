using HealthNotes.Analysis;
using HealthNotes.Grammar.Notes;
using HealthNotes.Rendering;
using HealthNotes.Rendering.Pages;
using HealthNotes.Tests.Support;

namespace HealthNotes.EndToEnd.Support;

/// <summary>The notes whose pages are looked at: the samples, and small ones of this project.</summary>
public static class NotePages
{
    /// <summary>The notes' paths from the project's top.</summary>
    public static IEnumerable<string> Notes =>
        new[] { "samples", "tests/EndToEnd/Notes" }
            .Select(folder => Repository.PathOf(folder))
            .Where(Directory.Exists)
            .SelectMany(folder => Directory.EnumerateFiles(folder, "*.hnote"))
            .Select(path => Path.GetRelativePath(Repository.PathOf(""), path))
            .Order(StringComparer.Ordinal);

    /// <summary>Writes a note's page, as read on the day of its last entry, into a folder; returns the file's path.</summary>
    public static string Write(string note, string folder)
    {
        Note read = Note.Read(File.ReadAllText(Repository.PathOf(note)));
        DateOnly day = read.Entries.Max(entry => entry.Head.Date) ?? new DateOnly(2026, 10, 5);
        string path = Path.Combine(folder, Path.GetFileNameWithoutExtension(note) + ".html");
        File.WriteAllText(path, VisitPage.Html(NoteAnalysis.Of(read, day)));
        return path;
    }
}
