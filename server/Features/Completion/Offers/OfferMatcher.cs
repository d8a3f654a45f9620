using System.Collections.Immutable;
using System.Globalization;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>Keeps the offers that go with what is typed, by any of their spellings, and puts them in order.</summary>
internal static class OfferMatcher
{
    private const int NearestFrom = 3;
    private const int BelowAll = 9;

    public static CompletionList Match(LinePlace at, IEnumerable<Offer> offers)
    {
        var all = new List<(Offer Offer, int Index)>();
        var seen = new HashSet<(string, string)>();
        foreach (Offer offer in offers)
        {
            if (seen.Add((offer.Text.TrimEnd(), offer.Label ?? offer.Text)))
            {
                all.Add((offer, all.Count));
            }
        }

        var found = new List<(int Match, int Group, int Index, Offer Offer, string Filter)>();
        foreach ((Offer offer, int index) in all)
        {
            string typed = TypedFor(at, offer);
            if (Matches(offer, typed) is { } match)
            {
                found.Add((offer.Below ? BelowAll : match.Rank, offer.Group, index, offer, match.Filter));
            }
        }

        if (found.Count == 0 && at.Typed.Length >= NearestFrom)
        {
            AddNearest(at, all, found);
        }

        return new CompletionList(true,
        [
            .. found.OrderBy(f => f.Match).ThenBy(f => f.Group).ThenBy(f => f.Index)
                .Take(CompletionList.MostItems)
                .Select((f, order) => Item(at, f.Offer, f.Filter, order, f.Match)),
        ]);
    }

    private static string TypedFor(LinePlace at, Offer offer) => offer.From is { } from ? at.Text[from..at.Cursor] : at.Typed;

    /// <summary>How well it goes with what is typed: its own start, another spelling's, a later part of its name; null when not at all.</summary>
    private static (int Rank, string Filter)? Matches(Offer offer, string typed)
    {
        if (typed.Length == 0)
        {
            return offer.WhenTyped ? null : (0, offer.Text);
        }

        if (StartsWith(offer.Text, typed))
        {
            return (0, offer.Text);
        }

        foreach (string spelling in offer.Spellings)
        {
            if (StartsWith(spelling, typed))
            {
                return (1, spelling);
            }
        }

        for (int hyphen = offer.Text.IndexOf('-'); hyphen >= 0 && hyphen + 1 < offer.Text.Length; hyphen = offer.Text.IndexOf('-', hyphen + 1))
        {
            if (StartsWith(offer.Text.AsSpan(hyphen + 1), typed))
            {
                return (2, offer.Text[(hyphen + 1)..]);
            }
        }

        return null;
    }

    private static bool StartsWith(ReadOnlySpan<char> text, string typed) => text.StartsWith(typed, StringComparison.OrdinalIgnoreCase);

    /// <summary>Nothing starts so: the word that was most likely meant. It goes under what was typed, or the editor would drop it.</summary>
    private static void AddNearest(LinePlace at, List<(Offer Offer, int Index)> all, List<(int, int, int, Offer, string)> found)
    {
        string? nearest = NearestWord.Find(at.Typed, all.Where(o => o.Offer is { From: null, Below: false }).SelectMany(o => o.Offer.Spellings.Prepend(o.Offer.Text)));
        if (nearest is null)
        {
            return;
        }

        foreach ((Offer offer, int index) in all)
        {
            if (offer is { From: null, Below: false } && (offer.Text == nearest || offer.Spellings.Contains(nearest)))
            {
                found.Add((3, offer.Group, index, offer, at.Typed));
            }
        }
    }

    private static CompletionItem Item(LinePlace at, Offer offer, string filter, int order, int match)
    {
        string behind = at.NeedsBlank ? " " : "";
        PlaceRange range = PlaceRange.Of(at.Line, TextSpan.Between(offer.From ?? at.Start, at.End));
        return new CompletionItem(
            offer.Label ?? offer.Text,
            offer.Kind,
            offer.Detail,
            filter,
            order.ToString("0000", CultureInfo.InvariantCulture),
            new DocumentEdit(range, offer.Text + behind),
            offer.Snippet is null ? null : offer.Snippet + behind,
            offer.Key,
            offer.Preselect && match == 0 && order == 0);
    }
}
