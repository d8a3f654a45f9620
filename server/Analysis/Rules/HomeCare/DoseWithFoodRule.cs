using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Rules;

/// <summary>A medicine that the plan says to give with food (or without), and a line that says it was given the other way; insulin near a meal that was left or vomited.</summary>
public sealed class DoseWithFoodRule : ICourseRule
{
    /// <summary>How the words start that say so: with food, with breakfast.</summary>
    private const string With = "with-";
    private const string Without = "without-food";
    private const int DaysOfARun = 7;

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("dose-with-food", "dose", 7);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word == "gave";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        var orders = MedicineOrder.Of(course.Key.Detail, at);
        var other = course.Recent.ToArray().Where(dose => orders.LastOrDefault(order => order.Holds(dose)) is { } order
            && ((Says(order.Plan.Manner, With) && Says(((DoseEvent)dose.Item!).Manner, Without)) || (Says(order.Plan.Manner, Without) && Says(((DoseEvent)dose.Item!).Manner, With))));
        foreach (List<Noted> run in Runs.Of(other, DaysOfARun))
        {
            Noted last = run[^1];
            MedicineOrder order = orders.Last(one => one.Holds(last));
            yield return this.At(FindingLevel.Info, last.Line, ((DoseEvent)last.Item!).Medicine.Span,
                $"{course.Key.Detail}: the plan says {(Says(order.Plan.Manner, With) ? "with food" : "without food")}; this line says otherwise.",
                "the plan in these notes", Runs.Evidence(run).Append(order.Line));
        }

        foreach (NoteFinding finding in PetProfile.IsInsulin(course.Key.Detail) ? WithoutAMeal(course, at) : [])
        {
            yield return finding;
        }
    }

    /// <summary>Insulin near a meal that was left or came back.</summary>
    private IEnumerable<NoteFinding> WithoutAMeal(Course insulin, PetRecord at)
    {
        if (CareLimits.One("insulin-fed", at) is not { } limit)
        {
            yield break;
        }

        Noted[] meals = [.. at.Of(new CourseKey("ate", "")).Lines.Where(meal => meal.Item is CareEvent care && RefusalRule.IsRefused(care) is not null)];
        Noted[] vomits = [.. at.Of(new CourseKey("vomit", "")).Lines.Where(CareWords.Counts)];
        foreach (Noted dose in insulin.Recent.ToArray())
        {
            Noted? left = meals.LastOrDefault(meal => IsNear(dose, meal) && meal.Moment <= dose.Moment) is { Item: CareEvent care } last && RefusalRule.IsRefused(care) == true ? last : null;
            if ((left ?? vomits.LastOrDefault(vomit => IsNear(dose, vomit))) is { } cause)
            {
                yield return this.At(limit.Level, dose.Line, ((DoseEvent)dose.Item!).Medicine.Span,
                    $"{insulin.Key.Detail}: given {(left is null ? "near a meal that may have come back: it vomited" : "after a meal that was left")} (line {cause.Line + 1}).",
                    limit.Source, cause.Line);
            }
        }

        bool IsNear(Noted dose, Noted other) => DoseSeries.HoursBetween(dose, other) is { } hours && Math.Abs(hours) <= limit.Value;
    }

    private static bool Says(IEnumerable<Grammar.Vocabulary.StateWord> manner, string word) => manner.Any(one => one.Word.StartsWith(word, StringComparison.Ordinal));
}
