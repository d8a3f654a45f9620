using HealthNotes.Features.Completion;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Tests.Features.Completion;

/// <summary>Before the first entry: facts, and their values.</summary>
public class OpeningCompletionTests
{
    [Fact]
    public void An_empty_file_starts_with_the_pet()
    {
        string[] labels = Offered.Labels("|");
        Assert.Equal("pet", labels[0]);
        Assert.True(Offered.Item("|", "pet").Preselect);
        Assert.Contains("2026-11-25 check", labels);
        Assert.DoesNotContain("gums", labels);
    }

    [Fact]
    public void What_is_said_is_not_offered_again_unless_it_may_be()
    {
        string[] labels = Offered.Labels("pet Marlow\nspecies dog\nknown one thing\n|\nsex male\n");
        Assert.DoesNotContain("pet", labels);
        Assert.DoesNotContain("sex", labels);
        Assert.Equal("breed", labels[0]);
        Assert.True(Array.IndexOf(labels, "known") > Array.IndexOf(labels, "units"), "said facts come after unsaid ones");
    }

    [Theory]
    [InlineData("pet M\nspecies |", "dog cat")]
    [InlineData("pet M\nspecies fe|", "cat")]
    [InlineData("pet M\nsex |", "male female neutered entire")]
    [InlineData("pet M\nsex male |", "neutered entire")]
    [InlineData("pet M\nsex sp|", "neutered")]
    [InlineData("pet M\nsex FS|", "FS: female neutered")]
    [InlineData("pet M\nunits |", "metric us")]
    [InlineData("pet M\nusual rr 16-24 per |", "vet")]
    [InlineData("pet M\nusual temp 38-39|", "C F")]
    [InlineData("pet M\nadult-weight 27|", "kg lb oz")]
    [InlineData("pet M\nhome-check every 30|", "30d h d w mo y")]
    public void Values_of_facts(string marked, string expected) => Assert.Equal(expected, string.Join(' ', Offered.Labels(marked)));

    [Theory]
    [InlineData("pet M\nusual |", "bcs mcs crt hr rr temp glucose weight pain bp girth lameness murmur dental")]
    [InlineData("pet M\ncall-if rr |", "asleep rest awake")]
    [InlineData("pet M\nborn 2019|", "2019")]
    [InlineData("pet M\nborn ~201|", "~2019")]
    [InlineData("pet M\nusual rr 16-24 per vet |", "2026-11-25")]
    [InlineData("pet M\ncall-if temp >39|", "C")]
    public void Values_of_facts_come_first(string marked, string expected) =>
        Assert.StartsWith(expected, string.Join(' ', Offered.Labels(marked)), StringComparison.Ordinal);

    /// <summary>The rules that the note itself has, tried out on it.</summary>
    [Fact]
    public void Facts_are_offered_where_the_note_takes_them()
    {
        Dictionary<string, string> examples = TsvTable.Load(typeof(CompletionFeature).Assembly, "word-examples.tsv").Rows.ToDictionary(row => row["word"], row => row["example"]);
        foreach (LineWord word in NoteVocabulary.Default.LineWords.Terms.Where(word => word.Kind == WordKind.Fact))
        {
            string line = examples[word.Word].Replace("NAME", "benazepril", StringComparison.Ordinal).Replace("AMOUNT", "5mg", StringComparison.Ordinal);
            Assert.Equal(Offered.Labels($"{line}\n|").Contains(word.Word), !HasProblem($"{line}\n{line}\n", ProblemRules.SaidTwice) && !HasProblem(line, ProblemRules.Misplaced));
            foreach (string kind in (string[])["check", "log", "visit"])
            {
                Assert.Equal(Offered.Labels($"2026-10-04 {kind}\n  |").Contains(word.Word), !HasProblem($"2026-10-04 {kind}\n  {line}\n", ProblemRules.Misplaced));
            }
        }

        static bool HasProblem(string note, string rule) => Note.Read(note).Problems.Any(problem => problem.Problem.Rule == rule);
    }

    /// <summary>In a clinic's rules only what may stand there is offered.</summary>
    [Fact]
    public void A_clinic_s_rules_are_completed_with_their_own_words()
    {
        Document rules = Document.Open("our.hnote-rules", 0, ClinicRules.Read("our", "\noverride-urgent \n").Lines, new DateOnly(2026, 11, 25));
        string[] words = [.. CompletionFeature.At(rules, new Place(0, 0), FeatureSettings.Default).Items.Select(item => item.Label)];
        Assert.All(words, word => Assert.True(ClinicRules.Takes(word), word));
        Assert.Contains("alias", words);
        Assert.Contains("temp-range", CompletionFeature.At(rules, new Place(1, 16), FeatureSettings.Default).Items.Select(item => item.Label));
    }

    [Fact]
    public void A_medicine_is_named_without_a_dose()
    {
        CompletionList list = Offered.At("pet M\n2026-10-04\n  gave carprofen 50mg\n2026-10-05 visit\n  med |");
        Assert.Equal(["carprofen"], list.Items.Select(item => item.Edit.NewText));
    }
}
