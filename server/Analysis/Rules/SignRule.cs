using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Lumps;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Rules;

/// <summary>Something seen, heard or felt whose word is worth watching or more: by the level in the word's row.</summary>
public sealed class SignRule : IEntryRule
{
    /// <inheritdoc/>
    public string Name => "sign";

    /// <inheritdoc/>
    public string Topic => "seen";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(EntryContext at)
    {
        foreach ((int line, NoteItem item) in at.Entry.Items)
        {
            if (item is Examined { Word.Word: "gums" })
            {
                continue;
            }

            if (WorryingWords.In(at, Name, line, item) is { } finding)
            {
                yield return finding;
            }
            else if (item is Finding { Word.Word: "pain-site" } pain && LumpWords.End(pain) is null && pain.Words.All(word => word.Word.Word != Reason.VetKnows) && Reason.Expected(at.Note, pain, null, at.Entry.Head.Date) is null && !pain.Absent.Any(sign => sign.Word.Part != "any"))
            {
                yield return RuleContext.At(Name, FindingLevel.Watch, line, pain.Site.Span,
                    $"A place the pet minds being touched: {pain.Site.Name}. {Wording.Advice(FindingLevel.Watch)}", "common practice, no source");
            }
        }
    }
}
