using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;

namespace HealthNotes.Analysis.Rules;

/// <summary>Gums of a colour or wetness that is not as expected.</summary>
public sealed class GumColourRule : IEntryRule
{
    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("gum-colour", "seen", 15);

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(PetRecord at, PetEntry entry) =>
        entry.Entry.Items.Where(placed => placed.Value is Examined { Word.Word: "gums" })
            .Select(placed => WorryingWords.In(at, entry, this, placed.Line, placed.Value)).OfType<NoteFinding>();
}
