using System.Collections.Immutable;
using HealthNotes.Features.Actions.Fixes;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Actions.OfFindings;
using HealthNotes.Features.Actions.Rewrites;
using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Actions;

/// <summary>Quick fixes and rewrites for a stretch of a note. None adds a treatment, a dose, or anything that was not seen.</summary>
public static class ActionFeature
{
    /// <summary>What can be done at <paramref name="range"/>: fixes first, those of what the range touches before others.</summary>
    public static ImmutableArray<ActionOffer> In(Document document, PlaceRange range, FeatureSettings settings)
    {
        Place start = document.Clamp(range.Start);
        Place end = document.Clamp(range.End);
        PlaceRange within = WithoutNextLine(document, start <= end ? new PlaceRange(start, end) : new PlaceRange(end, start));
        return [.. QuickFixes.In(document, within, settings), .. RewriteBook.In(document, within, settings), .. FindingActions.In(document, within)];
    }

    /// <summary>The edits of an offer that left them to be worked out; empty when the key is not known or there is nothing left to do.</summary>
    public static ImmutableArray<DocumentEdit> Resolve(Document document, string key) => RewriteBook.Resolve(document, key);

    /// <summary>Everything that can be fixed in one way only; the edits never touch one another. Doing it again changes nothing.</summary>
    public static ImmutableArray<DocumentEdit> FixAll(Document document) => AllFixes.Of(document);

    /// <summary>A whole line that was chosen ends where the next begins, and is still one line.</summary>
    private static PlaceRange WithoutNextLine(Document document, PlaceRange range) =>
        range.End.Character == 0 && range.End.Line > range.Start.Line
            ? range with { End = new Place(range.End.Line - 1, document.Syntax.Lines[range.End.Line - 1].Text.Length) }
            : range;
}
