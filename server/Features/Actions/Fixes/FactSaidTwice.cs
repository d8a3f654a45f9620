using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>
/// A fact that the opening says twice: the second line can go. It is preferred where both say the same. A second pet is
/// left alone: its lines belong in a file of their own.
/// </summary>
internal static class FactSaidTwice
{
    public static IEnumerable<ActionOffer> Of(Document document, NoteFinding finding)
    {
        if (document.Syntax.Lines[finding.Line].Item is not { Word.Kind: WordKind.Fact } fact || fact.Word.Word == "pet" || finding.Span != fact.Head.Span
            || document.Note.Opening.Facts.FirstOrDefault(other => other.Value.Word == fact.Word) is not { } first || first.Line >= finding.Line)
        {
            yield break;
        }

        string before = ItemPrinter.Print(first.Value);
        bool same = before == ItemPrinter.Print(fact);
        yield return NoteFix.Offer("say-once", same ? $"Take this line away, line {first.Line + 1} says it" : $"Take this line away and keep line {first.Line + 1}, `{before}`", finding, same,
            Remove(document, finding.Line));
    }

    /// <summary>Takes a line away; a comment behind it stays.</summary>
    public static DocumentEdit Remove(Document document, int line)
    {
        LineSyntax syntax = document.Syntax.Lines[line];
        return syntax.Marks[^1] is { Kind: TokenKind.Comment } comment
            ? new DocumentEdit(PlaceRange.Of(line, TextSpan.Between(syntax.Indent, comment.Span.Start)), "")
            : WholeLines.Remove(document, line, line);
    }
}
