using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;
using HealthNotes.Rendering;

namespace HealthNotes.Tests.Analysis;

/// <summary>A check that was only begun must not take what is urgent out of sight.</summary>
public class BegunCheckTests
{
    private const string Before = "pet X\nspecies dog\n\n2026-11-21 check\n  gums grey\n\n2026-11-25 check\n";
    private static readonly DateOnly Today = new(2026, 11, 25);

    [Theory]
    [InlineData("", 21)]
    [InlineData("  # alert\n  # gums\n", 21)]
    [InlineData("  # alert\n  gums pink\n", 25)]
    [InlineData("  > Looked him over, nothing to note.\n", 25)]
    [InlineData("  skip anus refused\n", 25)]
    public void The_current_period_starts_with_the_last_check_that_says_something(string written, int day) =>
        Assert.Equal(new DateOnly(2026, 11, day), NoteAnalysis.Of(Note.Read(Before + written), Today).Record.CurrentFrom);

    [Fact]
    public void What_is_urgent_stays_in_front_until_something_new_is_written()
    {
        NoteAnalysis begun = NoteAnalysis.Of(Note.Read(Before + "  # gums\n"), Today);
        Assert.Contains(begun.CurrentFindings, finding => finding.Level == FindingLevel.Urgent);
        Assert.Contains("Check of 2026-11-21", VisitPage.Markdown(begun), StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_to_be_looked_at_again_stays_due_until_something_is_written()
    {
        const string Note = "pet X\nspecies dog\n\n2026-11-10 check\n  ear L wax\n  recheck ear L in 1w\n\n2026-11-25 check\n";
        Assert.Contains(Late(Note + "  # ear\n"), finding => finding.Rule == "task-overdue");
        Assert.DoesNotContain(Late(Note + "  alert bright\n"), finding => finding.Rule == "task-overdue");

        static IEnumerable<NoteFinding> Late(string note) => NoteAnalysis.Of(HealthNotes.Grammar.Notes.Note.Read(note), Today).Findings;
    }
}
