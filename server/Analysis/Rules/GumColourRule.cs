using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Rules;

/// <summary>Gums of a colour or wetness that is not as expected.</summary>
public sealed class GumColourRule : IEntryRule
{
    /// <inheritdoc/>
    public string Name => "gum-colour";

    /// <inheritdoc/>
    public string Topic => "seen";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(EntryContext at) =>
        at.Entry.Items.Where(placed => placed.Value is Examined { Word.Word: "gums" })
            .Select(placed => WorryingWords.In(at, Name, placed.Line, placed.Value)).OfType<NoteFinding>();
}
