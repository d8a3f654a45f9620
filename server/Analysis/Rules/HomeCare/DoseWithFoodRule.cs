using HealthNotes.Analysis.Courses;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Rules;

/// <summary>A medicine that the plan says to give with food (or without), and a line that says it was given the other way.</summary>
public sealed class DoseWithFoodRule : ICourseRule
{
    private const string With = "with-food";
    private const string Without = "without-food";
    private const int DaysOfARun = 7;

    /// <inheritdoc/>
    public string Name => "dose-with-food";

    /// <inheritdoc/>
    public string Topic => "dose";

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word == "gave";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, CourseContext at)
    {
        var orders = MedicineOrder.Of(course.Key.Detail, at);
        var other = course.Recent.ToArray().Where(dose => orders.LastOrDefault(order => order.Holds(dose)) is { } order
            && ((Says(order.Plan.Manner, With) && Says(((DoseEvent)dose.Item!).Manner, Without)) || (Says(order.Plan.Manner, Without) && Says(((DoseEvent)dose.Item!).Manner, With))));
        foreach (List<Noted> run in Runs.Of(other, DaysOfARun))
        {
            Noted last = run[^1];
            MedicineOrder order = orders.Last(one => one.Holds(last));
            yield return RuleContext.At(Name, FindingLevel.Info, last.Line, ((DoseEvent)last.Item!).Medicine.Span,
                $"{course.Key.Detail}: the plan says {(Says(order.Plan.Manner, With) ? "with food" : "without food")}; this line says otherwise.",
                "the plan in these notes", Runs.Evidence(run).Append(order.Line));
        }
    }

    private static bool Says(IEnumerable<Grammar.Vocabulary.StateWord> manner, string word) => manner.Any(one => one.Word == word);
}
