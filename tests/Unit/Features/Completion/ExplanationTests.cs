using HealthNotes.Features.Completion;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Tests.Features.Completion;

/// <summary>The explanation of an offer, and the tables behind it.</summary>
public class ExplanationTests
{
    [Theory]
    [InlineData("describing:gums:pale:dog:male", "**pale**", "Level: a reason to phone the clinic.", "Source: ")]
    [InlineData("word:rr", "**rr**", "Written as: `rr 8/30s asleep`", "Also: breathing")]
    [InlineData("site:knee", "**knee**", "Written as: `L-knee`", "Also: stifle")]
    [InlineData("object:pea", "**pea**", "7 to 10 mm", "Source: Codex")]
    [InlineData("state:rr:panting", "**panting**", "never compared with a resting range", "Source: ")]
    [InlineData("ending:rr:/30s", "**/30s**", "half a minute", "Source: Veterinary Partner (VIN) client pages.")]
    [InlineData("fixed:entry:check", "**check**", "head to tail", "")]
    public void An_explanation_says_what_it_means_and_who_says_so(string key, string first, string then, string last)
    {
        string? text = CompletionFeature.Resolve(key);
        Assert.NotNull(text);
        Assert.StartsWith(first, text, StringComparison.Ordinal);
        Assert.Contains(then, text, StringComparison.Ordinal);
        Assert.Contains(last, text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData(":")]
    [InlineData("word:")]
    [InlineData("word:nothing")]
    [InlineData("describing:gums")]
    [InlineData("describing:gums:pale:dog:male:more")]
    [InlineData("fixed:nothing:dog")]
    [InlineData("state:rr")]
    [InlineData("ending:hr:/7s")]
    [InlineData("else")]
    public void A_key_that_is_not_known_has_no_explanation(string key) => Assert.Null(CompletionFeature.Resolve(key));

    private static readonly Dictionary<string, string> Examples = TsvTable.Load(typeof(CompletionFeature).Assembly, "word-examples.tsv").Rows
        .ToDictionary(row => row["word"], row => row["example"]);

    [Fact]
    public void Every_word_has_an_example_and_every_example_reads()
    {
        LineWord[] words = [.. NoteVocabulary.Default.LineWords.Terms];
        Assert.Equal(words.Select(word => word.Word).Order(), Examples.Keys.Order());
        foreach (LineWord word in words)
        {
            string line = Examples[word.Word];
            Assert.StartsWith(word.Word + " ", line, StringComparison.Ordinal);
            Note note = word.Word is "alias" or "override-urgent" ? ClinicRules.Read("our", line).Lines : Note.Read(word.Kind == WordKind.Fact ? Filled(line) : $"2026-10-04\n  {Filled(line)}");
            string[] problems = [.. note.Problems.Select(problem => problem.Problem.Message)];
            Assert.True(problems.Length == 0, $"{line}: {string.Join("; ", problems)}");
        }

        // NAME and AMOUNT stand for what the vet ordered
        static string Filled(string line) => line.Replace("NAME", "benazepril", StringComparison.Ordinal).Replace("AMOUNT", "5mg", StringComparison.Ordinal);
    }

    [Fact]
    public void No_example_shows_a_dose() =>
        Assert.All((string[])["med", "gave", "missed", "stop"], word => Assert.DoesNotContain(Examples[word], char.IsAsciiDigit));

    [Fact]
    public void Every_ending_reads_and_has_a_source()
    {
        TsvTable table = TsvTable.Load(typeof(CompletionFeature).Assembly, "number-endings.tsv");
        Assert.Equal(["word", "ending", "meaning", "source"], table.Columns);
        foreach (TsvRow row in table.Rows)
        {
            Assert.True(row["source"].Length > 0 && row["meaning"].Length > 0, $"line {row.Line}");
            Assert.Empty(Note.Read($"2026-10-04\n  {row["word"]} 1{row["ending"]}").Problems);
        }
    }
}
