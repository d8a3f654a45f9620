using System.Globalization;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <content>Sites: sides, regions, numbered glands, teeth.</content>
internal sealed partial class LineBinder
{
    /// <summary>The kind of site that the line, or the item it points at, may hold.</summary>
    private SlotKind? SiteSlot
    {
        get
        {
            foreach (Slot slot in (Word.Has(SlotKind.AnySite) ? about : Word)?.Takes ?? [])
            {
                if (slot.Kind is SlotKind.Site or SlotKind.Node or SlotKind.Joint or SlotKind.Muscle or SlotKind.Gland or SlotKind.Tooth)
                {
                    return slot.Kind;
                }
            }

            return null;
        }
    }

    /// <summary>Reads <c>L-flank</c>, <c>L flank</c>, <c>flank L</c>, <c>L</c>, <c>flank</c>, <c>R-gland3</c>, <c>R3</c>.</summary>
    private bool BindSite()
    {
        if (SiteSlot is not { } slot)
        {
            return false;
        }

        int first = at;
        TextSpan start = parts[at].Span;
        ReadOnlySpan<char> text = TextOf(parts[at]);
        SplitSide(text, out Side side, out int sideLength);
        Region? region = null;
        int? number = null;
        int tokenCount = tokens.Count;
        if (PhraseLength(vocabulary.Sides, at, out FixedWord? phrase) is > 0 and var sideParts)
        {
            side = Enum.Parse<Side>(phrase!.Word, ignoreCase: true);
            sideLength = text.Length;
            at += sideParts - 1;
        }

        if (sideLength == text.Length)
        {
            at++;
            if (StartsDescribingPhrase(at))
            {
                // "gait R toe touching": the toe belongs to what was seen
            }
            else if (at < parts.Count && parts[at].Kind == PartKind.Word)
            {
                if (!RegionHere(TextOf(parts[at]), slot, ref region, ref number) && StartsReason(at - 1, side))
                {
                    at = first;
                    return false;
                }
            }
            else if (slot == SlotKind.Gland && GlandNumberAt(at) is { } here)
            {
                number = here;
                region = GlandRegion;
                at++;
            }
        }
        else if (!RegionHere(text[sideLength..], slot, ref region, ref number))
        {
            at = first;
            return sideLength > 0 && BadRegion(start, sideLength, slot);
        }
        else if (side == Side.None && at < parts.Count && PhraseLength(vocabulary.Sides, at, out FixedWord? behind) is > 0 and var behindParts)
        {
            Side written = Enum.Parse<Side>(behind!.Word, ignoreCase: true);
            if (!StartsReason(at, written))
            {
                side = written;
                at += behindParts;
            }
        }

        tokens.RemoveRange(tokenCount, tokens.Count - tokenCount);
        var span = TextSpan.Between(start.Start, parts[at - 1].Span.End);
        if (site is not null)
        {
            SaidTwice(span, site.Name);
            return true;
        }

        Mark(TokenKind.Site, span);
        site = new Site(span, side, region, number);
        CheckSide(site, slot);
        return true;
    }

    /// <summary>"skip anus left him in peace": <c>left</c> and <c>right</c> with words behind them start the reason.</summary>
    private bool StartsReason(int index, Side side) =>
        Word.Kind == WordKind.Skip && side is Side.L or Side.R && parts[index].Span.Length > 1 && index + 1 < parts.Count;

    private bool StartsDescribingPhrase(int index) =>
        index < parts.Count && Word.Has(SlotKind.Words) && PhraseLength(vocabulary.Describing(Word.Word), index, out _) > 1;

    private Region GlandRegion => vocabulary.Regions.Find("gland")!;

    /// <summary>The side at the start of a word: up to and with a hyphen (<c>L-</c>, <c>left-front-</c>), or before a digit (<c>R3</c>).</summary>
    private void SplitSide(ReadOnlySpan<char> text, out Side side, out int length)
    {
        side = Side.None;
        length = 0;
        Scope<FixedWord> sides = vocabulary.Sides;
        for (int hyphen = text.LastIndexOf('-'); hyphen > 0; hyphen = text[..hyphen].LastIndexOf('-'))
        {
            if (sides.Find(text[..hyphen]) is { } before)
            {
                side = Enum.Parse<Side>(before.Word, ignoreCase: true);
                length = hyphen + 1;
                return;
            }
        }

        if (SiteSlot == SlotKind.Gland && text.Length == 2 && Scanners.IsDigit(text[1]) && sides.Find(text[..1]) is { } letter)
        {
            side = Enum.Parse<Side>(letter.Word, ignoreCase: true);
            length = 1;
        }
    }

