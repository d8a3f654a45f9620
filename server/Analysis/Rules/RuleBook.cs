using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Rules;

/// <summary>All rules, and how their findings come together.</summary>
public static class RuleBook
{
    /// <summary>What is said of a problem that reading found: it rests on the note format alone.</summary>
    public const string NoteFormat = "the note format (LANGUAGE.md)";

    /// <summary>Every rule; where two are equally strong in one line, the earlier one speaks.</summary>
    public static IReadOnlyList<IRule> All { get; } =
    [
        new NotPlausibleRule(),
        new CallIfRule(),
        new UsualRangeRule(),
        .. NormalRangeRule.ForEachVital(),
        new MammaryLumpRule(),
        new LumpRule(),
        new SeizureRule(),
        new GumColourRule(),
        new SignRule(),
        new HumanPainkillerRule(),
        new FactsMissingRule(),
        new EntryDateRule(),
    ];

    /// <summary>Everything there is to say about a note, in line order.</summary>
    public static ImmutableArray<NoteFinding> FindAll(RuleContext context)
    {
        var strongest = new Dictionary<(string Topic, int Line), NoteFinding>();
        foreach (IRule rule in All)
        {
            foreach (NoteFinding finding in rule.Find(context))
            {
                (string, int) place = (rule.Topic, finding.Line);
                if (!strongest.TryGetValue(place, out NoteFinding? other) || finding.Level > other.Level)
                {
                    strongest[place] = finding;
                }
            }
        }

        return [.. strongest.Values.Concat(context.Note.Problems.Select(OfProblem))
            .OrderBy(f => f.Line).ThenBy(f => f.Span.Start).ThenByDescending(f => f.Level).ThenBy(f => f.Rule, StringComparer.Ordinal)];
    }

    private static NoteFinding OfProblem(PlacedProblem placed) =>
        new(placed.Problem.Rule, FindingLevel.Error, placed.Line, placed.Problem.Span, placed.Problem.Message, NoteFormat, [placed.Line])
        {
            Nearest = placed.Problem.Nearest,
        };
}
