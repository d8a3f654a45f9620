using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Rules;

/// <summary>Gums of a colour or wetness that is not as expected.</summary>
public sealed class GumColourRule : IRule
{
    /// <inheritdoc/>
    public string Name => "gum-colour";

    /// <inheritdoc/>
    public string Topic => "seen";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(RuleContext context) =>
        context.Items().Where(placed => placed.Item is Examined { Word.Word: "gums" })
            .Select(placed => WorryingWords.In(context, Name, placed.Entry, placed.Line, placed.Item)).OfType<NoteFinding>();
}
