using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Diagnostics;

namespace HealthNotes.Cli.Output;

/// <summary>Writes the outcome of a check for a person: what could not be read, then what is worrying now, then a summary.</summary>
internal static class CheckPrinter
{
    public static void Print(TextWriter output, string path, NoteAnalysis analysis, bool all)
    {
        output.WriteLine(Terminal.Strong(FindingPrinter.Clean(path)) + (analysis.Pet.Name is { } name ? $"  ({FindingPrinter.Clean(name)})" : ""));
        output.WriteLine();
        var shown = ShownFindings.Of(analysis, past: all);
        List<NoteFinding> errors = [.. shown.Findings.Where(f => f.Level == FindingLevel.Error)];
        List<NoteFinding> others = [.. shown.Findings.Where(f => f.Level != FindingLevel.Error)];
        foreach (NoteFinding finding in errors.Concat(others.OrderByDescending(f => f.Level).ThenBy(f => f.Line)))
        {
            FindingPrinter.Print(output, analysis, finding);
        }

        output.WriteLine("  " + Summary(errors.Count, others));
        if (shown.Left > 0)
        {
            output.WriteLine($"  {shown.Left} {(shown.Left == 1 ? "finding" : "findings")} in older entries; --all shows them.");
        }

        output.WriteLine("  hnote compares and describes; it makes no diagnosis. A veterinarian decides.");
        output.WriteLine();
    }

    private static string Summary(int errors, List<NoteFinding> findings)
    {
        string[] parts =
        [
            Count(errors, "could not be read"),
            Count(findings.Count(f => f.Level == FindingLevel.Urgent), "urgent"),
            Count(findings.Count(f => f.Level == FindingLevel.Call), "to call the vet about"),
            Count(findings.Count(f => f.Level == FindingLevel.Watch), "to watch"),
            Count(findings.Count(f => f.Level == FindingLevel.Info), "to know"),
        ];
        string counted = string.Join(", ", parts.Where(part => part.Length > 0));
        return counted.Length > 0 ? counted + "." : "Every line was understood, and nothing that was written is past a line. That is no all-clear for what was not looked at.";
    }

    private static string Count(int number, string what) => number == 0 ? "" : $"{number} {what}";
}
