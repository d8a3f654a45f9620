using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Analysis.Danger;

/// <summary>Danger in words that were not read as meaning.</summary>
public class DangerWordsTests
{
    private const string Folder = "tests/Unit/Analysis/Danger/";

    public static TheoryData<string, string, string> Cases
    {
        get
        {
            var cases = new TheoryData<string, string, string>();
            foreach (string[] row in Rows(Folder + "danger-cases.tsv"))
            {
                cases.Add(row[0], row[1], row[2]);
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void It_is_found_unless_it_is_negated(string level, string animal, string line)
    {
        NoteFinding? finding = In(animal, line).SingleOrDefault(found => found.Rule == DangerWordsRule.RuleName);
        Assert.Equal(level, finding?.Level.ToString().ToLowerInvariant() ?? "none");
    }

    [Fact]
    public void It_names_the_exact_characters() => MarkedFindings.CheckDog("""
          > Found him with the RAT  poison box
                               ^^^^^^^^^^^ danger-words urgent
          gave probiotic 1g grapes
                            ^^^^^^ danger-words urgent
        """);

    [Fact]
    public void What_a_line_of_the_entry_says_already_is_not_repeated() =>
        Assert.DoesNotContain(In("dog", "seizure 2min\n  > the seizure was short"), finding => finding.Rule == DangerWordsRule.RuleName);

    [Fact]
    public void What_a_plan_names_was_ordered() =>
        Assert.DoesNotContain(
            MarkedFindings.Read("pet Marlow\nspecies dog\nmed aspirin 25mg every 24h\n2026-11-01 log\n  > gave the aspirin late\n").Findings,
            finding => finding.Rule == DangerWordsRule.RuleName);

    [Fact]
    public void A_pet_may_be_called_Lily() =>
        Assert.DoesNotContain(
            MarkedFindings.Read("pet Lily\nspecies cat\n2026-11-01 log\n  > Lily is well\n").Findings, finding => finding.Rule == DangerWordsRule.RuleName);

    [Fact]
    public void A_line_before_the_first_entry_is_searched() =>
        Assert.Contains(MarkedFindings.Read("pet Marlow\nspecies dog\nqqq ate xylitol\n2026-11-01 log\n  gums pink\n").Findings, finding => finding.Rule == DangerWordsRule.RuleName);

    [Theory]
    [InlineData("ate chicken", true)]
    [InlineData("food chicken and rice", true)]
    [InlineData("food turkey, no chicken", false)]
    [InlineData("qqq zzz chickens", true)]
    [InlineData("gave penicillin 5mg", true)]
    [InlineData("ate beef", false)]
    [InlineData("> chicken is on the list", false)]
    public void What_the_pet_must_not_have_is_found(string line, bool found) =>
        Assert.Equal(found, MarkedFindings.Read($"pet Marlow\nspecies dog\nallergy chicken (itchy ears)\nallergy penicillin\n2026-11-01 log\n  {line}\n").Findings.Any(finding => finding.Rule == "allergy"));

    [Fact]
    public void Every_word_by_which_a_read_line_says_the_same_exists()
    {
        HashSet<string> known = [.. NoteVocabulary.Default.LineWords.Terms.Select(word => word.Word)];
        known.UnionWith(NoteVocabulary.Default.LineWords.Terms.SelectMany(word => NoteVocabulary.Default.Describing(word.Word).Terms).Select(word => word.Word));
        IEnumerable<string> named = Rows("server/Record/Data/danger-words.tsv").SelectMany(row => row[5].Split('|')).Where(word => word != "-");
        Assert.Empty(named.Where(word => !known.Contains(word)).Distinct());
    }

    private static ImmutableArray<NoteFinding> In(string animal, string line) =>
        MarkedFindings.Read($"pet Rowan\nspecies {animal}\nborn 2020-05-01\n2026-11-01 check\n  {line}\n").Findings;

    private static IEnumerable<string[]> Rows(string path) =>
        File.ReadLines(Repository.PathOf(path)).Where(line => line.Length > 0 && !line.StartsWith("# ", StringComparison.Ordinal)).Skip(1).Select(line => line.Split('\t'));
}
