using System.Collections.Frozen;
using System.Collections.Immutable;
using HealthNotes.Analysis.Courses;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;

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
        new OwnUsualRule(),
        .. NormalRangeRule.ForEachVital(),
        new WeightLossRule(),
        new WeightGrowthRule(),
        new WeightPlanRule(),
        new WeightGainRule(),
        .. TrendRule.ForEach(),
        new IdealWeightRule(),
        new LumpChangeRule(),
        new LumpGrowthRule(),
        new MammaryLumpRule(),
        new LumpSampleRule(),
        new LumpSidesRule(),
        new LumpRule(),
        new LumpNotSeenRule(),
        new LumpTargetRule(),
        new WoundLargerRule(),
        new NodeSizeRule(),
        new SidesRule(),
        new SeizureRule(),
        new TogetherRule(),
        .. RefusalRule.ForEach(),
        .. OftenRule.ForEach(),
        new DaysInARowRule(),
        new GumColourRule(),
        new SignRule(),
        new HumanPainkillerRule(),
        new AllergyRule(),
        new DangerWordsRule(),
        new DoseDoubledRule(),
        new DoseAfterEndRule(),
        new DoseAmountRule(),
        new DoseUnplannedRule(),
        new DoseMissedRule(),
        new DoseWithFoodRule(),
        new DoseLateRule(),
        new DoseDriftRule(),
        new CourseEndRule(),
        new WaterRangeRule(),
        new FactsMissingRule(),
        new EntryDateRule(),
        new AcceptRule(),
        .. OverdueRule.ForEach(),
        new TaskOverdueRule(),
        new NotLookedAtRule(),
    ];

    private static readonly ImmutableArray<IEntryRule> EntryRules = [.. All.OfType<IEntryRule>()];
    private static readonly ImmutableArray<IOpeningRule> OpeningRules = [.. All.OfType<IOpeningRule>()];
    private static readonly ImmutableArray<ICourseRule> CourseRules = [.. All.OfType<ICourseRule>()];

    /// <summary>The topic of each rule, and its place in the book.</summary>
    private static readonly FrozenDictionary<string, (string Topic, int Place)> Topics =
        All.Select((rule, place) => (rule, place)).ToFrozenDictionary(rule => rule.rule.Name, rule => (rule.rule.Topic, rule.place));

    /// <summary>The names of the rules whose findings an <c>accept</c> line may quiet.</summary>
    public static IEnumerable<string> Acceptable => All.Select(rule => rule.Name).Where(name => name is not ("not-plausible" or "accept" or "facts-missing" or CallIfRule.RuleName));

    /// <summary>True for a rule that may be accepted.</summary>
    public static bool IsKnown(string rule) => Topics.ContainsKey(rule) && Acceptable.Contains(rule);

    /// <summary>Everything there is to say about an entry, in line order.</summary>
    public static ImmutableArray<NoteFinding> FindIn(EntryContext at)
    {
        List<(string Topic, NoteFinding Finding)>? strongest = null;
        foreach (IEntryRule rule in EntryRules)
        {
            foreach (NoteFinding found in rule.Find(at))
            {
                NoteFinding finding = Accepted.Apply(at.Note, found, at.Entry.Head.Date, Observations.At(Observations.In(at.Entry, found.Line), found.Span));
                strongest ??= [];
                int other = strongest.FindIndex(kept => kept.Topic == rule.Topic && AreOfOne(at.Lines, kept.Finding, finding));
                if (other < 0)
                {
                    strongest.Add((rule.Topic, finding));
                }
                else if (finding.Level > strongest[other].Finding.Level)
                {
                    strongest[other] = (rule.Topic, finding);
                }
            }
        }

        return strongest is null && at.Entry.Problems.Length == 0 ? []
            : InOrder((strongest ?? []).Select(kept => kept.Finding).Concat(at.Entry.Problems.Select(OfProblem)));
    }

    /// <summary>True when some rule looks at such a course.</summary>
    public static bool Wants(CourseKey key) => CourseRules.Any(rule => rule.Wants(key));

    /// <summary>Everything there is to say about a course, in no order.</summary>
    public static ImmutableArray<NoteFinding> FindIn(Course course, CourseContext at) =>
        [.. CourseRules.Where(rule => rule.Wants(course.Key)).SelectMany(rule => rule.Find(course, at)).Select(finding => Accept(finding, course, at))];

    /// <summary>What is said at the last line of a course, or at none of its lines, is how things stand today.</summary>
    private static NoteFinding Accept(NoteFinding finding, Course course, CourseContext at)
    {
        for (int index = course.Lines.Length - 1; index >= 0; index--)
        {
            if (course.Lines[index] is { } noted && noted.Line == finding.Line)
            {
                return Accepted.Apply(at.Note, finding, index == course.Lines.Length - 1 ? null : noted.Day, noted.Item);
            }
        }

        return Accepted.Apply(at.Note, finding, null, null);
    }

    /// <summary>Two lots of findings together, in line order: of those with one topic about one observation the strongest is kept.</summary>
    public static ImmutableArray<NoteFinding> Strongest(ImmutableArray<NoteFinding> some, IEnumerable<NoteFinding> others, NoteSyntax syntax)
    {
        var kept = new List<NoteFinding>(some);
        foreach (NoteFinding finding in others.OrderBy(f => f.Line).ThenBy(f => Topics[f.Rule].Place).ThenBy(f => f.Message, StringComparer.Ordinal))
        {
            (string topic, int place) = Topics[finding.Rule];
            int other = kept.FindIndex(had => AreOfOne(syntax.Lines, had, finding) && Topics.TryGetValue(had.Rule, out (string Topic, int Place) of) && of.Topic == topic);
            if (other < 0)
            {
                kept.Add(finding);
            }
            else if (finding.Level > kept[other].Level || (finding.Level == kept[other].Level && place < Topics[kept[other].Rule].Place))
            {
                kept[other] = finding;
            }
        }

        return InOrder(kept);
    }

    /// <summary>Everything there is to say about the opening, in line order.</summary>
    public static ImmutableArray<NoteFinding> FindInOpening(Note note, RuleContext context) =>
        InOrder(OpeningRules.SelectMany(rule => rule.Find(note, context)).Select(finding => Accepted.Apply(context, finding, null, null)).Concat(note.Opening.Problems.Select(OfProblem)));

    internal static ImmutableArray<NoteFinding> InOrder(IEnumerable<NoteFinding> findings) =>
        [.. findings.OrderBy(f => f.Line).ThenBy(f => f.Span.Start).ThenByDescending(f => f.Level).ThenBy(f => f.Rule, StringComparer.Ordinal)];

    private static bool AreOfOne(ImmutableArray<LineSyntax> lines, NoteFinding one, NoteFinding other) =>
        one.Line == other.Line
        && (lines[one.Line].Items.Length < 2 || ReferenceEquals(Observations.At(lines[one.Line].Items, one.Span), Observations.At(lines[one.Line].Items, other.Span)));

    private static NoteFinding OfProblem(PlacedProblem placed) =>
        new(placed.Problem.Rule, FindingLevel.Error, placed.Line, placed.Problem.Span, placed.Problem.Message, NoteFormat, [placed.Line])
        {
            Nearest = placed.Problem.Nearest,
            Corrected = placed.Problem.Corrected,
        };
}
