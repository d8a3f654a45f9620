using System.Collections.Immutable;
using System.Text.RegularExpressions;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Tests.Analysis;

/// <summary>Every rule has a help page, every page a rule, and the examples on the pages do what they say.</summary>
public partial class RuleHelpTests
{
    private const int LongestPage = 45;
    private static readonly DateOnly Today = new(2026, 11, 25);
    private static readonly string[] Sections = ["What it looks for", "Why", "Source", "Wrong", "Right", "What you can do"];

    public static TheoryData<string> Rules => [.. RuleBook.All.Select(rule => rule.Name).Concat(ProblemRules.All)];

    [Fact]
    public void Every_rule_has_a_page_and_every_page_a_rule() =>
        Assert.Equal(RuleBook.All.Select(rule => rule.Name).Concat(ProblemRules.All).Order(StringComparer.Ordinal), RuleHelp.Names);

    [Fact]
    public void There_is_no_page_for_a_rule_that_does_not_exist() => Assert.Null(RuleHelp.For("no-such-rule"));

    [Theory]
    [MemberData(nameof(Rules))]
    public void A_page_has_its_name_a_summary_and_its_sections(string rule)
    {
        string[] lines = RuleHelp.For(rule)!.TrimEnd().Split('\n');
        Assert.Equal($"# {rule}", lines[0]);
        Assert.Matches("^[A-Z].*[.]$", lines[1]);
        Assert.Equal(Sections, lines.Where(line => line.StartsWith("## ", StringComparison.Ordinal)).Select(line => line[3..]));
        Assert.InRange(lines.Length, 1, LongestPage);
    }

    [Theory]
    [MemberData(nameof(Rules))]
    public void The_wrong_example_is_found(string rule) =>
        Assert.Contains(FindingsIn(rule, "Wrong"), finding => finding.Rule == rule);

    [Theory]
    [MemberData(nameof(Rules))]
    public void The_right_example_is_not_found_and_can_be_read(string rule)
    {
        ImmutableArray<NoteFinding> findings = FindingsIn(rule, "Right");
        Assert.DoesNotContain(findings, finding => finding.Rule == rule);
        Assert.DoesNotContain(findings, finding => finding.Level == FindingLevel.Error);
    }

    private static ImmutableArray<NoteFinding> FindingsIn(string rule, string section)
    {
        Match example = Assert.Single(Example().Matches(RuleHelp.For(rule)!), match => match.Groups["section"].Value == section);
        return NoteAnalysis.Of(Note.Read(example.Groups["note"].Value), Today).Findings;
    }

    [GeneratedRegex("## (?<section>Wrong|Right)\n```hnote\n(?<note>.*?)```\n", RegexOptions.Singleline)]
    private static partial Regex Example();
}
