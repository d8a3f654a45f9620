using System.Text;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Diagnostics;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Diagnostics;

/// <summary>Which findings are shown unasked.</summary>
public class ShownFindingsTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    private static NoteAnalysis Analyse(string text) => NoteAnalysis.Of(Note.Read(text), Today);

    [Fact]
    public void Old_entries_show_what_could_not_be_read_and_nothing_else()
    {
        NoteAnalysis analysis = Analyse("pet M\nspecies dog\nborn 2020\n2025-01-01 check\n  gums blue\n  gumz\n2026-11-20 check\n  gums blue\n");
        var shown = ShownFindings.For(analysis, FeatureSettings.Default);
        Assert.Equal([5, 7], shown.Findings.Select(finding => finding.Line));
        Assert.Equal([4, 5, 7], ShownFindings.For(analysis, FeatureSettings.Default with { PastFindings = true }).Findings.Select(finding => finding.Line));
        Assert.Equal(1, ShownFindings.Of(analysis, past: false).Left);
    }

    /// <summary>The walk along the entries finds what a look-up of each finding's entry finds.</summary>
    [Fact]
    public void The_samples_show_errors_and_the_current_period()
    {
        foreach (string file in Directory.EnumerateFiles(Repository.PathOf("samples"), "*.hnote"))
        {
            NoteAnalysis analysis = Analyse(File.ReadAllText(file));
            IEnumerable<NoteFinding> expected = analysis.Findings.Where(finding => finding.Level == FindingLevel.Error || analysis.IsOpen(finding));
            Assert.Equal(expected, ShownFindings.Of(analysis, past: false).Findings);
        }
    }

    [Fact]
    public void Very_many_are_capped_errors_first_then_the_newest()
    {
        var text = new StringBuilder("pet M\nspecies dog\nborn 2020\n");
        for (int i = 0; i < 1_200; i++)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"{new DateOnly(2020, 1, 1).AddDays(i):yyyy-MM-dd} check\n  gums blue\n");
        }

        text.Append("  gumz\n");
        var shown = ShownFindings.For(Analyse(text.ToString()), FeatureSettings.Default with { PastFindings = true });
        Assert.Equal(ShownFindings.Most, shown.Findings.Length);
        Assert.Equal(203, shown.Left); // two more: the last check is long ago, and none looked at the rest
        Assert.Contains(shown.Findings, finding => finding.Level == FindingLevel.Error);
        Assert.Equal(shown.Findings.OrderBy(finding => finding.Line), shown.Findings);
        Assert.DoesNotContain(shown.Findings, finding => finding.Line < 300);
    }
}
