using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Diagnostics;

namespace HealthNotes.Cli.Output;

/// <summary>The findings that <c>check</c> prints for a person, in their order.</summary>
/// <param name="Findings">What cannot wait comes first; one message for each line that was not understood.</param>
/// <param name="Older">How many findings of older entries are left out.</param>
/// <param name="Hidden">How many more are left out, since they are below the level that was asked for, or in the baseline.</param>
internal sealed record PlainFindings(IReadOnlyList<NoteFinding> Findings, int Older, int Hidden = 0)
{
    /// <summary>Those of at least a level that a baseline does not hold.</summary>
    public PlainFindings Of(string path, NoteAnalysis analysis, FindingLevel level, Baseline? baseline)
    {
        IEnumerable<NoteFinding> strong = Findings.Where(finding => finding.Level >= level);
        NoteFinding[] kept = [.. baseline?.New(path, analysis, strong) ?? strong];
        return this with { Findings = kept, Hidden = Findings.Count - kept.Length };
    }

    /// <summary>Those of the current period and every line that was not understood; with <paramref name="all"/>, of every entry.</summary>
    public static PlainFindings Of(NoteAnalysis analysis, bool all)
    {
        var shown = ShownFindings.Of(analysis, past: all);
        IEnumerable<NoteFinding> errors = shown.Findings.Where(finding => finding.Level == FindingLevel.Error)
            .GroupBy(finding => finding.Line, (_, problems) => problems.MaxBy(problem => problem.Corrected is not null)!);
        return new PlainFindings(
            [.. shown.Findings.Where(finding => finding.Level != FindingLevel.Error).Concat(errors).OrderBy(Rank).ThenBy(finding => finding.Line)],
            shown.Left);
    }

    private static int Rank(NoteFinding finding) => finding.Level switch
    {
        FindingLevel.Urgent => 0,
        FindingLevel.Call => 1,
        FindingLevel.Error => 2,
        FindingLevel.Watch => 3,
        _ => 4,
    };
}
