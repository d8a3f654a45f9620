using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;

namespace HealthNotes.Cli.Output;

/// <summary>Writes a finding for a person: what it asks of them, when and what, then their own line, then where it comes from.</summary>
internal static class FindingPrinter
{
    private const int WidestQuoted = 120;
    private const int Indent = 2;
    private const int Deeper = 4;

    public static void Print(TextWriter output, NoteAnalysis analysis, NoteFinding finding)
    {
        string label = Wording.ForOwner(finding.Level);
        string day = analysis.Note.EntryAt(finding.Line)?.Head.Date is { } date ? $", {Wording.Day(date, analysis.Today)}" : "";
        string[] sentence = [.. Terminal.Wrap($"{label}{day}: {finding.Message}", Indent)];
        output.WriteLine($"  {Terminal.InColour(label, finding.Level)}{sentence[0][label.Length..]}");
        foreach (string more in sentence.Skip(1))
        {
            output.WriteLine("  " + more);
        }

        output.WriteLine(new string(' ', Deeper) + Quoted(analysis, finding));
        foreach (int other in finding.Evidence.Where(other => other != finding.Line).TakeLast(3))
        {
            Quiet(output, $"see line {other + 1}: \"{TextOf(analysis, other).Trim()}\"");
        }

        if (finding.Corrected is { } corrected)
        {
            output.WriteLine($"{new string(' ', Deeper)}write: {Terminal.Strong(corrected.Trim())}");
        }

        if (finding.Source != RuleBook.NoteFormat)
        {
            Quiet(output, "source: " + finding.Source);
        }

        Quiet(output, "about: " + finding.Rule);
        output.WriteLine();
    }

    private static void Quiet(TextWriter output, string text)
    {
        foreach (string part in Terminal.Wrap(text, Deeper))
        {
            output.WriteLine(new string(' ', Deeper) + Terminal.Faint(part));
        }
    }

    /// <summary>
    /// The line as written, with the words in question in colour. Without colour, brackets show them where a line was not
    /// understood; elsewhere the sentence names them.
    /// </summary>
    private static string Quoted(NoteAnalysis analysis, NoteFinding finding)
    {
        bool error = finding.Level == FindingLevel.Error;
        (string before, string marked, string after) = Cut(TextOf(analysis, finding.Line), finding.Span.Start, finding.Span.End);
        bool whole = before.Length == 0 && after.Length == 0;
        string shown = Terminal.HasColour ? Terminal.InColour(marked, finding.Level) : error && !whole ? $"[{marked}]" : marked;
        return $"line {finding.Line + 1}{(error ? $", column {finding.Span.Start + 1}" : "")}: \"{before}{shown}{after}\"";
    }

    /// <summary>A line without the blanks around it, in three parts; a long one only around the words in question.</summary>
    private static (string Before, string Marked, string After) Cut(string text, int start, int end)
    {
        int from = Math.Min(text.Length - text.AsSpan().TrimStart().Length, start);
        int to = Math.Max(text.AsSpan().TrimEnd().Length, end);
        if (to - from > WidestQuoted)
        {
            from = Math.Max(from, start - (WidestQuoted / 3));
            to = Math.Min(to, from + WidestQuoted);
            end = Math.Min(end, to);
        }

        string before = text[from..start];
        string after = text[end..to];
        bool cutBefore = text.AsSpan(0, from).Trim().Length > 0;
        bool cutAfter = text.AsSpan(to).Trim().Length > 0;
        return ((cutBefore ? "…" : "") + before, text[start..end], after + (cutAfter ? "…" : ""));
    }

    private static string TextOf(NoteAnalysis analysis, int line) => analysis.Note.Syntax.Lines[line].Text;
}
