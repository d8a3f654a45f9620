using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>
/// A dose outside the range that the clinic orders for its medicine, and a tablet of a strength that the clinic does not hand out. It
/// compares the plan that holds today, and the newest dose that was given. It proposes no dose.
/// </summary>
public sealed class MedicineRangeRule : ICourseRule
{
    private const string PerKilogram = "mg/kg";
    private const decimal MilligramsAKilogram = 1_000_000;

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("med-range", "dose", 3);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key == CourseKey.Note || key.Word == "gave";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        if (course.Key != CourseKey.Note)
        {
            Noted last = course.Lines[^1];
            var dose = (DoseEvent)last.Item!;
            return Compare(course.Key.Detail, dose.Medicine.Text, dose.Dose, last.Line, last.Day, at);
        }

        return MedicineOrder.On(at.Facts.Today, at).SelectMany(order =>
            Compare(order.Medicine, order.Plan.Medicine.Text, order.Plan.Dose, order.Line, at.Facts.Today, at).Concat(Strength(order, at)));
    }

    private IEnumerable<NoteFinding> Compare(string medicine, string shown, NoteValue? dose, int line, DateOnly day, PetRecord at)
    {
        if (dose is null || MedicineOrder.AmountOf(dose) is not { } amount || at.Facts.MedicineRanges[medicine].LastOrDefault(range => !(range.Day > day)) is not { } range
            || range.Fact.Range is not { Unit: { } unit })
        {
            yield break;
        }

        NoteReading? weight = unit.Word == PerKilogram && amount.Unit == "kg" ? at.WeightOn(day) : null;
        decimal? compared = weight is { Value.Number: > 0 and var kilograms } ? amount.Amount * MilligramsAKilogram / kilograms : amount.Unit == unit.Canonical ? amount.Amount : null;
        bool below = compared < UnitConversion.ToCanonical(new Amount(range.Fact.Range.Low, unit));
        if (!below && !(compared > UnitConversion.ToCanonical(new Amount(range.Fact.Range.High, unit))))
        {
            yield break;
        }

        string each = weight is null ? "" : $" is {Wording.Round(compared!.Value, 2)} {PerKilogram} at {Wording.Show(weight.Value.Number, "kg", at.Facts.Pet.ShowUsUnits)} ({Wording.Day(weight.Day!.Value, at.Facts.Today)})";
        yield return this.At(below ? FindingLevel.Watch : FindingLevel.Call, line, dose.Span,
            $"{shown} {ValuePrinter.Print(dose)}{each}: {(below ? "below" : "above")} the clinic's range of {ValuePrinter.Print(range.Fact.Range)} a dose.",
            OwnLimits.SourceOf(range) ?? "the range of doses written for this pet", [range.Line, .. weight is null ? (int[])[] : [weight.Line]]) with
        {
            Advice = "Change no dose by yourself: ask the clinic whether the line is right.",
        };
    }

    private IEnumerable<NoteFinding> Strength(MedicineOrder order, PetRecord at)
    {
        DatedFact<MedicineStrengthFact>[] strengths = [.. at.Facts.MedicineStrengths[order.Medicine]];
        if (strengths.Length > 0 && order.Plan.Body.Get<Measure>(SlotKind.StrengthOfOne) is { } one && MedicineOrder.AmountOf(one) is { } held
            && strengths.Select(strength => MedicineOrder.AmountOf(strength.Fact.Value)).OfType<(decimal, string)>().ToArray() is var known && !known.Contains(held))
        {
            TextSpan span = order.Plan.Dose?.Span ?? order.Plan.Medicine.Span;
            yield return this.At(FindingLevel.Watch, order.Line, span,
                $"{order.Plan.Medicine.Text}: a tablet of {ValuePrinter.Print(one)} is not one that the clinic hands out ({string.Join(", ", strengths.Select(strength => ValuePrinter.Print(strength.Fact.Value!)))}).",
                OwnLimits.SourceOf(strengths[^1]) ?? "the strengths written for this pet", strengths.Select(strength => strength.Line)) with
            {
                Advice = "Compare the line with the label.",
            };
        }
    }
}
