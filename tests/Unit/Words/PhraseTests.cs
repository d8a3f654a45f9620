using System.Text.RegularExpressions;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Words;

/// <summary>
/// Phrases that a native writer would not use, in product text, documents and comments. <c>not-yet.txt</c> lists the files that
/// still have some; it can only shrink. Run the tests with <c>HNOTE_WRITE_DOCS=1</c> to take off what no longer belongs there.
/// </summary>
public partial class PhraseTests
{
    private static readonly string List = Repository.PathOf("tests/Unit/Words/not-yet.txt");
    private static readonly string[] Folders = ["grammar", "server", "editor-client", "samples", "tests"];
    private static readonly string[] Endings = [".cs", ".md", ".tsv", ".ts", ".mjs", ".js", ".json", ".css", ".hnote", ".sh", ".el", ".lua", ".vim", ".kak", ".txt"];
    private static readonly string[] Skipped = ["/bin/", "/obj/", "/node_modules/", "/out/", "/dist/", "/server/hnote", "/__snapshots__/", "/__mismatch__/", "/Words/", "package-lock.json",
         "/Data/modifiers.tsv", "/Data/leads.tsv"]; // what owners write

    [Fact]
    public void No_file_has_one_that_is_not_listed()
    {
        string[] listed = File.ReadAllLines(List);
        None.Wrong(
            from file in Files().Except(listed)
            from hit in Hits(file)
            select $"{file}: {hit}");
    }

    [Fact]
    public void The_list_only_shrinks()
    {
        string[] listed = File.ReadAllLines(List);
        string[] still = [.. listed.Where(file => File.Exists(Repository.PathOf(file)) && Hits(file).Any())];
        if (Environment.GetEnvironmentVariable("HNOTE_WRITE_DOCS") == "1")
        {
            File.WriteAllLines(List, still);
            return;
        }

        None.Wrong(listed.Except(still).Select(file => $"{file} has no such phrase any more: take it off the list"));
    }

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
        @"(?<!\bthere\s)\bis\s+no\s+(?!longer|more|less|better|worse|other|later|earlier|matter)\w+|\bheld\s+against\b|\bon\s+whose\s+word\b|\bmend(s|ed|ing)?\b|\bis\s+(said|told)\b|\bsays\s+again\b|\ba\s+fault\s+in\b|\bwas\s+so\b(?!\s+\w)|\bno\s+line\s+was\s+crossed\b|\bno\s+all-clear\b|\bwent\s+without\s+a\s+word\b|\bnot\s+noted\b",
        RegexOptions.IgnoreCase)]
    private static partial Regex Banned { get; }
}
