using HealthNotes.Analysis.Danger;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Analysis.Rules;

/// <summary>Signs that cannot wait when they come together: the rows of <c>phone-now.tsv</c> with more than one. Each place of the body by itself.</summary>
public sealed class TogetherRule : ICourseRule
{
    private static IEnumerable<PhoneNow> Rows => PhoneNow.All.Where(row => row.With.Length > 0);

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("together", "seen", 11);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => Rows.Any(row => row.Signs.Any(sign => sign.Part == key.Word));

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        foreach (PhoneNow row in Rows.Where(row => row.IsFor(at.Facts.Pet.Species, at.Facts.Pet.Male)))
        {
            int told = -1;
            foreach (Noted one in course.Recent.ToArray().Where(line => row.Signs.Any(sign => sign.Matches(line)) && row.IsForStage(at.Facts.Pet.StageOn(line.Day)?.Key)))
            {
                Noted?[] others = [.. row.With.Select(alternatives => Near(one, alternatives, row.Hours, at))];
                if (others.All(other => other is not null) && others.Append(one).MaxBy(line => (line!.Moment, line.Line))! is var last && last.Line != told)
                {
                    told = last.Line;
                    string said = string.Join(", ", others.Append(one).DistinctBy(line => line!.Line).OrderBy(line => line!.Moment).Select(line => $"{Wording.NameOf(line!.Item!.Word.Word).ToLowerInvariant()} (line {line.Line + 1})"));
                    yield return this.At(FindingLevel.Urgent, last.Line, last.Item!.Head.Span,
                        $"{row.What}, {(row.Hours <= 0 ? "together" : $"within {Wording.Round(row.Hours, 0)} hours")}: {said}.",
                        row.Source, others.Append(one).Select(line => line!.Line));
                }
            }
        }
    }

    /// <summary>The last line near in time that says one of them; of the same part, at the same place.</summary>
    private static Noted? Near(Noted one, SignPattern[] alternatives, decimal hours, PetRecord at) => alternatives
        .Select(sign => sign.Part).Distinct().SelectMany(part => at.All(part))
        .SelectMany(course => course.Between(one.Day.Plus(-(int)(hours / 24) - 1), one.Day.Plus((int)(hours / 24) + 1)).ToArray())
        .Where(line => AreTogether(one, line, hours) && (line.Item!.Word != one.Item!.Word || line.Item.Site?.Name == one.Item.Site?.Name) && Array.Exists(alternatives, sign => sign.Matches(line)))
        .MaxBy(line => line.Moment);

    private static bool AreTogether(Noted one, Noted other, decimal hours) =>
        DoseSeries.HoursBetween(one, other) is { } apart ? Math.Abs(apart) <= hours : one.Day == other.Day;
}
