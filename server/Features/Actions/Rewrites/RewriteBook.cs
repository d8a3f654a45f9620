using System.Collections.Immutable;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Actions.Rewrites;

/// <summary>The rewrites, in the order they are offered.</summary>
internal static class RewriteBook
{
    /// <summary>More lines than this are not rewritten at once for a selection: the whole note has an offer of its own.</summary>
    private const int MostLines = 2000;

    /// <summary>What can be rewritten; where several lines are chosen, only what goes for all of them.</summary>
    public static IEnumerable<ActionOffer> In(Document document, PlaceRange range, FeatureSettings settings)
    {
        int line = range.Start.Line;
        if (range.End.Line - line < MostLines)
        {
            foreach (ActionOffer offer in ExpandAbbreviations.In(document, range))
            {
                yield return offer;
            }
        }

        if (range.End.Line != line)
        {
            yield break;
        }

        if (document.Syntax.Lines[line].Item is not null)
        {
            var at = LineAt.Of(document, line, settings);
            foreach (ActionOffer offer in (IEnumerable<ActionOffer>)[.. ConvertUnit.At(at, range), .. OtherSide.At(at, range), .. LumpGone.At(document, line), .. TellApart.At(document, line)])
            {
                yield return offer;
            }
        }

        if (document.Note.EntryAt(line) is { Head.Kind: "check" } check)
        {
            foreach (ActionOffer offer in CompleteCheck.In(document, check).Concat(LumpsAgain.In(document, check, range.Start)))
            {
                yield return offer;
            }
        }
    }

    /// <summary>The edits of a rewrite that left them to be worked out.</summary>
    public static ImmutableArray<DocumentEdit> Resolve(Document document, string key) => key switch
    {
        ExpandAbbreviations.WholeNote => ExpandAbbreviations.InNote(document),
        _ => [],
    };
}
