using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Ranges;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Rules;

/// <summary>A painkiller made for people was given, and no vet's plan in these notes has it.</summary>
public sealed class HumanPainkillerRule : IRule
{
    /// <inheritdoc/>
    public string Name => "human-painkiller";

    /// <inheritdoc/>
    public string Topic => "dose";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(RuleContext context)
    {
        List<string> planned = [.. context.Note.Facts<MedicinePlan>().Select(plan => plan.Fact.Medicine.Text)];
        foreach ((_, int line, NoteItem item) in context.Items())
        {
            if (item is DoseEvent { Word.Word: "gave" } dose
                && context.Tables.HumanPainkillers.FirstOrDefault(p => Names(p, dose.Medicine.Text)) is { } painkiller
                && !planned.Any(name => Names(painkiller, name)))
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
