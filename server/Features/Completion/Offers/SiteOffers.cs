using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>Places on the body: those this pet had before, then sides, then what exists in this animal, by any of its names.</summary>
internal static class SiteOffers
{
    private const int NearPlaces = 10;

    private static NoteVocabulary Vocabulary => NoteVocabulary.Default;

    /// <summary>True when a line of the word is mostly about one place: the sites come before the words then.</summary>
    public static bool ComeFirst(LineWord word, SlotKind slot) =>
        slot != SlotKind.Site || word.Kind == WordKind.Scan || word.Word is "limb" or "skin"
        || Sides.OwnRegion(word) is { Sides: SideRule.Pair or SideRule.Four or SideRule.Front or SideRule.Hind };

    public static IEnumerable<Offer> For(LineState line, LineWord word, SlotKind slot, int group)
    {
        if (line.Has(TokenKind.Site))
        {
            return BehindSide(line, slot, group);
        }

        IEnumerable<Offer> places = slot switch
        {
            SlotKind.Tooth => Teeth(line, group + 2),
            SlotKind.Gland => Glands(line, group + 1),
            _ => SidesAndRegions(line, word, slot, group),
        };
        return Earlier(line, word, group).Concat(places);
    }

    /// <summary>Where the word was used before: a lump is to be measured again under the name it has.</summary>
    private static IEnumerable<Offer> Earlier(LineState line, LineWord word, int group)
    {
        if (line.Note.Entry is null)
        {
            yield break;
        }

        foreach (EarlierPlace earlier in EarlierPlace.Of(line.Note, word, pointsBack: line.About is not null))
        {
            bool tagged = earlier.Tag is not null && !line.Has(TokenKind.Tag);
            yield return new Offer(tagged ? earlier.Name : earlier.Site.Name, CompletionKind.Site, earlier.Gone ? group + 5 : group, earlier.Last)
            {
                Spellings = Spellings(earlier.Site.Region, earlier.Site.Side.ToString()),
                Key = earlier.Site.Region is { } region ? $"site:{region.Word}" : null,
            };
        }
    }

    private static IEnumerable<Offer> SidesAndRegions(LineState line, LineWord word, SlotKind slot, int group)
    {
        IReadOnlyList<string> own = slot == SlotKind.Site ? Sides.OfWord(word) : [];
        Region[] regions = [.. Vocabulary.Regions.Terms.Where(region => Exists(region, line.Note.Species) && SlotTable.Fits(slot, region))];
        IEnumerable<string> sides = own.Count > 0 ? own : Sides.All.Where(side => regions.Any(region => Sides.Of(region.Sides).Contains(side)));
        bool alone = own.Count > 0;
        foreach (string side in Sides.OwnRegion(word) is { Sides: SideRule.Mid } ? [] : sides)
        {
            FixedWord known = Vocabulary.Sides.Find(side)!;
            yield return new Offer(alone ? side : side + "-", CompletionKind.Site, group + 1, known.Definition)
            {
                Spellings = [.. known.Synonyms.Where(synonym => !synonym.Contains(' ')), .. SideAbbreviations(word, side)],
                Key = $"fixed:side:{side}",
            };
        }

        bool part = slot == SlotKind.Site && Sides.OwnRegion(word) is not null;
        IEnumerable<Region> offered = part ? Near(word, regions) : alone && line.At.Typed.Length == 0 ? [] : regions;
        foreach (Region region in offered)
        {
            foreach (Offer offer in OfRegion(line, region, group + 2))
            {
                yield return offer;
            }
        }
    }

    /// <summary>A region, and once it is begun, with each of its sides.</summary>
    private static IEnumerable<Offer> OfRegion(LineState line, Region region, int group)
    {
        if (line.At.Typed.Length > 0)
        {
            // a site may be begun with any form of side, so all that fit are there to be found
            foreach (string side in Sides.All.Where(side => side != "mid" || region.Sides == SideRule.Any))
            {
                if (Sides.Fits(region.Sides, side))
                {
                    bool usual = Sides.Of(region.Sides).Contains(side);
                    yield return Site($"{side}-{region.Word}", region, usual ? group : group + 1, side);
                }
            }
        }

        yield return Site(region.Word, region, region.Sides is SideRule.Mid or SideRule.Any || line.At.Typed.Length == 0 ? group : group + 2, null);
    }

    private static Offer Site(string text, Region region, int group, string? side) => new(text, CompletionKind.Site, group, region.Definition)
    {
        Spellings = Spellings(region, side),
        Key = $"site:{region.Word}",
    };

