using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>
/// Which fixes go with which rule. What is not here has none: a finding about the pet is never fixed by an edit, and
/// <c>usual</c> or <c>known</c>, which would quiet it, are for the vet to say.
/// </summary>
internal static class FixBook
{
    /// <summary>The ways to mend a finding within its line.</summary>
    public static IEnumerable<LineFix> InLine(LineAt at, NoteFinding finding) => finding.Rule switch
    {
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
        "entry-date" => EntryDateFix.Of(at, finding),
        "not-plausible" or "hr-range" or "rr-range" or "usual-range" or "call-if" => CountTimeFix.Of(at, finding),
        _ => [],
    };

    /// <summary>The ways to mend a finding that change other lines too.</summary>
    public static IEnumerable<ActionOffer> InNote(LineAt at, NoteFinding finding) => finding.Rule switch
    {
        ProblemRules.Misplaced => [.. MisplacedFact.Of(at.Document, finding), .. MisplacedObservation.Of(at.Document, finding)],
        ProblemRules.SaidTwice => FactSaidTwice.Of(at.Document, finding),
        ProblemRules.UnknownWord => RemarkBelow.Of(at, finding),
        "facts-missing" => SpeciesFix.Of(at.Document, finding),
        _ => [],
    };
}
