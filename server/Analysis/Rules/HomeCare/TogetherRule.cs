using HealthNotes.Analysis.Courses;
using HealthNotes.Analysis.Danger;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Analysis.Ranges;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Rules;

/// <summary>Signs that cannot wait when they come together: the rows of <c>phone-now.tsv</c> with more than one. Each place of the body by itself.</summary>
public sealed class TogetherRule : ICourseRule
{
    private static IEnumerable<PhoneNow> Rows => ClinicalTables.Default.AllPhoneNow.Where(row => row.With.Length > 0);

    /// <inheritdoc/>
    public string Name => "together";

    /// <inheritdoc/>
    public string Topic => "seen";

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => Rows.Any(row => row.Signs.Any(sign => sign.Part == key.Word));

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, CourseContext at)
    {
        foreach (PhoneNow row in Rows.Where(row => row.IsFor(at.Note.Pet.Species, at.Note.Pet.Male)))
        {
            int told = -1;
            foreach (Noted one in course.Recent.ToArray().Where(line => row.Signs.Any(sign => sign.Matches(line)) && row.IsForStage(at.Note.Pet.StageOn(line.Day, at.Note.Tables)?.Key)))
            {
                Noted?[] others = [.. row.With.Select(alternatives => Near(one, alternatives, row.Hours, at))];
                if (others.All(other => other is not null) && others.Append(one).MaxBy(line => (line!.Moment, line.Line))! is var last && last.Line != told)
                {
                    told = last.Line;
                    string said = string.Join(", ", others.Append(one).DistinctBy(line => line!.Line).OrderBy(line => line!.Moment).Select(line => $"{Wording.NameOf(line!.Item!.Word.Word).ToLowerInvariant()} (line {line.Line + 1})"));
                    yield return RuleContext.At(Name, FindingLevel.Urgent, last.Line, last.Item!.Head.Span,
                        $"{row.What}, {(row.Hours <= 0 ? "together" : $"within {Wording.Round(row.Hours, 0)} hours")}: {said}. {Wording.Advice(FindingLevel.Urgent)}",
                        row.Source, others.Append(one).Select(line => line!.Line));
                }
            }
        }
    }

    /// <summary>The last line near in time that says one of them; of the same part, at the same place.</summary>
    private static Noted? Near(Noted one, SignPattern[] alternatives, decimal hours, CourseContext at) => alternatives
        .Select(sign => sign.Part).Distinct().SelectMany(part => at.All(part))
        .SelectMany(course => course.Between(one.Day.Plus(-(int)(hours / 24) - 1), one.Day.Plus((int)(hours / 24) + 1)).ToArray())
        .Where(line => AreTogether(one, line, hours) && (line.Item!.Word != one.Item!.Word || line.Item.Site?.Name == one.Item.Site?.Name) && Array.Exists(alternatives, sign => sign.Matches(line)))
        .MaxBy(line => line.Moment);

    private static bool AreTogether(Noted one, Noted other, decimal hours) =>
        DoseSeries.HoursBetween(one, other) is { } apart ? Math.Abs(apart) <= hours : one.Day == other.Day;
}
