using HealthNotes.Analysis.Findings;

namespace HealthNotes.Analysis.Rules;

/// <summary>An entry dated after today or before the pet was born: most likely a slip in the year.</summary>
public sealed class EntryDateRule : IEntryRule
{
    /// <inheritdoc/>
    public string Name => "entry-date";

    /// <inheritdoc/>
    public string Topic => "date";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(EntryContext at)
    {
        if (at.Entry.Head.Date is not { } date)
        {
            yield break;
        }

        string? message = date > at.Note.Today ? $"This entry is dated after today, {at.Note.Today:yyyy-MM-dd}. Is the date right?"
            : at.Note.Pet.Born is { } born && date < born.Earliest ? $"This entry is dated before the pet was born ({born}). Is the date right?"
            : null;
        if (message is not null)
        {
            yield return RuleContext.At(Name, FindingLevel.Watch, at.Entry.Line, at.Entry.Head.DateSpan, message, RuleBook.NoteFormat);
        }
    }
}
