using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Record;
using HealthNotes.Record.Checks;
using HealthNotes.Record.Courses;

namespace HealthNotes.Analysis.Rules;

/// <summary>A part or measure of a full check that none of the last few checks has named: something to know.</summary>
public sealed class NotLookedAtRule : ICourseRule
{
    private const int MostNamed = 6;

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("not-looked-at", "check", 1);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key == CourseKey.WholeChecks;

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        if (CareLimits.One(Kind.Name, at) is not { } limit || CareLimits.One(Kind.Name + "-back", at) is not { } back)
        {
            yield break;
        }

        var coverage = new CheckCoverage(CheckItems.For(at.Facts.Pet));
        var days = new List<(DateOnly Day, int Line, CheckCoverage.Seen Seen)>();
        for (int index = course.Lines.Length - 1; index >= 0; index--)
        {
            Noted check = course.Lines[index];
            CheckCoverage.Seen seen = coverage.In(check.Entry!);
            if (days.Count > 0 && days[^1].Day == check.Day)
            {
                days[^1] = (check.Day, check.Line, days[^1].Seen | seen);
            }
            else if (days.Count == limit.Value || course.Last!.Day.DayNumber - check.Day.DayNumber > back.Value)
            {
                break;
            }
            else
            {
                days.Add((check.Day, check.Line, seen));
            }
        }

        if (days.Count < limit.Value)
        {
            yield break;
        }

        ulong missing = days.Aggregate(ulong.MaxValue, (left, day) => left & coverage.Tell(day.Seen).Missing);
        string[] words = [.. coverage.Named(missing).Select(item => item.Word.Word)];
        if (words.Length > 0)
        {
            string more = words.Length > MostNamed ? $" and {words.Length - MostNamed} more" : "";
            yield return this.At(FindingLevel.Info, course.Last!.Line, course.Last.Head.DateSpan,
                $"Not named in any of the last {days.Count} checks: {string.Join(", ", words.Take(MostNamed))}{more}. `skip` says that something was left out, and why.",
                limit.Source, days.Select(day => day.Line).ToImmutableArray());
        }
    }
}
