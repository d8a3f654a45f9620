using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Tests.Support;
using Meaning = HealthNotes.Tests.Support.Meaning;

namespace HealthNotes.Tests.Grammar.Reference;

/// <summary>
/// Every example of the language reference is run. A block that starts with neither a date nor a fact is read as part of a
/// check, so that the page need not repeat a date above every line.
/// </summary>
public class ExampleTests
{
    [Fact]
    public void The_page_has_examples_of_each_kind()
    {
        Assert.InRange(LanguagePage.Blocks("hnote").Count(), 15, 100);
        Assert.InRange(LanguagePage.Blocks("hnote-wrong").Count(), 5, 50);
        None.Wrong(LanguagePage.All.Select(block => block.Language).Except(["hnote", "hnote-rules", "hnote-wrong", "hnote-format", "ebnf"]));
    }

    [Fact]
    public void Right_examples_have_no_problem() => None.Wrong(
        from block in LanguagePage.Blocks("hnote")
        let note = Note.Read(InPlace(block.Text))
        from problem in note.Problems
        select $"LANGUAGE.md, block at line {block.Line}: {note.Syntax.Lines[problem.Line].Text}: {problem.Problem.Message}");

    [Fact]
    public void Rules_have_no_problem() => Assert.Empty(ClinicRules.Read("our", Assert.Single(LanguagePage.Blocks("hnote-rules")).Text).Lines.Problems);

    [Fact]
    public void Every_line_of_a_wrong_example_has_a_problem() => None.Wrong(
        from block in LanguagePage.Blocks("hnote-wrong")
        from line in NoteSyntax.Parse(block.Text).Lines
        where line.Kind is not (LineKind.Blank or LineKind.Comment) && line.Problems.IsEmpty
        select $"LANGUAGE.md, block at line {block.Line}: {line.Text}");

    [Fact]
    public void What_format_makes_of_an_example_is_the_block_below_it()
    {
        for (int index = 1; index < LanguagePage.All.Count; index++)
        {
            if (LanguagePage.All[index].Language == "hnote-format")
            {
                Assert.Equal(LanguagePage.All[index].Text, NoteFormatter.Format(NoteSyntax.Parse(LanguagePage.All[index - 1].Text)));
            }
        }
    }

    /// <summary>The examples of forgiveness say the same, line for line.</summary>
    [Fact]
    public void Three_ways_to_write_a_weight_are_one() => Assert.Single(
        NoteSyntax.Parse(LanguagePage.Blocks("hnote").Single(block => block.Text.StartsWith("weight 21.4kg\nWEIGHT", StringComparison.Ordinal)).Text)
            .Lines.Select(line => line.Item).OfType<NoteItem>().Select(Meaning.Of).Distinct());

    [Fact]
    public void Every_line_word_has_an_example()
    {
        HashSet<string> used = [.. LanguagePage.Blocks("hnote").Concat(LanguagePage.Blocks("hnote-rules")).SelectMany(block => NoteSyntax.Parse(block.Text).Lines).Select(line => line.Item?.Word.Word ?? "")];
        None.Wrong(NoteVocabulary.Default.LineWords.Terms.Select(word => word.Word).Except(used));
    }

    private static string InPlace(string block)
    {
        LineSyntax first = NoteSyntax.Parse(block).Lines.First(line => line.Kind is not (LineKind.Blank or LineKind.Comment));
        bool whole = first.Kind == LineKind.EntryHead || first.Item?.Word.Kind == WordKind.Fact;
        return whole ? block : "2026-10-04 check\n" + block;
    }
}
