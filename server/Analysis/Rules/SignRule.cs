using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Rules;

/// <summary>Something seen, heard or felt whose word is worth watching or more: by the level in the word's row.</summary>
public sealed class SignRule : IRule
{
    /// <inheritdoc/>
    public string Name => "sign";

    /// <inheritdoc/>
    public string Topic => "seen";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(RuleContext context)
    {
        foreach ((Entry entry, int line, NoteItem item) in context.Items())
        {
            if (item is Examined { Word.Word: "gums" })
            {
                continue;
            }

            if (WorryingWords.In(context, Name, entry, line, item) is { } finding)
            {
                yield return finding;
            }
            else if (item is Finding { Word.Word: "pain-site" } pain)
            {
                yield return RuleContext.At(Name, FindingLevel.Watch, line, pain.Site.Span,
                    $"A place the pet minds being touched: {pain.Site.Name}. {Wording.Advice(FindingLevel.Watch)}", "common practice, no source");
            }
        }
    }
}
