using HealthNotes.Analysis.Findings;
using HealthNotes.Record;

namespace HealthNotes.Analysis.Rules;

/// <summary>An entry dated after today or before the pet was born: most likely a slip in the year.</summary>
public sealed class EntryDateRule : IEntryRule
{
    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("entry-date", "date", 1);

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(PetRecord at, PetEntry entry)
    {
        if (entry.Entry.Head.Date is not { } date)
        {
            yield break;
        }

        string? message = date > at.Facts.Today ? $"This entry is dated after today, {at.Facts.Today:yyyy-MM-dd}. Is the date right?"
            : at.Facts.Pet.Born is { } born && date < born.Earliest ? $"This entry is dated before the pet was born ({born}). Is the date right?"
            : null;
        if (message is not null)
        {
            yield return this.At(FindingLevel.Watch, entry.Entry.Line, entry.Entry.Head.DateSpan, message, RuleBook.NoteFormat).WithoutAdvice();
        }
    }
}
