using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Cli.Output;

/// <summary>Writes findings for a person: the line as written, a marker under the words meant, and what it is about.</summary>
internal static class FindingPrinter
{
    private const int WidestShown = 120;

    public static void Print(TextWriter output, NoteAnalysis analysis, NoteFinding finding)
    {
        LineSyntax line = analysis.Note.Syntax.Lines[finding.Line];
        string number = $"{finding.Line + 1}";
        output.WriteLine($"  {Terminal.InColour(Wording.NameOf(finding.Level), finding.Level)}  line {number}, column {finding.Span.Start + 1}  {Terminal.Faint(finding.Rule)}");
        (string shown, int start, int length) = Window(line.Text, finding.Span.Start, finding.Span.Length);
        output.WriteLine($"    {Terminal.Faint(number + " |")} {shown}");
        output.WriteLine($"    {new string(' ', number.Length)} {Terminal.Faint("|")} {Padding(shown, start)}{Terminal.InColour(new string('^', Math.Max(1, length)), finding.Level)}");
        foreach (string part in Terminal.Wrap(Clean(finding.Message), indent: 4))
        {
            output.WriteLine("    " + part);
        }

        foreach (int other in finding.Evidence.Where(other => other != finding.Line).TakeLast(3))
        {
            output.WriteLine($"    {Terminal.Faint($"see line {other + 1}: {Clean(analysis.Note.Syntax.Lines[other].Text.Trim())}")}");
        }

        if (finding.Source != RuleBook.NoteFormat)
        {
            output.WriteLine($"    {Terminal.Faint("source: " + finding.Source)}");
        }

        output.WriteLine();
    }

    /// <summary>The part of a long line round the words meant; control characters are shown as dots so that a note can't drive the terminal.</summary>
    private static (string Shown, int Start, int Length) Window(string text, int start, int length)
    {
        int from = text.Length <= WidestShown ? 0 : Math.Max(0, Math.Min(start - (WidestShown / 3), text.Length - WidestShown));
        string shown = Clean(text.Substring(from, Math.Min(WidestShown, text.Length - from)));
        return (shown, start - from, Math.Min(length, WidestShown - (start - from)));
    }

    /// <summary>The text with control and direction characters as dots.</summary>
    public static string Clean(string text) => string.Create(text.Length, text, (buffer, source) =>
    {
        for (int i = 0; i < source.Length; i++)
        {
            buffer[i] = source[i] == '\t' || !(char.IsControl(source[i]) || IsBidiControl(source[i])) ? source[i] : '·';
        }
    });

    private static bool IsBidiControl(char c) => c is (>= '\u202a' and <= '\u202e') or (>= '\u2066' and <= '\u2069') or '\u200e' or '\u200f';

    private static string Padding(string text, int length) =>
        string.Concat(text.AsSpan(0, Math.Min(length, text.Length)).ToString().Select(c => c == '\t' ? '\t' : ' '));
}
