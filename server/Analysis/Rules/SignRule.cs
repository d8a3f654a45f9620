using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Lumps;

namespace HealthNotes.Analysis.Rules;

/// <summary>Something seen, heard or felt whose word is worth watching or more: by the level in the word's row.</summary>
public sealed class SignRule : IEntryRule
{
    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("sign", "seen", 16);

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(PetRecord at, PetEntry entry)
    {
        foreach ((int line, NoteItem item) in entry.Entry.Items)
        {
            if (WorryingWords.Over(at, entry, this, line, item) is { } over)
            {
                yield return over;
                continue;
            }

            if (item is Examined { Word.Word: "gums" })
            {
                continue;
            }

            if (WorryingWords.In(at, entry, this, line, item) is { } finding)
            {
                yield return finding;
            }
            else if (item is Finding { Word.Word: "pain-site" } pain && LumpWords.End(pain) is null && pain.Words.All(word => word.Word.Word != Reason.VetKnows) && Reason.Expected(at.Facts, pain, null, entry.Entry.Head.Date) is null && !pain.Absent.Any(sign => sign.Word.Part != "any"))
            {
                yield return this.At(FindingLevel.Watch, line, pain.Site.Span,
                    $"A place the pet minds being touched: {pain.Site.Name}.", "common practice, no source");
            }
        }
    }
}
