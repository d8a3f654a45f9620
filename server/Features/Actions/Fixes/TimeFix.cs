using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>A time of day written another way: <c>7.30</c>, <c>7h30</c>, <c>13:30pm</c>. A time that does not exist is left to the writer.</summary>
internal static class TimeFix
{
    public static IEnumerable<LineFix> Of(LineAt at, NoteFinding finding)
    {
        string written = finding.Span.In(at.Text).ToString();
        return Read(written) is { } time
            ? at.Better(finding, [new LineFix("time-form", $"Write `{time}`", finding.Span, time, Preferred: true, Certain: finding.Rule == ProblemRules.BadTime)])
            : [];
    }

    private static string? Read(string written)
    {
        List<TextSpan> numbers = Numbers.In(written.Replace('.', ':').Replace('h', ':'), new TextSpan(0, written.Length));
        if (numbers.Count != 2 || numbers[0].Start != 0 || numbers[1].Start != numbers[0].End + 1 || numbers[1].Length != 2 || numbers[0].Length > 2)
        {
            return null;
        }

        int hour = int.Parse(numbers[0].In(written));
        int minute = int.Parse(numbers[1].In(written));
        string half = written[numbers[1].End..].ToLowerInvariant();
        bool afternoon = half == "pm" && hour is >= 1 and < 12;
        bool known = half.Length == 0 || afternoon || (half == "pm" && hour is >= 12 and <= 23) || (half == "am" && hour is >= 1 and < 12);
        return known && hour <= 23 && minute <= 59 ? $"{(afternoon ? hour + 12 : hour):00}:{minute:00}" : null;
    }
}
