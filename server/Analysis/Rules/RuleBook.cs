using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Record;
using HealthNotes.Record.Courses;

namespace HealthNotes.Analysis.Rules;

/// <summary>All rules, and how their findings come together.</summary>
public static class RuleBook
{
    /// <summary>The source of a problem that reading found: it rests on the note format alone.</summary>
    public const string NoteFormat = "the note format (LANGUAGE.md)";

    /// <summary>Every rule.</summary>
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
        new MedicineRangeRule(),
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

    /// <summary>The names of the rules whose findings an <c>accept</c> line may quiet.</summary>
    public static IEnumerable<string> Acceptable => All.Select(rule => rule.Name).Where(name => name is not ("not-plausible" or "accept" or "facts-missing" or CallIfRule.RuleName));

    /// <summary>True for a rule that may be accepted.</summary>
    public static bool IsKnown(string rule) => Acceptable.Contains(rule);

    /// <summary>Everything there is to say about an entry, in line order.</summary>
    public static ImmutableArray<NoteFinding> FindIn(PetRecord at, PetEntry entry)
    {
        List<NoteFinding>? found = null;
        foreach (IEntryRule rule in EntryRules)
        {
            foreach (NoteFinding finding in rule.Find(at, entry))
            {
                (found ??= []).Add(Accepted.Apply(at.Facts, finding, entry.Day, Observations.At(Observations.In(entry.Entry, finding.Line), finding.Span)));
            }
        }

        ImmutableArray<NoteFinding> problems = entry.Entry.Problems.IsEmpty ? [] : [.. entry.Entry.Problems.Select(OfProblem)];
        return found is null && problems.IsEmpty ? [] : Strongest(problems, found ?? [], at.Note.Syntax);
    }

    /// <summary>True when some rule looks at such a course.</summary>
    public static bool Wants(CourseKey key) => ForCourse(key).Any();

    /// <summary>The rules that look at such a course.</summary>
    public static IEnumerable<ICourseRule> ForCourse(CourseKey key) => CourseRules.Where(rule => rule.Wants(key));

    /// <summary>Everything that a rule has to say about a course, in no order.</summary>
    public static ImmutableArray<NoteFinding> FindIn(PetRecord at, Course course, ICourseRule rule) => [.. rule.Find(course, at).Select(finding => Accept(finding, course, at))];

    /// <summary>What is reported at the last line of a course, or at none of its lines, is how things stand today.</summary>
    private static NoteFinding Accept(NoteFinding finding, Course course, PetRecord at)
    {
        for (int index = course.Lines.Length - 1; index >= 0; index--)
        {
            if (course.Lines[index] is { } noted && noted.Line == finding.Line)
            {
                return Accepted.Apply(at.Facts, finding, index == course.Lines.Length - 1 ? null : noted.Day, noted.Item);
            }
        }

        return Accepted.Apply(at.Facts, finding, null, null);
    }

    /// <summary>Two lots of findings together, in line order: of those with one topic about one observation the strongest is kept.</summary>
    public static ImmutableArray<NoteFinding> Strongest(ImmutableArray<NoteFinding> some, IEnumerable<NoteFinding> others, NoteSyntax syntax)
    {
        var kept = new List<NoteFinding>(some);
        var places = new Dictionary<(int Line, string Topic), List<int>>();
        for (int index = 0; index < kept.Count; index++)
        {
            Places(kept[index]).Add(index);
        }

        foreach (NoteFinding finding in others.OrderBy(f => f.Line).ThenBy(f => f.Priority).ThenBy(f => f.Message, StringComparer.Ordinal))
        {
            List<int> same = Places(finding);
            int other = same.FindIndex(index => AreOfOne(syntax.Lines, kept[index], finding)) is var at and >= 0 ? same[at] : -1;
            if (other < 0)
            {
                same.Add(kept.Count);
                kept.Add(finding);
            }
            else if (finding.Level > kept[other].Level || (finding.Level == kept[other].Level && finding.Priority < kept[other].Priority))
            {
                kept[other] = finding;
            }
        }

        return InOrder(kept);

        List<int> Places(NoteFinding finding)
        {
            if (!places.TryGetValue((finding.Line, finding.Topic), out List<int>? indexes))
            {
                places.Add((finding.Line, finding.Topic), indexes = []);
            }

            return indexes;
        }
    }

    /// <summary>Everything there is to say about the opening, in line order.</summary>
    public static ImmutableArray<NoteFinding> FindInOpening(PetRecord at) =>
        InOrder(OpeningRules.SelectMany(rule => rule.Find(at)).Select(finding => Accepted.Apply(at.Facts, finding, null, null)).Concat(at.Note.OpeningProblems.Select(OfProblem)));

    /// <summary>What could not be read, in line order; it takes no analysis.</summary>
    public static IEnumerable<NoteFinding> Unread(Note note) => note.Problems.Select(OfProblem);

    internal static ImmutableArray<NoteFinding> InOrder(IEnumerable<NoteFinding> findings) =>
        [.. findings.OrderBy(f => f.Line).ThenBy(f => f.Span.Start).ThenByDescending(f => f.Level).ThenBy(f => f.Rule, StringComparer.Ordinal)];

    private static bool AreOfOne(ImmutableArray<LineSyntax> lines, NoteFinding one, NoteFinding other) =>
        lines[one.Line].Items.Length < 2 || ReferenceEquals(Observations.At(lines[one.Line].Items, one.Span), Observations.At(lines[one.Line].Items, other.Span));

    private static NoteFinding OfProblem(PlacedProblem placed) =>
        new(placed.Problem.Rule, FindingLevel.Error, placed.Line, placed.Problem.Span, placed.Problem.Message, NoteFormat, [placed.Line])
        {
            Nearest = placed.Problem.Nearest,
            Corrected = placed.Problem.Corrected,
        };
}
