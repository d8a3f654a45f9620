using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Rules;

/// <summary>An entry dated after today or before the pet was born: most likely a slip in the year.</summary>
public sealed class EntryDateRule : IRule
{
    /// <inheritdoc/>
    public string Name => "entry-date";

    /// <inheritdoc/>
    public string Topic => "date";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(RuleContext context)
    {
        foreach (Entry entry in context.Note.Entries)
        {
            if (entry.Head.Date is not { } date)
            {
                continue;
            }

            string? message = date > context.Today ? $"This entry is dated after today, {context.Today:yyyy-MM-dd}. Is the date right?"
                : context.Pet.Born is { } born && date < born.Earliest ? $"This entry is dated before the pet was born ({born}). Is the date right?"
                : null;
            if (message is not null)
            {
                yield return RuleContext.At(Name, FindingLevel.Watch, entry.Line, entry.Head.DateSpan, message, RuleBook.NoteFormat);
            }
        }
    }
}
