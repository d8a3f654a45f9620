using HealthNotes.Analysis.Courses;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Rules;

/// <summary>A swollen or hard belly and retching within half a day of each other: together they cannot wait.</summary>
public sealed class BellyAndRetchingRule : ICourseRule
{
    private static readonly string[] Belly = ["swollen", "drum-tight", "hard", "tense", "painful"];
    private static readonly string[] Vomit = ["retching"];

    /// <inheritdoc/>
    public string Name => "belly-and-retching";

    /// <inheritdoc/>
    public string Topic => "seen";

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word == "belly";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, CourseContext at)
    {
        if (CareLimits.One(Name, at) is not { } limit)
        {
            yield break;
        }

        foreach (Noted belly in course.Recent.ToArray())
        {
            if (belly.Item is not Examined { Words: var words } || WordIn(words, Belly) is not { } seen)
            {
                continue;
            }

            Noted? retching = at.Of(new CourseKey("vomit", "")).Between(belly.Day.AddDays(-1), belly.Day.AddDays(1)).ToArray().LastOrDefault(line =>
                line.Item is CareEvent care && WordIn(care.Words, Vomit) is not null && AreTogether(belly, line, limit.Value));
            if (retching is not null)
            {
                yield return RuleContext.At(Name, limit.Level, belly.Line, seen.Span,
                    $"Belly `{seen.Word.Word}`, and retching (line {retching.Line + 1}) within the same half day. {Wording.Advice(limit.Level)}",
                    limit.Source, retching.Line);
            }
        }
    }

    private static Described? WordIn(IEnumerable<Described> words, string[] wanted) => words.FirstOrDefault(word => wanted.Contains(word.Word.Word));

    private static bool AreTogether(Noted one, Noted other, decimal hours) => one.Time is null || other.Time is null
        ? one.Day == other.Day
        : Math.Abs((decimal)(one.Moment - other.Moment).TotalHours) <= hours;
}
