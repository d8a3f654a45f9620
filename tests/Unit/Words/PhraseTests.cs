using System.Text.RegularExpressions;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Words;

/// <summary>Phrases that a native writer would not use, in product text, documents and comments.</summary>
public partial class PhraseTests
{
    private static readonly string[] Folders = ["grammar", "server", "editor-client", "samples", "tests"];
    private static readonly string[] Endings = [".cs", ".md", ".tsv", ".ts", ".mjs", ".js", ".json", ".css", ".hnote", ".sh", ".el", ".lua", ".vim", ".kak", ".txt"];
    private static readonly string[] Skipped = ["/bin/", "/obj/", "/node_modules/", "/out/", "/dist/", "/server/hnote", "/__snapshots__/", "/__mismatch__/", "/Words/", "package-lock.json",
         "/Data/modifiers.tsv", "/Data/leads.tsv"]; // what owners write

    [Fact]
    public void No_file_has_one() => None.Wrong(
        from file in Files()
        from hit in Hits(file)
        select $"{file}: {hit}");

    private static IEnumerable<string> Files()
    {
        string top = Repository.PathOf(".");
        return Folders.SelectMany(folder => Directory.EnumerateFiles(Path.Combine(top, folder), "*", SearchOption.AllDirectories))
            .Concat(Directory.EnumerateFiles(top, "*.md"))
            .Where(file => Endings.Contains(Path.GetExtension(file)) && !Skipped.Any(part => file.Contains(part, StringComparison.Ordinal)))
            .Select(file => Path.GetRelativePath(top, file).Replace('\\', '/'));
    }

    private static IEnumerable<string> Hits(string file) => Banned.Matches(File.ReadAllText(Repository.PathOf(file))).Select(match => match.Value.ReplaceLineEndings(" "));

    /// <summary>"There is no file" is English; "8 is no unit" is not.</summary>
    [GeneratedRegex(
        @"(?<!\bthere\s)\bis\s+no\s+(?!longer|more|less|better|worse|other|later|earlier|matter)\w+|\bheld\s+against\b|\bon\s+whose\s+word\b|(?<!\bon\s+the\s)\bmend(s|ed|ing)?\b|\bis\s+(said|told)\b|\bsays\s+again\b|\ba\s+fault\s+in\b|\bwas\s+so\b(?!\s+\w)|\bno\s+line\s+was\s+crossed\b|\bno\s+all-clear\b|\bwent\s+without\s+a\s+word\b|\bnot\s+noted\b",
        RegexOptions.IgnoreCase)]
    private static partial Regex Banned { get; }
}
