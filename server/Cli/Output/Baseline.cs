using System.Security.Cryptography;
using System.Text;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Files;

namespace HealthNotes.Cli.Output;

/// <summary>
/// Findings that were there when a baseline was written: a check with it reports only what is new. A finding is known by its
/// file, rule, level, day and the text of its line, not by the line's number, so that it stays known when lines are added above.
/// What is urgent is never in it.
/// </summary>
/// <param name="file">The file; paths in it are relative to its folder.</param>
/// <param name="counts">How many findings of each print it holds.</param>
internal sealed class Baseline(string file, IReadOnlyDictionary<string, int> counts)
{
    private const string Head = "# Findings that hnote check leaves out (made by hnote). Write it anew with --write-baseline.";
    private const int Digits = 16;

    /// <summary>Reads one.</summary>
    /// <exception cref="RefusedException">It is something else.</exception>
    public static Baseline Of(string file, string text)
    {
        string[] lines = text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return lines is [Head, .. var prints]
            ? new Baseline(file, prints.CountBy(line => line).ToDictionary())
            : throw new RefusedException($"{file} is not a baseline; hnote check --write-baseline FILE makes one");
    }

    /// <summary>One to be filled.</summary>
    public static Baseline New(string file) => new(file, new Dictionary<string, int>());

    /// <summary>The findings that it does not hold, in their order.</summary>
    public IEnumerable<NoteFinding> New(string path, NoteAnalysis analysis, IEnumerable<NoteFinding> findings)
    {
        Dictionary<string, int> met = [];
        foreach (NoteFinding finding in findings)
        {
            string line = LineOf(path, analysis, finding);
            met[line] = met.GetValueOrDefault(line) + 1;
            if (finding.Level == FindingLevel.Urgent || met[line] > counts.GetValueOrDefault(line))
            {
                yield return finding;
            }
        }
    }

    /// <summary>The lines of a baseline for the findings of a note.</summary>
    public IEnumerable<string> Lines(string path, NoteAnalysis analysis, IEnumerable<NoteFinding> findings) =>
        findings.Where(finding => finding.Level != FindingLevel.Urgent).Select(finding => LineOf(path, analysis, finding));

    /// <summary>The text of a baseline with these lines.</summary>
    public static string Text(IEnumerable<string> lines) => string.Join('\n', lines.Prepend(Head)) + "\n";

    /// <summary>What stays of a finding when lines are added above it.</summary>
    public static string PrintOf(NoteAnalysis analysis, NoteFinding finding) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join(
        '\n', finding.Rule, finding.Level, $"{analysis.Note.EntryAt(finding.Line)?.Head.Date:yyyy-MM-dd}", analysis.Note.Syntax.Lines[finding.Line].Text.Trim()))))[..Digits];

    private string LineOf(string path, NoteAnalysis analysis, NoteFinding finding) =>
        $"{PrintOf(analysis, finding)} {finding.Rule} {Path.GetRelativePath(Path.GetDirectoryName(Path.GetFullPath(file))!, Path.GetFullPath(path)).Replace('\\', '/')}";
}
