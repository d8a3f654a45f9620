using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record;
using HealthNotes.Record.Courses;

namespace HealthNotes.Analysis.Rules;

/// <summary>A medicine given that no plan and no visit in these notes names: who ordered it? Said once, at its newest line.</summary>
public sealed class DoseUnplannedRule : ICourseRule
{
    /// <summary>What owners buy and give of their own accord, or name by its everyday name.</summary>
    private static readonly string[] Own = ["supplement", "parasite treatment", "everyday name", "fluid"];

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("dose-unplanned", "dose", 5);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word == "gave";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        string medicine = course.Key.Detail;
        if (NoteVocabulary.Default.Medicines.Find(medicine) is not { } known || Own.Contains(known.Group)
            || at.Facts.Plans.Any(plan => Names(plan.Fact.Medicine.Text)))
        {
            yield break;
        }

        Noted[] given = [.. course.Recent.ToArray().Where(dose => !dose.AtVisit)];
        if (given is [.., var last] && !at.Of(CourseKey.WholeVisits).Lines.Any(visit => visit.Day <= last.Day && IsOrdered(visit.Entry!)))
        {
            yield return this.At(FindingLevel.Watch, last.Line, ((DoseEvent)last.Item!).Medicine.Span,
                $"{medicine}: no plan (med) and no visit in these notes names it. If a vet ordered it, write the `med` line; if not, ask the clinic before the next dose.",
                "common practice, no source", given.TakeLast(2).Select(dose => dose.Line)).WithoutAdvice();
        }

        bool Names(string text) => known.Synonyms.Append(known.Word).Append(medicine).Any(name => CourseKey.MedicineName(text).Contains(CourseKey.MedicineName(name), StringComparison.Ordinal));

        bool IsOrdered(Entry visit) => visit.Texts.Any(text => Names(text.Markdown))
            || visit.Items.Any(item => Names(item.Value.Name?.Text ?? "") || Names(item.Value.Note?.Text ?? ""));
    }
}