    /// <summary>The other names of a region, alone and behind the side: <c>stifle</c>, <c>L-stifle</c>, <c>left-knee</c>.</summary>
    private static string[] Spellings(Region? region, string? side)
    {
        if (region is null)
        {
            return [];
        }

        IEnumerable<string> names = region.Synonyms.Prepend(region.Word);
        string[] sides = side is null or "None" ? [] : [side, .. Vocabulary.Sides.Find(side)?.Synonyms.Where(synonym => !synonym.Contains(' ')) ?? []];
        return [.. names, .. sides.SelectMany(spelled => names.Select(name => $"{spelled}-{name}"))];
    }

    /// <summary>Behind a side that stands alone (<c>lump L </c>): the regions that have it.</summary>
    private static IEnumerable<Offer> BehindSide(LineState line, SlotKind slot, int group)
    {
        bool behind = line.Last.Kind == TokenKind.Site && string.IsNullOrWhiteSpace(line.At.Text[line.Last.Span.End..line.At.Start]);
        if (!behind || Vocabulary.Sides.Find(line.TextOf(line.Last)) is not { } side || slot is SlotKind.Tooth or SlotKind.Gland
            || Sides.OfWord(line.Subject).Count > 0)
        {
            yield break;
        }

        foreach (Region region in Vocabulary.Regions.Terms)
        {
            if (Exists(region, line.Note.Species) && SlotTable.Fits(slot, region) && Sides.Fits(region.Sides, side.Word))
            {
                // the two become one word
                string written = line.TextOf(line.Last);
                yield return Site($"{side.Word}-{region.Word}", region, group, null) with
                {
                    Label = region.Word,
                    From = line.Last.Span.Start,
                    Spellings = [.. region.Synonyms.Prepend(region.Word).Select(name => $"{written} {name}")],
                };
            }
        }
    }

    private static IEnumerable<Offer> Teeth(LineState line, int group)
    {
        foreach (ToothSet set in Vocabulary.Teeth)
        {
            if (line.Note.Species == Species.Unknown || set.Species == line.Note.Species)
            {
                bool milk = set.Numbers.All(number => number >= 500);
                foreach (int number in set.Numbers.Order())
                {
                    yield return new Offer($"{number}", CompletionKind.Site, milk ? group + 1 : group, ToothName(number)) { WhenTyped = milk };
                }
            }
        }
    }

    private static string ToothName(int number)
    {
        int quarter = number / 100;
        string where = ((quarter - 1) % 4) switch { 0 => "upper right", 1 => "upper left", 2 => "lower left", _ => "lower right" };
        return $"{where}, {Ordinal(number % 100)} from the middle{(quarter > 4 ? ", milk tooth" : "")}";
    }

    private static string Ordinal(int number) => number switch { 1 => "1st", 2 => "2nd", 3 => "3rd", _ => $"{number}th" };

    private static IEnumerable<Offer> Glands(LineState line, int group)
    {
        int pairs = line.Note.Species == Species.Cat ? 4 : 5;
        foreach (string side in (string[])["L", "R"])
        {
            for (int number = 1; number <= pairs; number++)
            {
                yield return new Offer($"{side}{number}", CompletionKind.Site, group, $"{(side == "L" ? "left" : "right")}, {Ordinal(number)} from the front")
                {
                    Spellings = [$"{side}-gland{number}", $"gland{number}"],
                    Key = "site:gland",
                };
            }
        }
    }

    private static IEnumerable<string> SideAbbreviations(LineWord word, string side) => word.Word switch
    {
        "eye" => Vocabulary.Abbreviations("side").Terms.Where(a => a.StandsFor == side && a.Word[0] == 'O').Select(a => a.Word),
        "ear" => Vocabulary.Abbreviations("side").Terms.Where(a => a.StandsFor == side && a.Word[0] == 'A').Select(a => a.Word),
        _ => [],
    };

    /// <summary>The regions nearest to the word's own on the map of the body.</summary>
    private static IEnumerable<Region> Near(LineWord word, Region[] regions) => Sides.OwnRegion(word) is not { } own ? [] : regions
        .Where(region => !ReferenceEquals(region, own))
        .OrderBy(region => Math.Abs(region.X - own.X) + Math.Abs(region.Y - own.Y))
        .Take(NearPlaces);

    private static bool Exists(Region region, Species species) => species == Species.Unknown || region.Species == "both"
        || region.Species == (species == Species.Dog ? "dog" : "cat");
}
