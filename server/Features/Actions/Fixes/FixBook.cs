using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>
/// Which fixes go with which rule. What is not here has none: a finding about the pet is never fixed by an edit, and
/// <c>usual</c> or <c>known</c>, which would quiet it, are for the vet to say.
/// </summary>
internal static class FixBook
{
    private const string EntryDate = "entry-date";
    private const string FactsMissing = "facts-missing";
    private const string Accept = "accept";

    /// <summary>The rules about a rate that may be a count without its time.</summary>
    private static readonly string[] Rates = ["not-plausible", "hr-range", "rr-range", "usual-range", "call-if"];

    /// <summary>True for a rule that some fix goes with.</summary>
    public static bool Has(string rule) => ProblemRules.All.Contains(rule) || rule is EntryDate or FactsMissing or Accept || Rates.Contains(rule);

    /// <summary>The ways to fix a finding within its line.</summary>
    public static IEnumerable<LineFix> InLine(LineAt at, NoteFinding finding)
    {
        List<LineFix> fixes = [.. FixesOf(at, finding)];
        return finding.Rule is ProblemRules.Missing or ProblemRules.MissingUnit ? fixes : fixes.Concat(FreeTextFix.IfNothingElse(at, finding, fixes));
    }

    /// <summary>The ways to fix a finding that change other lines too.</summary>
    public static IEnumerable<ActionOffer> InNote(LineAt at, NoteFinding finding) => finding.Rule switch
    {
        ProblemRules.Misplaced => [.. MisplacedFact.Of(at.Document, finding), .. MisplacedObservation.Of(at.Document, finding)],
        ProblemRules.SaidTwice => FactSaidTwice.Of(at.Document, finding),
        ProblemRules.Conflict => ConflictFix.Of(at.Document, finding),
        FactsMissing => SpeciesFix.Of(at.Document, finding),
        _ => [],
    };

    private static IEnumerable<LineFix> FixesOf(LineAt at, NoteFinding finding) => finding.Rule switch
    {
        _ when finding.Corrected is not null => NearestWordFix.Of(at, finding),
        ProblemRules.UnknownWord => NearestWordFix.Of(at, finding),
        ProblemRules.UnknownLine => [.. NearestWordFix.Of(at, finding), .. TimeFix.Of(at, finding), .. FreeTextFix.Of(at, finding)],
        ProblemRules.LineTooLong => FreeTextFix.Of(at, finding),
        ProblemRules.MissingUnit => UnitFix.Of(at, finding),
        ProblemRules.WrongUnit => [.. NearestWordFix.Of(at, finding), .. UnitFix.Of(at, finding)],
        ProblemRules.WrongValue or ProblemRules.BadNumber or ProblemRules.Unreadable => NumberFix.Of(at, finding),
        ProblemRules.ImpossibleSite => SiteFix.Of(at, finding),
        ProblemRules.SaidTwice => SaidTwiceFix.Of(at, finding),
        ProblemRules.BadDate => DateFix.Of(at, finding),
        ProblemRules.BadTime => TimeFix.Of(at, finding),
        ProblemRules.Missing => MissingFix.Of(at, finding),
        ProblemRules.Misplaced => NearestWordFix.DoseOrPlan(at),
        Accept when finding.Nearest is { } nearest => [new LineFix("nearest-word", $"Write `{nearest}`", finding.Span, nearest, Preferred: true)],
        EntryDate => EntryDateFix.Of(at, finding),
        var rule when Rates.Contains(rule) => CountTimeFix.Of(at, finding),
        _ => [],
    };
}
