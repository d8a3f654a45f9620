using System.Collections.Immutable;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Diagnostics;

/// <summary>
/// The findings that a reader is shown unasked: what could not be read, wherever it stands, and what is about now. An owner
/// of four years of notes wants today's findings.
/// </summary>
/// <param name="Findings">Those that are shown.</param>
/// <param name="Left">How many there are besides.</param>
public sealed record ShownFindings(ImmutableArray<NoteFinding> Findings, int Left)
{
    /// <summary>The most that are shown of one note at a time: more than anybody reads, and little enough to be sent at each keystroke.</summary>
    public const int Most = 1_000;

    /// <summary>Those of the current period and all errors, in line order; with <paramref name="past"/> all.</summary>
    public static ShownFindings Of(NoteAnalysis analysis, bool past)
    {
        ImmutableArray<NoteFinding> shown = past ? analysis.Findings : analysis.CurrentFindings;
        return new ShownFindings(shown, analysis.FindingCount - shown.Length);
    }

    /// <summary>What an editor shows: at most <see cref="Most"/>, errors first, then the current period, then the newest.</summary>
    public static ShownFindings For(NoteAnalysis analysis, FeatureSettings settings)
    {
        ImmutableArray<NoteFinding> all = settings.PastFindings ? analysis.Findings : analysis.CurrentFindings;
        if (all.Length <= Most)
        {
            return new ShownFindings(all, 0);
        }

        NoteFinding[] kept = [.. all
            .OrderBy(finding => finding.Level == FindingLevel.Error ? 0 : analysis.IsOpen(finding) ? 1 : 2)
            .ThenByDescending(finding => analysis.Note.EntryAt(finding.Line)?.Head.Date ?? DateOnly.MaxValue)
            .Take(Most)
            .OrderBy(finding => finding.Line).ThenBy(finding => finding.Span.Start)];
        return new ShownFindings([.. kept], all.Length - Most);
    }
}