    /// <summary>The region that <paramref name="text"/> (the current part, or its end) names, maybe with parts that follow it.</summary>
    private bool RegionHere(ReadOnlySpan<char> text, SlotKind slot, ref Region? region, ref int? number)
    {
        Region? found = vocabulary.Regions.Find(text, out int longest);
        for (int count = Math.Min(longest, parts.Count - at); count > 1; count--)
        {
            if (BlanksBetween(at, count)
                && vocabulary.Regions.Find(text.ToString() + " " + Spaced(at + 1, at + count - 1)) is { } phrase)
            {
                region = phrase;
                at += count;
                return true;
            }
        }

        if (found is not null)
        {
            region = found;
            at++;
            if (found.Word == "gland" && GlandNumberAt(at) is { } next)
            {
                number = next;
                at++;
            }

            return true;
        }

        int digits = text.Length - text.TrimEnd("0123456789").Length;
        if (digits is 0 or > 3 || !int.TryParse(text[^digits..], NumberStyles.None, CultureInfo.InvariantCulture, out int numbered))
        {
            return false;
        }

        ReadOnlySpan<char> bare = text[..^digits].TrimEnd('-');
        if ((bare.IsEmpty && slot == SlotKind.Gland) || vocabulary.Regions.Find(bare)?.Word == "gland")
        {
            region = GlandRegion;
            number = numbered;
            at++;
            return true;
        }

        return false;
    }

    /// <summary>The gland's number that stands at <paramref name="index"/>: one figure, and no size such as <c>1 cm</c>.</summary>
    private int? GlandNumberAt(int index) =>
        index < parts.Count && parts[index] is NumberPart { BoundSpan.Length: 0, Second.Exists: false, First: { Unit.Length: 0, Digits.Length: 1 } } part
            && !UnitFollows(part, index)
            ? TextOf(part)[0] - '0'
            : null;

    private bool BadRegion(TextSpan part, int sideLength, SlotKind slot)
    {
        Mark(TokenKind.Unknown, part);
        var span = TextSpan.Between(part.Start + sideLength, part.End);
        string typed = span.In(line).ToString();
        string? nearest = NearestWord.Find(typed, RegionSpellings(slot));
        Report(new Problem(ProblemRules.UnknownWord, span,
            $"`{typed}` is not a place known here" + (nearest is null ? "; expected a region such as flank or knee" : $"; did you mean `{nearest}`?"), nearest));
        at++;
        return true;
    }

    private IEnumerable<string> RegionSpellings(SlotKind slot) => vocabulary.Regions.Terms
        .Where(region => RoleOf(slot) is not { } role || region.Roles.Contains(role))
        .SelectMany(region => region.Synonyms.Prepend(region.Word));

    private static string? RoleOf(SlotKind slot) => slot switch
    {
        SlotKind.Node => "node",
        SlotKind.Joint => "joint",
        SlotKind.Muscle => "muscle",
        _ => null,
    };

    private void CheckSide(Site found, SlotKind slot)
    {
        if (found.Region is not { } region)
        {
            return;
        }

        bool fits = region.Sides switch
        {
            SideRule.Mid => found.Side is Side.None or Side.Mid,
            SideRule.Pair => found.Side is Side.None or Side.L or Side.R or Side.Both,
            SideRule.Four => found.Side is not Side.Mid,
            SideRule.Front => found.Side is not (Side.Mid or Side.LH or Side.RH),
            SideRule.Hind => found.Side is not (Side.Mid or Side.LF or Side.RF),
            _ => found.Side is Side.None or Side.L or Side.R or Side.Both or Side.Mid,
        };
        if (!fits)
        {
            string sides = region.Sides switch
            {
                SideRule.Mid => "it lies on the midline, so no side is written",
                SideRule.Four => "expected LF, RF, LH or RH",
                SideRule.Front => "expected L, R or both (or LF, RF)",
                SideRule.Hind => "expected L, R or both (or LH, RH)",
                SideRule.Pair => "expected L, R or both",
                _ => "expected L, R, mid or both",
            };
            Report(new Problem(ProblemRules.ImpossibleSite, found.Span, $"`{found.Span.In(line)}`: there is no such {region.Word}; {sides}"));
        }
        else if (found.Number is { } gland && gland is < 1 or > 5)
        {
            Report(new Problem(ProblemRules.ImpossibleSite, found.Span, $"`{found.Span.In(line)}`: mammary glands are numbered 1 to 5 from the front (1 to 4 in a cat)"));
        }
        else if (RoleOf(slot) is { } role && !region.Roles.Contains(role))
        {
            IEnumerable<string> known = vocabulary.Regions.Terms.Where(r => r.Roles.Contains(role)).Select(r => r.Word).Order(StringComparer.Ordinal);
            Report(new Problem(ProblemRules.ImpossibleSite, found.Span, $"`{region.Word}` is not known as a {role}; known: {string.Join(", ", known)}"));
        }
        else if (slot == SlotKind.Tooth)
        {
            Report(new Problem(ProblemRules.ImpossibleSite, found.Span, $"`{found.Span.In(line)}`: a tooth is named by its number, such as 208, or by its side"));
        }
        else if (slot == SlotKind.Gland && region != GlandRegion)
        {
            Report(new Problem(ProblemRules.ImpossibleSite, found.Span, $"`{found.Span.In(line)}`: a mammary gland is named by its side and number, such as R-gland3"));
        }
    }
}
