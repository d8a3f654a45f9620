using System.Collections.Immutable;
using System.Globalization;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>Places on the body: sides, regions, numbered glands, teeth. All go into <see cref="SlotKind.Site"/>.</summary>
internal static class SiteSlots
{
    public static ImmutableArray<SlotReader> All { get; } =
    [
        new SiteSlot(SlotKind.Site, null), new SiteSlot(SlotKind.Node, "node"), new SiteSlot(SlotKind.Joint, "joint"), new SiteSlot(SlotKind.Muscle, "muscle"),
        new SiteSlot(SlotKind.Gland, null), new SiteSlot(SlotKind.Tooth, null), new SiteSlot(SlotKind.AnySite, null),
    ];

    /// <summary>The kind of site that a line with this word may hold; null where it holds none.</summary>
    public static SlotKind? KindOf(LineWord? word)
    {
        foreach (Slot slot in word?.Takes ?? [])
        {
            if (slot.Kind is SlotKind.Site or SlotKind.Node or SlotKind.Joint or SlotKind.Muscle or SlotKind.Gland or SlotKind.Tooth)
            {
                return slot.Kind;
            }
        }

        return null;
    }

    /// <summary>The role a region must have to go into the slot; null where any region does.</summary>
    public static string? RoleOf(SlotKind kind) => kind switch { SlotKind.Node => "node", SlotKind.Joint => "joint", SlotKind.Muscle => "muscle", _ => null };

    /// <summary>True where a place starts that the observation cannot hold any more, since it holds another.</summary>
    public static bool StartsSecond(Cursor at) => at.Word.Kind is WordKind.Exam or WordKind.Scan && ComparedSides.Length(at) == 0 && !at.InRemark && !at.Blocked && !IsOtherWord(at)
        && at.Get<Site>(SlotKind.Site) is { } before && KindOf(at.Word) is { } kind && ((SiteSlot)SlotTable.Row(kind)).Here(at) is { } next && !(kind == SlotKind.Tooth && next.Region is not null) && Merged(before, next) is null;

    /// <summary>True for the <c>dirty right</c> of <c>ear clean left, dirty right</c>: a stretch whose signs belong to another place than those before it.</summary>
    public static bool StartsOtherSide(Cursor at)
    {
        if (at.Word.Kind is not (WordKind.Exam or WordKind.Scan) || ComparedSides.Length(at) > 0 || at.Blocked || at.InRemark || !(at.SaysSomething || (at.Holds(SlotKind.Site) && (at.Word.Has(SlotKind.Tooth) || at.Remark.Count > 0)))
            || !(at.StartsSegment(at.At) || (at.Word.Has(SlotKind.Tooth) && at.At > 0 && at.Is(at.At - 1, "and"))))
        {
            return false;
        }

        if (Head.At(at, at.At, out _, first: true) is { Lead: not null } other && other.Word != at.Word)
        {
            // "tartar both sides, gingivitis R"
            return false;
        }

        Site? before = at.Get<Site>(SlotKind.Site);
        if (before is { Side: Side.L or Side.R } && at.Is(at.At, "neither"))
        {
            // "left ear waxy, right ear clean, neither smells"
            return true;
        }

        if (at.Word.Has(SlotKind.Tooth) && before is null)
        {
            return at.Part is NumberPart { Second.Exists: false, First.Unit.Length: 0 } number && IsTooth(at, number);
        }

        if (before is null && at.Word.Word is "eye" or "ear" && at.Filled.All(slot => slot.Value is not Described sign || sign.Sense != Sense.Present || sign.Word.Meanings.All(meaning => meaning.Level == Level.Expected))
            && at.Phrase(at.Vocabulary.Sides, at.At, out FixedWord? own) > 0 && own!.Word is "L" or "R" && SignInStretch(at))
        {
            // "ears clean, left one a bit red"
            return true;
        }

        int behindSign = -1;
        bool scan = at.Word.Kind == WordKind.Scan;
        for (int index = at.At; index < at.Parts.Count && (index == at.At || !at.StartsSegment(index)); index++)
        {
            if (at.Word.Has(SlotKind.Tooth) && behindSign >= 0 && at.Parts[index] is NumberPart tooth && IsTooth(at, tooth))
            {
                // "chip on 104, tartar 108"
                return before!.Name != at.TextOf(tooth).ToString();
            }

            string? side = at.Phrase(at.Vocabulary.Sides, index, out FixedWord? word) > 0 ? word!.Word
                : char.IsUpper(at.TextAt(index)[0]) ? at.Vocabulary.SideShort.Find(at.TextAt(index))?.StandsFor : null;
            if (side is not null && behindSign >= 0)
            {
                return before is null ? !scan && behindSign == index && KindOf(at.Word) is not null : before.Side != Side.None && Enum.Parse<Side>(side, ignoreCase: true) != before.Side;
            }

            behindSign = WordSlots.SignLength(at, index) is > 0 and var length ? index + length : behindSign;
        }

        return false;
    }

