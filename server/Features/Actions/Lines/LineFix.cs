using HealthNotes.Grammar.Text;

namespace HealthNotes.Features.Actions.Lines;

/// <summary>A way to fix one line: some of its characters give way to others.</summary>
/// <param name="Id">The name of the kind of action.</param>
/// <param name="Title">What the writer reads.</param>
/// <param name="Span">The characters that give way.</param>
/// <param name="Text">What comes in their place.</param>
/// <param name="Preferred">True where it is the only sensible way.</param>
/// <param name="Certain">True where it may be done with all others at once, unread: there is no other way to read the line.</param>
internal sealed record LineFix(string Id, string Title, TextSpan Span, string Text, bool Preferred = false, bool Certain = false)
{
    /// <summary>The line after the fix.</summary>
    public string In(string line) => string.Concat(line.AsSpan(0, Span.Start), Text, line.AsSpan(Span.End));
}
