using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Items;

namespace HealthNotes.Cli.Output;

/// <summary>Writes the outcome of a check for a person: the findings of a note, then a summary.</summary>
internal static class CheckPrinter
{
    public static void Print(TextWriter output, string path, NoteAnalysis analysis, PlainFindings shown)
    {
        output.WriteLine(Terminal.Strong(path) + (analysis.Pet.Name is { } name ? $" ({name})" : ""));
        output.WriteLine();
        foreach (NoteFinding finding in shown.Findings)
        {
            FindingPrinter.Print(output, analysis, finding);
        }

        foreach (string sentence in Summary(analysis, shown))
        {
            output.WriteLine("  " + sentence);
        }

        output.WriteLine();
    }

    private static IEnumerable<string> Summary(NoteAnalysis analysis, PlainFindings shown)
    {
        int Of(FindingLevel level) => shown.Findings.Count(finding => finding.Level == level);
        (int Count, string Name)[] levels =
        [
            .. new[] { (Of(FindingLevel.Urgent), "to phone about now"), (Of(FindingLevel.Call), "to phone the clinic about"), (Of(FindingLevel.Watch), "to keep an eye on") }
                .Where(level => level.Item1 > 0),
        ];
        int problems = levels.Sum(level => level.Count);
        int unread = Of(FindingLevel.Error);
        int info = Of(FindingLevel.Info);
        int remarks = unread > 0 ? 0 : analysis.Note.Syntax.Lines.Count(line => line.Items.Any(item => item is not (AcceptFact or Photo or Skipped) && item.Note is not null));
        if (unread > 0)
        {
            yield return $"{Number(unread, "line was", "lines were")} not understood.";
        }
        else if (analysis.Note.Problems.Any())
        {
            yield return "Lines that were not understood are in the baseline.";
        }
        else if (shown.Findings.Any(finding => finding.Rule == DangerWordsRule.RuleName))
        {
            yield return "Every line was read, but not every word: see the findings above.";
        }
        else
        {
            yield return remarks == 0 ? "Every line was understood." : $"Every line was read. {Number(remarks, "line has", "lines have")} words that are kept as a remark; `hnote read` shows them.";
        }

        if (problems > 0)
        {
            yield return levels is [(_, var only)]
                ? $"{Number(problems, "problem", "problems")} {only}."
                : $"{problems} problems: {string.Join(", ", levels.Select(level => $"{level.Count} {level.Name}"))}.";
        }
        else if (unread == 0 && !analysis.Note.IsRules && shown is { Older: 0, Hidden: 0 })
        {
            yield return "No recorded value is out of range. This does not mean that your pet is healthy.";
        }

        if (info > 0)
        {
            yield return $"{info} for information.";
        }

        if (shown.Hidden > 0)
        {
            yield return $"{Number(shown.Hidden, "finding", "findings")} below the level or in the baseline left out.";
        }

        if (shown.Older > 0)
        {
            yield return $"{Number(shown.Older, "finding", "findings")} ended or in older entries; --all shows them.";
        }
    }

    private static string Number(int number, string one, string many) => $"{number} {(number == 1 ? one : many)}";
}
