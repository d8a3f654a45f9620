using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>A line that is not understood becomes free text, which is printed for the vet, or a comment, which is not. Every character of it stays.</summary>
internal static class FreeTextFix
{
    /// <summary>For a line of which nothing is understood but its word, where nothing else fixes it.</summary>
    public static IEnumerable<LineFix> IfNothingElse(LineAt at, NoteFinding finding, IReadOnlyCollection<LineFix> others) =>
        others.Count == 0 && at.Line.Kind == LineKind.Item && at.Line.Item is null ? Of(at, finding) : [];

    /// <summary>Both ways to keep a line.</summary>
    public static IEnumerable<LineFix> Of(LineAt at, NoteFinding finding)
    {
        var before = new TextSpan(at.Line.Indent, 0);
        return at.Better(finding,
        [
            new LineFix("free-text", "Keep this line as free text (>), shown to the vet", before, "> "),
            new LineFix("comment-out", "Keep this line as a comment (#), for you alone", before, "# "),
        ]);
    }
}
