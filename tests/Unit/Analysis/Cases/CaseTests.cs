using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Tests.Analysis.Cases;

/// <summary>
/// The table of small notes: what a careful technician would want said of each, and what not. It was written before the
/// rules that it judges, from the published sources. A miss and a false alarm both fail.
/// </summary>
public class CaseTests
{
    private const int FewestCases = 70;
    private const int FewestSilent = 25;

    public static TheoryData<string> All => [.. CaseNote.Names];

    public static TheoryData<string> Judged => [.. CaseNote.Names.Where(name => !CaseNote.NotYet.Contains(name))];

    [Theory]
    [MemberData(nameof(Judged))]
    public void All_that_is_wanted_is_said_and_nothing_else(string name)
    {
        string complaints = string.Join('\n', CaseNote.Load(name).Complaints());
        Assert.True(complaints.Length == 0, complaints);
    }

    [Fact]
    public void A_case_that_is_not_yet_right_leaves_the_list_when_it_is()
    {
        Assert.Empty(CaseNote.NotYet.Except(CaseNote.Names));
        string right = string.Join('\n', CaseNote.NotYet.Where(name => !CaseNote.Load(name).Complaints().Any()));
        Assert.True(right.Length == 0, $"judged rightly now, take them off the list:\n{right}");
    }

    [Fact]
    public void There_are_many_and_a_good_part_of_them_ask_for_silence()
    {
        List<CaseNote> cases = [.. CaseNote.Names.Select(CaseNote.Load)];
        Assert.True(cases.Count >= FewestCases, $"{cases.Count} cases");
        Assert.True(cases.Count(one => one.IsSilence) >= FewestSilent, $"{cases.Count(one => one.IsSilence)} of silence");
    }

    [Theory]
    [MemberData(nameof(All))]
    public void A_case_says_that_it_is_invented_and_what_it_wants(string name)
    {
        var one = CaseNote.Load(name);
        Assert.StartsWith("# Invented demo data.\n", one.Text, StringComparison.Ordinal);
        Assert.True(one.IsSilence ? one.Wanted.Count == 0 : one.Wanted.Count + one.May.Count > 0, "silence, or what is wanted");
    }

    public static TheoryData<string> Understood => [.. CaseNote.Names.Where(name => !CaseNote.NotYet.Contains(name) && !CaseNote.Load(name).IsAsWritten)];

    [Theory]
    [MemberData(nameof(Understood))]
    public void A_case_is_understood_to_the_last_word(string name) =>
        Assert.Empty(Note.Read(CaseNote.Load(name).Text).Problems.Select(placed => $"{placed.Line + 1}: {placed.Problem.Message}"));

    /// <summary>The table would not see a rule that was named wrongly: it would be missed for ever, or never be heard.</summary>
    [Fact]
    public void The_rules_that_judged_cases_ask_for_exist()
    {
        IEnumerable<string> asked = CaseNote.Names.Where(name => !CaseNote.NotYet.Contains(name)).Select(CaseNote.Load)
            .SelectMany(one => one.Wanted.Select(wanted => wanted.Rules))
            .Where(rules => !rules.Intersect(RuleBook.All.Select(rule => rule.Name)).Any())
            .Select(rules => string.Join('|', rules));
        Assert.Empty(asked);
    }
}
