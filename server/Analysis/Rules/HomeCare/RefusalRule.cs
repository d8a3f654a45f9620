using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Analysis.Rules;

/// <summary>Meals left (<c>not-eating</c>) or water refused (<c>not-drinking</c>) for longer than a line. One instance each.</summary>
public sealed class RefusalRule : ICourseRule
{
    private static readonly string[] Words = ["refused", "sniffed", "none"];

    /// <summary>What was taken and isn't a meal.</summary>
    private static readonly string[] NoMeal = ["grass", "stolen", "dung", "non-food", "poison"];
    private readonly string word;
    private readonly string what;

    private RefusalRule(string name, string word, string what)
    {
        Kind = new(name, "seen", 12);
        this.word = word;
        this.what = what;
    }

    /// <inheritdoc/>
    public RuleKind Kind { get; }

    /// <summary>The rules for food and water.</summary>
    public static IEnumerable<IRule> ForEach() =>
    [
        new RefusalRule("not-eating", "ate", "eaten"),
        new RefusalRule("not-drinking", "water", "drunk"),
    ];

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word == word;

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        decimal gap = CareLimits.One("refusal-gap", at)?.Value ?? 0;
        foreach (Refusal refusal in Refusal.In(course.Recent, gap, IsRefused))
        {
            Noted last = refusal.Lines[^1];
            CareLimit? crossed = CareLimits.For(Kind.Name, at, last.Day).LastOrDefault(limit => refusal.Hours >= limit.Value);
            if (crossed is null)
            {
                continue;
            }

            Noted? vomiting = word == "ate" && crossed.Level == FindingLevel.Watch
                ? at.Of(new CourseKey("vomit", "")).Lines.LastOrDefault(line => line.Moment >= refusal.Since.Moment && line.Moment <= last.Moment && CareWords.Counts(line))
                : null;
            FindingLevel level = vomiting is null ? crossed.Level : FindingLevel.Call;
            level = refusal.Over && level > FindingLevel.Watch ? FindingLevel.Watch : level;
            string since = refusal.Since == refusal.Lines[0] ? "first refused" : "last taken";
            string with = vomiting is null ? "" : " It vomited as well.";
            string over = refusal.Over ? " It has taken some since." : "";
            yield return this.At(level, last.Line, last.Item!.Head.Span,
                $"Nothing {what} for about {Wording.Round(refusal.Hours, 0)} hours ({since} {refusal.Since.Day:yyyy-MM-dd}{(refusal.Since.Time is { } time ? time.ToString(" HH:mm", null) : "")}): {Wording.Round(crossed.Value, 0)} or more.{with}{over}",
                crossed.Source, Runs.Evidence(refusal.Lines).Append(refusal.SinceLine).Concat(vomiting is null ? [] : [vomiting.Line]));
        }
    }

    /// <summary>Null where a line tells nothing of how much.</summary>
    internal static bool? IsRefused(CareEvent care) => care.Quantity switch
    {
        null when care.Words.Any(word => NoMeal.Contains(word.Word.Word)) => null,
        Portion { Bound: Bound.Below } => null,
        Portion portion => portion.Part == 0,
        Measure measure => measure.Amounts.All(amount => amount.Number == 0),
        _ when care.Words.Any(word => Words.Contains(word.Word.Word)) => true,
        _ when care.Words.Length > 0 || care.Ok => false,
        _ => null,
    };
}