    /// <summary>True where a sign stands before the next comma.</summary>
    private static bool SignInStretch(Cursor at)
    {
        for (int index = at.At; index < at.Parts.Count && (index == at.At || !at.StartsSegment(index)); index++)
        {
            if (WordSlots.StartsSign(at, index))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True for the number of a tooth that some species has.</summary>
    public static bool IsTooth(Cursor at, NumberPart part) =>
        int.TryParse(part.First.Digits.In(at.Line), NumberStyles.None, CultureInfo.InvariantCulture, out int number) && at.Vocabulary.IsTooth(number, Species.Unknown);

    /// <summary>True for the right of <c>right now</c> and <c>right after food</c>.</summary>
    private static bool IsOtherWord(Cursor at) => at.Phrase(at.Vocabulary.Small, at.At, out _) > at.Phrase(at.Vocabulary.Sides, at.At, out _) || at.Phrase(at.Vocabulary.Asides, at.At, out _) > 0;

    /// <summary>Both as one place: the side behind its region, a region behind its side, or the same again. Null where they are two.</summary>
    private static Site? Merged(Site before, Site next) =>
        before.Name == next.Name || (next.Region is null && next.Number is null && next.Side == before.Side) ? before
        : before.Side == Side.None && next.Region is null or { Word: "side" } && next.Number is null ? before with { Side = next.Side }
        : before.Region is { Word: "paw" } && next is { Side: Side.None, Number: null, Region.Sides: SideRule.Four } ? next with { Side = before.Side }
        : before is { Side: Side.None, Region.Sides: SideRule.Four } && next is { Region.Word: "paw", Number: null } ? before with { Side = next.Side }
        : before is { Region: null or { Word: "side" }, Number: null } && next.Side == Side.None && (before.Side is not (Side.Front or Side.Hind) || next.Region?.Sides is SideRule.Four or SideRule.Front or SideRule.Hind) ? next with { Side = before.Side }
        : null;

    private sealed class SiteSlot(SlotKind kind, string? role) : SlotReader(kind)
    {
        public override string Hint(LineWord word) => Kind switch { SlotKind.Tooth => "a tooth, such as 208", SlotKind.Gland => "a gland, such as R-gland3", _ => "a place, such as L-flank" };

        public override IEnumerable<string> Spellings(NoteVocabulary vocabulary, LineWord word) => vocabulary.Sides.Spellings.Concat(Regions(vocabulary));

        public override bool IsFilled(Cursor at) => at.Holds(SlotKind.Site);

        /// <summary>The place that starts at the cursor, which stays where it is; null where none does.</summary>
        public Site? Here(Cursor at)
        {
            (int At, int Tokens, int Problems, int Filled) before = at.Here;
            Site? found = at.Part switch
            {
                NumberPart part when Kind == SlotKind.Tooth && IsBare(part) && IsTooth(at, part) => new Site(part.Span, Side.None, null, int.Parse(at.TextOf(part), CultureInfo.InvariantCulture)),
                { Kind: PartKind.Word } => Read(at, Kind),
                _ => null,
            };
            at.Restore(before);
            return found;
        }

        /// <summary>Reads <c>L-flank</c>, <c>L flank</c>, <c>flank L</c>, <c>L</c>, <c>flank</c>, <c>R-gland3</c>, <c>R3</c>, and OS behind eye.</summary>
        public override bool BindWord(Cursor at)
        {
            SlotKind? kind = Kind != SlotKind.AnySite ? Kind : at.About is null ? SlotKind.Site : KindOf(at.About);
            if (kind is null || at.Blocked || at.InRemark || IsOtherWord(at))
            {
                return false;
            }

            int start = at.At;
            Site? before = at.Get<Site>(SlotKind.Site);
            if (ComparedSides.Length(at) is > 0 and var compared)
            {
                TextSpan both = at.SpanOf(start, compared);
                at.Mark(TokenKind.Text, both);
                at.Remark.Add(both);
                at.Set(SlotKind.Site, before is null ? new Site(both, Side.Both, null, null) : before.Side == Side.None ? before with { Side = Side.Both } : before);
                at.At += compared;
                return true;
            }

            if (Read(at, kind.Value, out TextSpan? where) is not { } site || (kind == SlotKind.Tooth && site.Region is not null && at.Problems.Count == 0 && !site.Span.In(at.Line).Contains('-')))
            {
                at.At = start;
                return false;
            }

            Site? merged = before is null ? site : at.Word.Kind is WordKind.Exam or WordKind.Scan || before.Span.Start < at.HeadSpan.End ? Merged(before, site) : null;
            if (merged is null)
            {
                at.SaidTwice(site.Span, before!.Name);
                return true;
            }

            at.Mark(TokenKind.Site, site.Span);
            if (where is { } written && at.Word.Has(SlotKind.Note))
            {
                at.Remark.Add(written);
            }

            site = before is null ? site : merged with { Span = TextSpan.Between(Math.Min(before.Span.Start, site.Span.Start), Math.Max(before.Span.End, site.Span.End)) };
            at.Set(SlotKind.Site, site);
            SiteCheck.Check(at, site, kind.Value);
            return true;
        }

        public override bool BindNumber(Cursor at, NumberPart part)
        {
            SlotKind? kind = Kind == SlotKind.AnySite ? KindOf(at.About) : Kind;
            bool tooth = kind == SlotKind.Tooth;
            if (!IsBare(part) || !(tooth || (kind == SlotKind.Gland && GlandNumber(at, at.At) is not null)))
            {
                return false;
            }

            int number = int.TryParse(part.First.Digits.In(at.Line), NumberStyles.None, CultureInfo.InvariantCulture, out int read) ? read : 0;
            if (at.Get<Site>(SlotKind.Site) is { } before)
            {
                at.SaidTwice(part.Span, before.Name);
            }
            else if (tooth && !at.Vocabulary.IsTooth(number, Species.Unknown))
            {
                return at.Refuse(part.Span, ProblemRules.ImpossibleSite,
                    $"`{at.TextOf(part)}` is not a tooth. Teeth have three figures (modified Triadan numbers), such as 104 for the upper right canine.");
            }
            else
            {
                var site = new Site(part.Span, Side.None, tooth ? null : Gland(at), number);
                at.Mark(TokenKind.Site, part.Span);
                at.Add(SlotKind.Site, site);
                if (!tooth)
                {
                    SiteCheck.Check(at, site, SlotKind.Gland);
                }
            }

            at.At++;
            return true;
        }

        private IEnumerable<string> Regions(NoteVocabulary vocabulary) => vocabulary.Regions.Terms
            .Where(region => role is null || region.Roles.Contains(role))
            .SelectMany(region => region.Synonyms.Prepend(region.Word));

        private static bool IsBare(NumberPart part) => part.First.Unit.Length == 0 && !part.Second.Exists && part.BoundSpan.Length == 0;


        private static Region Gland(Cursor at) => at.Vocabulary.Regions.Find("gland")!;

        /// <summary>The gland's number at <paramref name="index"/>: one figure, and no size such as <c>1 cm</c>.</summary>
        private static int? GlandNumber(Cursor at, int index) =>
            index < at.Parts.Count && at.Parts[index] is NumberPart { BoundSpan.Length: 0, Second.Exists: false, First: { Unit.Length: 0, Digits.Length: 1 } } part
                && !Numbers.UnitFollows(at, part, index)
                ? at.TextOf(part)[0] - '0'
                : null;

        /// <summary>Reads a place; the cursor ends behind it. Null where none stands.</summary>
        private static Site? Read(Cursor at, SlotKind kind) => Read(at, kind, out _);

        private static Site? Read(Cursor at, SlotKind kind, out TextSpan? where)
        {
            where = null;
            int first = at.At;
            Side side = Side.None;
            Region? region = null;
            int? number = null;
            while (at.Is(at.At, "on") || at.Is(at.At, "in") || at.Is(at.At, "over") || at.Is(at.At, "his") || at.Is(at.At, "her") || at.Is(at.At, "its") || at.Is(at.At, "the") || at.Is(at.At, "my"))
            {
                // "lump on her right side"; given back when no place follows
                at.At++;
            }

            if (!at.IsWord(at.At))
            {
                return null;
            }

            if (SideAbbreviation(at) is { } short_)
            {
                at.At++;
                return new Site(at.SpanOf(first, at.At - first), short_, null, null);
            }

            int sides = at.Phrase(at.Vocabulary.Sides, at.At, out FixedWord? word);
            if (sides == 2 && at.Vocabulary.Sides.Find(at.TextOf(at.Part)) is { } shorter && at.Phrase(at.Vocabulary.Regions, at.At + 1, out _) > 1 && !(at.Word.Word is "gait" or "limb" && at.IsWord(at.At + 2) && at.Vocabulary.Limbs.Find(at.TextAt(at.At + 2)) is not null))
            {
                // "L back of knee": the back belongs to the place
                (sides, word) = (1, shorter);
            }

            if (sides > 0 && word!.Word is "front" or "hind" && at.Phrase(at.Vocabulary.Regions, at.At, out _) > sides)
            {
                // "front of shoulder" is a place of its own
                sides = 0;
            }

            ReadOnlySpan<char> text = at.TextOf(at.Part);
            if (sides > 0)
            {
                side = Enum.Parse<Side>(word!.Word, ignoreCase: true);
                at.At += sides;
                if (WordSlots.SignLength(at, at.At) > 1)
                {
                    // "gait R toe touching": the toe belongs to what was seen
                }
                else if (at.IsWord(at.At))
                {
                    if (at.Is(at.At, "side") && at.Is(at.At + 1, "of"))
                    {
                        int place = at.At + 2;
                        place += at.Is(place, "the") || at.Is(place, "his") || at.Is(place, "her") || at.Is(place, "its") ? 1 : 0;
                        if (at.Phrase(at.Vocabulary.Sides, place, out FixedWord? second) > 0 && second!.Word is not ("mid" or "both"))
                        {
                            // "the left side of the right leg"
                            at.Report(new Problem(ProblemRules.ImpossibleSite, at.SpanOf(first, place + 1 - first), $"`{at.SpanOf(first, place + 1 - first).In(at.Line)}` names two sides. Write the side of the part, and inner or outer behind it."));
                            at.At = place + 1;
                            return new Site(at.SpanOf(first, place + 1 - first), side, null, null);
                        }

                        if (at.IsWord(place) && at.Phrase(at.Vocabulary.Regions, place, out Region? of) > 0 && of!.Sides is not SideRule.Mid)
                        {
                            // "the left side of her neck"
                            at.At = place;
                        }
                    }

                    if (kind is SlotKind.Site or SlotKind.AnySite && at.Vocabulary.Fixed("where").Find(at.TextOf(at.Part)) is not null && at.IsWord(at.At + 1) && at.OnlyBlanks(at.At, 2)
                        && at.Phrase(at.Vocabulary.Regions, at.At, out _) == 0 && at.Phrase(at.Vocabulary.Regions, at.At + 1, out _) > 0)
                    {
                        // "right inner thigh": which of several, kept as written
                        where = at.Part.Span;
                        at.At++;
                    }

                    if (!RegionHere(at, at.TextOf(at.Part), kind, ref region, ref number) && StartsReason(at, at.At - 1, side))
                    {
                        return null;
                    }
                }
                else if (kind == SlotKind.Gland && GlandNumber(at, at.At) is { } here)
                {
                    (number, region) = (here, Gland(at));
                    at.At++;
                }
            }
            else if (SplitSide(at, text, kind, out side) is > 0 and var length)
            {
                if (!RegionHere(at, text[length..], kind, ref region, ref number))
                {
                    return BadRegion(at, length, kind);
                }
            }
            else if (!RegionHere(at, text, kind, ref region, ref number))
            {
                return null;
            }
            else if (at.HasPart && at.Phrase(at.Vocabulary.Sides, at.At, out FixedWord? behind) is > 0 and var count)
            {
                Side written = Enum.Parse<Side>(behind!.Word, ignoreCase: true);
                if (!StartsReason(at, at.At, written) && !at.StartsSegment(at.At))
                {
                    side = written;
                    at.At += count;
                    at.At += at.Is(at.At, "side") ? 1 : 0;
                    if (region!.Word == "gland" && number is null && GlandNumber(at, at.At) is { } gland)
                    {
                        number = gland;
                        at.At++;
                    }
                }
            }

            if (region is { Sides: not (SideRule.Four or SideRule.Front or SideRule.Hind) } && at.IsWord(at.At) && at.Vocabulary.Limbs.Find(at.TextOf(at.Part)) is not null and not { Word: "side" }
                && sides == 0 && !at.StartsSegment(at.At) && region.Word is "back" or "chest")
            {
                // "wobbly back legs": no place on the back
                return null;
            }

            if (side == Side.None && region?.Word == "back" && at.Word.Word is "limb" or "gait")
            {
                // "back legs wobbly"
                (side, region) = (Side.Hind, null);
            }

            if (side is Side.Front or Side.Hind && !HasTwoPairs(region ?? at.Vocabulary.Regions.Find(at.Word.Word)) && (region is not null || !(at.Word.Word is "gait" or "limb" || at.Parts[at.At - 1].Span.In(at.Line).EndsWith("s", StringComparison.OrdinalIgnoreCase))))
            {
                // "the front of the chest", "front teeth"
                return null;
            }

            if (at.Vocabulary.Limbs.Find(at.HasPart ? at.TextOf(at.Part) : "") is not null && (region is null || region.Sides is SideRule.Four or SideRule.Front or SideRule.Hind)
                && at.IsWord(at.At) && !at.StartsSegment(at.At) && side != Side.None)
            {
                // "limping front left leg": the side says which
                at.At++;
            }

            return new Site(at.SpanOf(first, at.At - first), side, region, number);
        }

        /// <summary>True for what an animal has in front and behind.</summary>
        private static bool HasTwoPairs(Region? region) => region?.Sides is SideRule.Four or SideRule.Front or SideRule.Hind;

        private static Side? SideAbbreviation(Cursor at) => at.First<Site>() is null && (at.About ?? at.Word).Word is "eye" or "ear"
            && at.Vocabulary.SideShort.Find(at.TextOf(at.Part)) is { } abbreviation
                ? Enum.Parse<Side>(abbreviation.StandsFor, ignoreCase: true)
                : null;

        /// <summary>"skip anus left him in peace": <c>left</c> and <c>right</c> with words behind them start the reason.</summary>
        private static bool StartsReason(Cursor at, int index, Side side) =>
            at.Word.Kind == WordKind.Skip && side is Side.L or Side.R && at.Parts[index].Span.Length > 1 && index + 1 < at.Parts.Count;

        /// <summary>The side at the start of a word: up to and with a hyphen (<c>L-</c>, <c>left-front-</c>), or before a digit (<c>R3</c>).</summary>
        private static int SplitSide(Cursor at, ReadOnlySpan<char> text, SlotKind kind, out Side side)
        {
            side = Side.None;
            for (int hyphen = text.LastIndexOf('-'); hyphen > 0; hyphen = text[..hyphen].LastIndexOf('-'))
            {
                if (at.Vocabulary.Sides.Find(text[..hyphen]) is { } before)
                {
                    side = Enum.Parse<Side>(before.Word, ignoreCase: true);
                    return hyphen + 1;
                }
            }

            if (kind is SlotKind.Gland && text.Length == 2 && Scanners.IsDigit(text[1]) && at.Vocabulary.Sides.Find(text[..1]) is { } letter)
            {
                side = Enum.Parse<Side>(letter.Word, ignoreCase: true);
                return 1;
            }

            return 0;
        }

        /// <summary>The region that <paramref name="text"/> (the current part, or its end) names, maybe with parts that follow it.</summary>
        private static bool RegionHere(Cursor at, ReadOnlySpan<char> text, SlotKind kind, ref Region? region, ref int? number)
        {
            if (text.Length == at.TextOf(at.Part).Length && at.Phrase(at.Vocabulary.Regions, at.At, out Region? spoken) is > 1 and var words)
            {
                region = spoken;
                at.At += words;
                return true;
            }

            Region? found = at.Vocabulary.Regions.Find(text, out int longest);
            for (int count = Math.Min(longest, at.Parts.Count - at.At); count > 1; count--)
            {
                if (at.OnlyBlanks(at.At, count) && at.Vocabulary.Regions.Find(text.ToString() + " " + at.Spaced(at.At + 1, at.At + count - 1)) is { } phrase)
                {
                    region = phrase;
                    at.At += count;
                    return true;
                }
            }

            if (found is not null)
            {
                region = found;
                at.At++;
                if (found.Word == "gland" && GlandNumber(at, at.At) is { } next)
                {
                    number = next;
                    at.At++;
                }

                return true;
            }

            int digits = text.Length - text.TrimEnd("0123456789").Length;
            if (digits is 0 or > 3 || !int.TryParse(text[^digits..], NumberStyles.None, CultureInfo.InvariantCulture, out int numbered))
            {
                return false;
            }

            ReadOnlySpan<char> bare = text[..^digits].TrimEnd('-');
            if ((bare.IsEmpty && kind == SlotKind.Gland) || at.Vocabulary.Regions.Find(bare)?.Word == "gland")
            {
                (region, number) = (Gland(at), numbered);
                at.At++;
                return true;
            }

            return false;
        }

        private static Site? BadRegion(Cursor at, int sideLength, SlotKind kind)
        {
            TextSpan part = at.Part.Span;
            var span = TextSpan.Between(part.Start + sideLength, part.End);
            string typed = span.In(at.Line).ToString();
            string? nearest = NearestWord.Find(typed, ((SiteSlot)SlotTable.Row(kind)).Regions(at.Vocabulary));
            at.Report(new Problem(ProblemRules.UnknownWord, span,
                $"`{typed}` is not a place I know. " + (nearest is null ? "Write a region such as flank or knee." : $"Did you mean `{nearest}`?"), nearest));
            at.At++;
            return new Site(part, Side.None, null, null);
        }
    }
}
