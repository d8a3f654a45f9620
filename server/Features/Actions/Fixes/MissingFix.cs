using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>The few lines whose missing part is known: <c>else</c> says ok, and a lone <c>@</c> can go. What was seen is never made up.</summary>
internal static class MissingFix
{
    public static IEnumerable<LineFix> Of(LineAt at, NoteFinding finding)
    {
        string written = finding.Span.In(at.Text).ToString();
        return at.Better(finding, (at.Word?.Word, written) switch
        {
            ("else", _) => [new LineFix("say-ok", "Write `else ok`: all else was looked at, and as expected", finding.Span, written + " ok")],
            (_, "@") => [new LineFix("drop-sign", "Take the lone `@` away", LineAt.WithBlanksBefore(at.Text, finding.Span), "", Preferred: true)],
            _ => [],
        });
    }
}
