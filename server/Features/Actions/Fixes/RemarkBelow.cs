using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>
/// Words that are not known, in a line that makes sense without them, move to free text below it. Text that stands there
/// already keeps its place: the words join it.
/// </summary>
internal static class RemarkBelow
{
    private const int Deeper = 2;

    public static IEnumerable<ActionOffer> Of(LineAt at, NoteFinding finding)
    {
        if (at.Line.Kind != LineKind.Item || at.Line.Item is null)
        {
            yield break;
        }

        TextSpan words = Unknown(at.Line, finding.Span);
        TextSpan removed = LineAt.WithBlanksBefore(at.Text, words);
        string left = at.Text.Remove(removed.Start, removed.Length);
        TrialLine tried = at.Trial.Read(left);
        if (!Trial.IsBetter(at.Read, tried, finding) || tried.Line.Item is null)
        {
            yield break;
        }

        string said = words.In(at.Text).ToString();
        Document document = at.Document;
        int indent = at.Line.Indent + Deeper;
        if (at.Index + 1 < document.Syntax.Lines.Length && document.Syntax.Lines[at.Index + 1] is { Kind: LineKind.FreeText } below)
        {
            indent = below.Indent;
        }

        ActionOffer offer = NoteFix.Offer("remark-below", $"Move `{said}` to free text below", finding, preferred: false,
            new DocumentEdit(PlaceRange.Of(at.Index, removed), ""),
            WholeLines.InsertBelow(document, at.Index, [new string(' ', indent) + "> " + said]));
        yield return offer;
    }

    /// <summary>The unknown words around the finding that follow one another.</summary>
    private static TextSpan Unknown(LineSyntax line, TextSpan span)
    {
        int first = -1;
        for (int index = 0; index < line.Marks.Length; index++)
        {
            Token mark = line.Marks[index];
            if (mark.Kind != TokenKind.Unknown)
            {
                if (first >= 0 && line.Marks[first].Span.Start <= span.Start && span.End <= line.Marks[index - 1].Span.End)
                {
                    break;
                }

                first = -1;
            }
            else if (first < 0)
            {
                first = index;
            }
        }

        if (first < 0)
        {
            return span;
        }

        int last = first;
        while (last + 1 < line.Marks.Length && line.Marks[last + 1].Kind == TokenKind.Unknown)
        {
            last++;
        }

        var all = TextSpan.Between(line.Marks[first].Span.Start, line.Marks[last].Span.End);
        return all.Start <= span.Start && span.End <= all.End ? all : span;
    }
}
