using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Tests.Analysis;

/// <summary>A check that was only begun must not take what is urgent out of sight.</summary>
public class BegunCheckTests
{
    private const string Before = "pet X\nspecies dog\n\n2026-11-21 check\n  gums grey\n\n2026-11-25 check\n";
    private static readonly DateOnly Today = new(2026, 11, 25);

    [Theory]
    [InlineData("", true)]
    [InlineData("  # gums\n", true)]
    [InlineData("  alert bright\n", true)]
    [InlineData("  gums pink\n", false)]
    public void What_is_urgent_stays_in_front_until_the_part_is_looked_at_again(string written, bool open) =>
        Assert.Equal(open, NoteAnalysis.Of(Note.Read(Before + written), Today).CurrentFindings.Any(finding => finding.Level == FindingLevel.Urgent));

    [Fact]
    public void What_was_to_be_looked_at_again_stays_due_until_something_is_written()
    {
        const string Note = "pet X\nspecies dog\n\n2026-11-10 check\n  ear L wax\n  recheck ear L in 1w\n\n2026-11-25 check\n";
        Assert.Contains(Late(Note + "  # ear\n"), finding => finding.Rule == "task-overdue");
        Assert.DoesNotContain(Late(Note + "  alert bright\n"), finding => finding.Rule == "task-overdue");

        static IEnumerable<NoteFinding> Late(string note) => NoteAnalysis.Of(HealthNotes.Grammar.Notes.Note.Read(note), Today).Findings;
    }
}
