using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>What a line says a second time goes. It is preferred, and certain, only where the very same word stands before it: which of two sizes is right is for the writer.</summary>
internal static class SaidTwiceFix
{
    public static IEnumerable<LineFix> Of(LineAt at, NoteFinding finding)
    {
        string said = finding.Span.In(at.Text).ToString();
        TextSpan span = LineAt.WithBlanksBefore(at.Text, finding.Span);
        bool same = at.Line.Marks.Any(mark => mark.Span.End <= finding.Span.Start && mark.Span.In(at.Text).Equals(said, StringComparison.OrdinalIgnoreCase));
        return at.Better(finding, [new LineFix("say-once", same ? $"Take the second `{said}` away" : $"Take `{said}` away", span, "", same, same)]);
    }
}
