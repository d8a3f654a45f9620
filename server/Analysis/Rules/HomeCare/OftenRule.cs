using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Analysis.Rules;

/// <summary>Vomiting (<c>vomit-often</c>) or loose stools (<c>stool-often</c>) more often in 24 hours than a published line. One instance each.</summary>
public sealed class OftenRule : ICourseRule
{
    private const int HoursOfCounts = 12;
    private readonly string word;
    private readonly string what;

    private OftenRule(string word, string what)
    {
        this.word = word;
        this.what = what;
    }

    /// <inheritdoc/>
    public RuleKind Kind => new(word + "-often", "seen", 13);

    /// <summary>The rules for vomiting and for stools.</summary>
    public static IEnumerable<IRule> ForEach() => [new OftenRule("vomit", "Vomiting"), new OftenRule("stool", "Loose stools")];

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word == word;

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        List<Noted> lines = [.. course.Recent.ToArray().Where(CareWords.Counts)];
        int first = 0;
        int times = 0;
        Noted? told = null;
        NoteFinding? finding = null;
        for (int index = 0; index < lines.Count; index++)
        {
            Noted line = lines[index];
            times += CareWords.Times(line);
            while (!WithinADay(lines[first], line))
            {
                times -= CareWords.Times(lines[first++]);
            }

            if (CareLimits.For(Kind.Name, at, line.Day) is not [var limit, ..] || times <= limit.Value)
            {
                continue;
            }

            // what goes on is reported once, at its newest line
            if (told is not null && !WithinADay(told, line))
            {
                yield return finding!;
            }

            told = line;
            finding = this.At(limit.Level, line.Line, line.Item!.Head.Span,
                $"{what} {times} times in 24 hours: more than {Wording.Round(limit.Value, 0)}.",
                limit.Source, Runs.Evidence(lines[first..(index + 1)]));
        }

        if (finding is not null)
        {
            yield return finding;
        }
    }

    /// <summary>
    /// By the clock where both have a time, else by the day. <c>2x</c> at breakfast tells of the hours before it as well, so that
    /// two mornings are not one day.
    /// </summary>
    private static bool WithinADay(Noted first, Noted second) =>
        first.Day == second.Day || DoseSeries.HoursBetween(first, second) <= (CareWords.Times(first) > 1 || CareWords.Times(second) > 1 ? HoursOfCounts : 24);
}
