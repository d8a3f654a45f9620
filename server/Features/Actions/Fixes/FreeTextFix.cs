using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>A line that is not understood becomes free text, which is printed for the vet, or a comment, which is not. Every character of it stays.</summary>
internal static class FreeTextFix
{
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
