using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Ranges;

namespace HealthNotes.Analysis.Rules;

/// <summary>A painkiller made for people was given, and no vet's plan in these notes has it, or no plan can make it safe.</summary>
public sealed class HumanPainkillerRule : IEntryRule
{
    /// <inheritdoc/>
    public string Name => "human-painkiller";

    /// <inheritdoc/>
    public string Topic => "dose";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(EntryContext at)
    {
        foreach ((int line, NoteItem item) in at.Entry.Items)
        {
            if (item is DoseEvent { Word.Word: "gave" } dose
                && ClinicalTables.Default.HumanPainkillers.FirstOrDefault(one => one.IsIn(dose.Medicine.Text)) is { } painkiller)
            {
                bool never = painkiller.IsNeverSafe(at.Note.Pet.Species);
                if (never || !at.Note.PlannedMedicines.Any(painkiller.IsIn))
                {
                    yield return RuleContext.At(Name, FindingLevel.Urgent, line, dose.Medicine.Span,
                        $"`{dose.Medicine.Text}` is a painkiller made for people{(never ? "; a plan (med) does not make it safe" : ", and no plan (med) in these notes has it")}. Such medicines can poison pets. {Wording.Advice(FindingLevel.Urgent)}",
                        painkiller.Source);
                }
            }
        }
    }
}
