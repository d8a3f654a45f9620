using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Analysis;

/// <summary>The samples are what their first lines say they are.</summary>
public class SampleTests
{
    private const string Mistakes = "full-of-mistakes.hnote";
    private const string Abbreviated = "juniper-after-surgery.hnote";
    private const int FewestMistakes = 20;
    private const int LongSample = 2_000;
    private const int SnapshotUpToLines = 400;
    private static readonly DateOnly Today = new(2026, 11, 25);

    public static TheoryData<string> All => [.. Repository.Samples.Select(path => Path.GetFileName(path))];

    public static TheoryData<string> Readable => [.. Names.Where(name => name != Mistakes)];

    public static TheoryData<string> Formatted => [.. Names.Where(name => name is not (Mistakes or Abbreviated))];

    public static TheoryData<string> Small => [.. Names.Where(name => Note.Read(TextOf(name)).Syntax.Lines.Length <= SnapshotUpToLines)];

    private static IEnumerable<string> Names => Repository.Samples.Select(path => Path.GetFileName(path));

    [Fact]
    public void There_are_six_and_one_of_them_is_long()
    {
        Assert.Equal(6, Names.Count());
        Assert.Contains(Names, name => Note.Read(TextOf(name)).Syntax.Lines.Length >= LongSample);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void A_sample_says_first_that_it_is_invented(string name) =>
        Assert.Matches("^#.*Invented demo data", TextOf(name).TrimStart('\uFEFF').Split('\n')[0]);

    [Theory]
    [MemberData(nameof(All))]
    public void Printing_the_tree_gives_back_every_byte(string name) =>
        Assert.Equal(BytesOf(name), new UTF8Encoding(false).GetBytes(Note.Read(TextOf(name)).Syntax.Print()));

    [Theory]
    [MemberData(nameof(Readable))]
    public void A_sample_is_understood_to_the_last_word(string name) =>
        Assert.Empty(FindingsIn(name).Where(finding => finding.Level == FindingLevel.Error).Select(finding => $"{finding.Line + 1}: {finding.Message}"));

    [Theory]
    [MemberData(nameof(Formatted))]
    public void A_sample_is_formatted(string name) => Assert.Equal(TextOf(name), NoteFormatter.Format(Note.Read(TextOf(name)).Syntax));

    [Fact]
    public void The_abbreviated_log_means_the_same_in_plain_words()
    {
        var note = Note.Read(TextOf(Abbreviated));
        string formatted = NoteFormatter.Format(note.Syntax);
        Assert.Equal(Meaning.Of(note), Meaning.Of(Note.Read(formatted)));
        Assert.Equal(formatted, NoteFormatter.Format(Note.Read(formatted).Syntax));
    }

    [Fact]
    public void The_note_full_of_mistakes_shows_every_kind_of_problem()
    {
        string text = TextOf(Mistakes);
        var note = Note.Read(text);
        Assert.StartsWith("\uFEFF", text, StringComparison.Ordinal);
        Assert.DoesNotContain(note.Syntax.Lines.SkipLast(1), line => line.Ending != "\r\n");
        Assert.True(note.Problems.Select(placed => placed.Problem.Message).Distinct().Count() >= FewestMistakes);
        // marks of a conflict would make two notes of it
        Assert.Equal(ProblemRules.All.Except([ProblemRules.Conflict]).Order(StringComparer.Ordinal), note.Problems.Select(placed => placed.Problem.Rule).Distinct().Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Small))]
    public void What_is_found_in_a_small_sample(string name)
    {
        IEnumerable<string> lines = FindingsIn(name).Select(finding =>
            string.Create(CultureInfo.InvariantCulture, $"{finding.Line + 1}:{finding.Span.Start + 1} {finding.Rule} {finding.Level} {finding.Message}"));
        Snapshots.Match(string.Join('\n', lines) + "\n", Path.GetFileNameWithoutExtension(name));
    }

    private static ImmutableArray<NoteFinding> FindingsIn(string name) => NoteAnalysis.Of(Note.Read(TextOf(name)), Today).Findings;

    private static byte[] BytesOf(string name) => File.ReadAllBytes(Repository.PathOf($"samples/{name}"));

    /// <summary>The text with its byte-order mark, if it has one.</summary>
    private static string TextOf(string name) => new UTF8Encoding(false).GetString(BytesOf(name));
}
