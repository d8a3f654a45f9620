using System.Text.RegularExpressions;
using HealthNotes.Analysis.Findings;

namespace HealthNotes.Tests.Analysis.Cases;

/// <summary>
/// One finding, as a case writes it: <c>rr-range|own-usual watch+ on 2026-11-20 why</c>. Any of the rules will do; the level
/// is one (<c>call</c>), one or stronger (<c>watch+</c>), or from one to another (<c>info..watch</c>); the date is optional.
/// </summary>
internal sealed partial record CaseExpectation(
    string Text,
    IReadOnlyList<string> Rules,
    FindingLevel Lowest,
    FindingLevel Highest,
    DateOnly? On)
{
    public static CaseExpectation Parse(string text)
    {
        Match match = Shape().Match(text);
        if (!match.Success)
        {
            throw new FormatException(text);
        }

        FindingLevel lowest = Level("low");
        FindingLevel highest = match.Groups["plus"].Success ? FindingLevel.Urgent : match.Groups["high"].Success ? Level("high") : lowest;
        DateOnly? on = match.Groups["on"].Success ? CaseNote.Date(match.Groups["on"].Value) : null;
        return new CaseExpectation(text, match.Groups["rules"].Value.Split('|'), lowest, highest, on);

        FindingLevel Level(string group) => Enum.Parse<FindingLevel>(match.Groups[group].Value, ignoreCase: true);
    }

    public bool IsMetBy(NoteFinding finding, DateOnly? date) =>
        Rules.Contains(finding.Rule) && finding.Level >= Lowest && finding.Level <= Highest && (On is null || On == date);

    [GeneratedRegex(@"^(?<rules>[a-z|-]+) (?<low>info|watch|call|urgent|error)((?<plus>\+)|\.\.(?<high>watch|call|urgent))?( on (?<on>[0-9-]{10}))? \S.*$", RegexOptions.ExplicitCapture)]
    private static partial Regex Shape();
}
