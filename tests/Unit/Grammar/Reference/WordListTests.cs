using System.Text.RegularExpressions;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Tests.Grammar.Reference;

/// <summary>
/// The lists on the page are those of the vocabulary. To write them anew after a change of the tables, run the tests once
/// with <c>HNOTE_WRITE_DOCS=1</c>.
/// </summary>
public partial class WordListTests
{
    [Fact]
    public void Lists_are_in_step_with_the_vocabulary()
    {
        string right = List.Replace(LanguagePage.Text, Rewritten);
        if (Environment.GetEnvironmentVariable("HNOTE_WRITE_DOCS") == "1")
        {
            File.WriteAllText(LanguagePage.Path, right);
        }

        Assert.Equal(right, File.ReadAllText(LanguagePage.Path));
    }

    [Fact]
    public void Every_part_with_words_of_its_own_has_its_list() => Assert.All(
        NoteVocabulary.Default.LineWords.Terms.Where(word => NoteVocabulary.Default.Describing(word.Word).Terms.Any(w => w.Part != "any")),
        word => Assert.Contains($"<!-- words:{word.Word} -->", LanguagePage.Text, StringComparison.Ordinal));

    private static string Rewritten(Match match)
    {
        (string text, bool inline) = WordLists.Of(match.Groups[1].Value);
        return inline ? $"<!-- {match.Groups[1].Value} -->{text}<!-- end -->" : $"<!-- {match.Groups[1].Value} -->\n{text}\n<!-- end -->";
    }

    [GeneratedRegex("<!-- ([a-z:,-]+) -->(?:(?!<!-- end -->).)*<!-- end -->", RegexOptions.Singleline)]
    private static partial Regex List { get; }
}
