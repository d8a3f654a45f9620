using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Ranges;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Rules;

/// <summary>A painkiller made for people was given, and no vet's plan in these notes has it.</summary>
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
                && at.Note.Tables.HumanPainkillers.FirstOrDefault(p => Names(p, dose.Medicine.Text)) is { } painkiller
                && !at.Note.PlannedMedicines.Any(name => Names(painkiller, name)))
            {
                yield return RuleContext.At(Name, FindingLevel.Urgent, line, dose.Medicine.Span,
                    $"`{dose.Medicine.Text}` is a painkiller made for people, and no plan (med) in these notes has it. Such medicines can poison pets. {Wording.Advice(FindingLevel.Urgent)}",
                    painkiller.Source);
            }
        }
    }

    private static bool Names(HumanPainkiller painkiller, string text) =>
        painkiller.Synonyms.Append(painkiller.Name).Any(name => text.Contains(name, StringComparison.OrdinalIgnoreCase));
}
