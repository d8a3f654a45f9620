using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record;

namespace HealthNotes.Analysis.Rules;

/// <summary>An <c>accept</c> or <c>override-urgent</c> line that quiets nothing: the finding it names does not exist, or the part is missing.</summary>
public sealed class AcceptRule : IEntryRule, IOpeningRule
{
    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("accept", "facts", 2);

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(PetRecord at, PetEntry entry) => Find(entry.Entry.Facts);

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(PetRecord at) => Find(at.Note.Opening.Facts);

    private IEnumerable<NoteFinding> Find(IEnumerable<Placed<NoteItem>> facts)
    {
        foreach ((int line, NoteItem item) in facts)
        {
            if (item is not (AcceptFact or OverrideFact) || item.Name is not { } rule)
            {
                continue;
            }

            string named = rule.Text;
            if (named == CallIfRule.RuleName)
            {
                yield return this.At(FindingLevel.Error, line, rule.Span, "the clinic drew that line: ask the clinic, and change the `call-if` line", RuleBook.NoteFormat);
            }
            else if (!RuleBook.IsKnown(named))
            {
                string? nearest = NearestWord.Find(named, RuleBook.Acceptable);
                string hint = nearest is null ? "hnote about lists the names" : $"did you mean `{nearest}`?";
                yield return this.At(FindingLevel.Error, line, rule.Span, $"there is no finding named `{named}`; {hint}", RuleBook.NoteFormat) with { Nearest = nearest };
            }
            else if (item is AcceptFact { Item: null, Site: null } accept && Accepted.NeedsPart(named))
            {
                yield return this.At(FindingLevel.Error, line, rule.Span,
                    $"`{named}` can be about any part: say which is meant, such as accept {named} {(named == "sign" ? "tooth 208" : "gums")} until {accept.Until}", RuleBook.NoteFormat);
            }
        }
    }
}
