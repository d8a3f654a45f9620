using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Analysis.Rules;

/// <summary>An <c>accept</c> line that quiets nothing: the finding it names does not exist, or the part is missing.</summary>
public sealed class AcceptRule : IEntryRule, IOpeningRule
{
    /// <inheritdoc/>
    public string Name => "accept";

    /// <inheritdoc/>
    public string Topic => "facts";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(EntryContext at) => Find(at.Entry.Facts);

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Note note, RuleContext context) => Find(note.Opening.Facts);

    private IEnumerable<NoteFinding> Find(IEnumerable<Placed<NoteItem>> facts)
    {
        foreach ((int line, NoteItem item) in facts)
        {
            if (item is not AcceptFact accept)
            {
                continue;
            }

            string named = accept.Rule.Text;
            if (named == CallIfRule.RuleName)
            {
                yield return RuleContext.At(Name, FindingLevel.Error, line, accept.Rule.Span, "the clinic drew that line: ask the clinic, and change the `call-if` line", RuleBook.NoteFormat);
            }
            else if (!RuleBook.IsKnown(named))
            {
                string? nearest = NearestWord.Find(named, RuleBook.Acceptable);
                string hint = nearest is null ? "hnote about lists the names" : $"did you mean `{nearest}`?";
                yield return RuleContext.At(Name, FindingLevel.Error, line, accept.Rule.Span, $"there is no finding named `{named}`; {hint}", RuleBook.NoteFormat) with { Nearest = nearest };
            }
            else if (Accepted.NeedsPart(named) && accept.Item is null && accept.Site is null)
            {
                yield return RuleContext.At(Name, FindingLevel.Error, line, accept.Rule.Span,
                    $"`{named}` can be about any part: say which is meant, such as accept {named} {(named == "sign" ? "tooth 208" : "gums")} until {accept.Until}", RuleBook.NoteFormat);
            }
        }
    }
}
