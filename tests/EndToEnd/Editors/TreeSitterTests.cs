using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using HealthNotes.EndToEnd.Support;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Tokens;
using HealthNotes.Tests.Support;

namespace HealthNotes.EndToEnd.Editors;

/// <summary>
/// The grammar of <c>editor-client/tree-sitter</c>, made anew by tree-sitter's own command: its corpus, and every note of the project, on
/// which it must have no error; of the samples it must paint nothing as something that the server says it is not.
/// </summary>
public sealed partial class TreeSitterTests : IDisposable
{
    private const string Grammar = "editor-client/tree-sitter";

    /// <summary>For each of the grammar's colours, the server's type that says the same.</summary>
    private static readonly Dictionary<string, TokenType> Same = new()
    {
        ["comment"] = TokenType.Comment,
        ["constant.numeric"] = TokenType.Number,
        ["type"] = TokenType.Type,
        ["keyword"] = TokenType.Keyword,
        ["label"] = TokenType.Decorator,
        ["operator"] = TokenType.Operator,
        ["variable"] = TokenType.Variable,
        ["string"] = TokenType.String,
        ["string.special.url"] = TokenType.String,
    };

    private readonly string folder = Directory.CreateTempSubdirectory("hnote-tree-sitter-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [SkippableFact]
    public async Task The_grammar_reads_every_note_and_paints_no_sample_against_the_server()
    {
        string tool = ExternalTool.Find(
            "HNOTE_TREE_SITTER", $"bash {Grammar}/test/get-tree-sitter.sh out/tree-sitter (about ten seconds)",
            Repository.PathOf("out/tree-sitter/tree-sitter"), "/usr/bin/tree-sitter", "/usr/local/bin/tree-sitter");
        foreach (string file in Directory.EnumerateFiles(Repository.PathOf(Grammar), "*", SearchOption.AllDirectories))
        {
            string copy = Path.Combine(folder, Path.GetRelativePath(Repository.PathOf(Grammar), file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }

        Task<ToolRun> RunAsync(params string[] arguments) => ToolRun.OfAsync(folder, [tool, .. arguments], ("TREE_SITTER_LIBDIR", Path.Combine(folder, "lib")), ("XDG_CACHE_HOME", folder));
        ToolRun made = await RunAsync("generate");
        Assert.True(made.Code == 0, made.Errors);
        ToolRun corpus = await RunAsync("test");
        Assert.True(corpus.Code == 0 && corpus.Output.Contains('✓', StringComparison.Ordinal), corpus.Output + corpus.Errors);

        string heads = Path.Combine(folder, "heads.hnote");
        await File.WriteAllTextAsync(heads, "2026-10-28 log\n3 nov\n  3 nov vomited twice\nnov 3 9am\n  may limp\n3nov 18:10 visit by the vet\nNov 3rd, check\n  3 novels\n3rd November # late\n21.12. check\n");
        string[] notes = [heads, .. NotePages.Notes.Select(note => Repository.PathOf(note))];
        ToolRun parsed = await RunAsync(["parse", "--quiet", .. notes]);
        Assert.True(parsed.Code == 0, parsed.Output);

        int same = 0;
        int of = 0;
        var wrong = new List<string>();
        foreach (string note in notes.Where(note => note == heads || note.StartsWith(Repository.PathOf("samples"), StringComparison.Ordinal)))
        {
            string[] lines = (await File.ReadAllTextAsync(note)).Split('\n');
            Dictionary<(int, int), TokenType> said = Said(note);
            of += said.Values.Count(type => type is TokenType.Comment or TokenType.Keyword or TokenType.Number or TokenType.Type);
            ToolRun run = await RunAsync("query", "queries/highlights.scm", note);
            Assert.True(run.Code == 0, run.Errors);
            foreach (Match capture in Capture().Matches(run.Output))
            {
                int Number(string name) => int.Parse(capture.Groups[name].Value, CultureInfo.InvariantCulture);
                TokenType painted = Same[capture.Groups["name"].Value];
                for (int at = Number("start"); at < Number("end"); at++)
                {
                    if (said.TryGetValue((Number("line"), at), out TokenType type))
                    {
                        same += type == painted ? 1 : 0;
                        if (type != painted)
                        {
                            wrong.Add($"{Path.GetFileName(note)}:{Number("line") + 1}:{at + 1} {painted}, the server says {type}: {lines[Number("line")]}");
                            break;
                        }
                    }
                }
            }
        }

        Assert.True(wrong.Count == 0, string.Join('\n', wrong.Take(20)));
        Assert.True(same > of * 0.9, $"{same} bytes are painted as the server paints them, of {of} comments, words, numbers and kinds of entry alone");
    }

    /// <summary>The server's tokens, byte by byte.</summary>
    private static Dictionary<(int Line, int Byte), TokenType> Said(string note)
    {
        var document = Document.Open("", 0, File.ReadAllText(note), new DateOnly(2026, 11, 25));
        var said = new Dictionary<(int, int), TokenType>();
        foreach (SemanticToken token in TokenFeature.Full(document))
        {
            ReadOnlySpan<char> line = document.Syntax.Lines[token.Line].Text;
            int start = Encoding.UTF8.GetByteCount(line[..token.Start]);
            for (int at = 0; at < Encoding.UTF8.GetByteCount(line.Slice(token.Start, token.Length)); at++)
            {
                said[(token.Line, start + at)] = token.Type;
            }
        }

        return said;
    }

    [GeneratedRegex(@"capture: \d+ - (?<name>[\w.]+), start: \((?<line>\d+), (?<start>\d+)\), end: \(\d+, (?<end>\d+)\)")]
    private static partial Regex Capture();
}
