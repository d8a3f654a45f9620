using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Ranges;

namespace HealthNotes.Analysis.Rules;

/// <summary>A painkiller made for people was given, and no vet's plan in these notes has it, or no plan can make it safe.</summary>
public sealed class HumanPainkillerRule : IEntryRule
{
    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("human-painkiller", "dose", 1);

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(PetRecord at, PetEntry entry)
    {
        foreach ((int line, NoteItem item) in entry.Entry.Items)
        {
            FreeWords? medicine = item is DoseEvent { Word.Word: "gave" } dose ? dose.Medicine : (item as MedicinePlan)?.Medicine;
            if (medicine is not null && ClinicalTables.Default.HumanPainkillers.FirstOrDefault(one => one.IsIn(medicine.Text)) is { } painkiller)
            {
                bool never = painkiller.IsNeverSafe(at.Facts.Pet.Species);
                if (never || (item is DoseEvent && !at.Facts.PlannedMedicines.Any(painkiller.IsIn)))
                {
                    yield return this.At(FindingLevel.Urgent, line, medicine.Span,
                        $"`{medicine.Text}` is a painkiller made for people{(never ? "; a plan (med) does not make it safe" : ", and no plan (med) in these notes has it")}. Such medicines can poison pets.",
                        painkiller.Source);
                }
            }
        }
    }
}
