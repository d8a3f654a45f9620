using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>Words that point elsewhere: the vital of <c>usual</c>, the item of <c>skip</c>, the name of a finding.</summary>
internal static class ReferenceSlots
{
    /// <summary>What comes before everything else, in whatever letters.</summary>
    public static ImmutableArray<SlotReader> First { get; } = [new RuleSlot()];

    public static ImmutableArray<SlotReader> All { get; } = [new ItemSlot(SlotKind.Vital), new ItemSlot(SlotKind.Item)];

    /// <summary>The name of a finding.</summary>
    private sealed class RuleSlot() : SlotReader(SlotKind.Rule)
    {
        public override string Hint(LineWord word) => "the name of a finding, such as lump-sample";

        public override bool BindWord(Cursor at)
        {
            if (at.Holds(Kind) || ScheduleSlots.Starts(at, at.At))
            {
                return false;
            }

            TextSpan span = at.Part.Span;
            at.Add(Kind, new FreeWords(span, span.In(at.Line).ToString().TrimEnd(':').ToLowerInvariant()));
            return at.Taken(TokenKind.Name);
        }
    }

    private sealed class ItemSlot(SlotKind kind) : SlotReader(kind)
    {
        public override string Hint(LineWord word) => Kind == SlotKind.Vital ? "a vital, such as rr" : "what it is about, such as ear";

        public override IEnumerable<string> Spellings(NoteVocabulary vocabulary, LineWord word) =>
            vocabulary.LineWords.Terms.Where(Fits).SelectMany(item => item.Synonyms.Prepend(item.Word));

        public override bool BindWord(Cursor at)
        {
            if (at.Holds(Kind))
            {
                return false;
            }

            int sides = Kind == SlotKind.Item && at.First<Site>() is null ? at.Phrase(at.Vocabulary.Sides, at.At, out _) : 0;
            if (sides > 0 && at.Phrase(at.Vocabulary.LineWords, at.At + sides, out LineWord? part) > 0 && Fits(part!) && SiteSlots.KindOf(part) is not null)
            {
                // "recheck right ear": the side comes before the item
                TextSpan span = at.SpanOf(at.At, sides);
                at.Add(SlotKind.Site, new Site(span, Enum.Parse<Side>(at.Vocabulary.Sides.Find(at.Spaced(at.At, at.At + sides - 1))!.Word, ignoreCase: true), null, null));
                at.Mark(TokenKind.Site, span);
                at.At += sides;
            }
            else if (Kind == SlotKind.Item && at.First<Site>() is null && at.Phrase(at.Vocabulary.Regions, at.At, out Region? region) is > 0 and var places
                && at.Phrase(at.Vocabulary.LineWords, at.At + places, out LineWord? scan) > 0 && scan!.Kind == WordKind.Scan)
            {
                // "recheck belly lump"
                TextSpan span = at.SpanOf(at.At, places);
                at.Add(SlotKind.Site, new Site(span, Side.None, region, null));
                at.Mark(TokenKind.Site, span);
                at.At += places;
            }

            int count = at.Phrase(at.Vocabulary.LineWords, at.At, out LineWord? found);
            ImmutableArray<string> implied = [];
            if ((found is null || !Fits(found)) && at.Vocabulary.Fixed("meal").Find(at.TextOf(at.Part)) is null && at.Phrase(at.Vocabulary.Leads, at.At, out LeadWord? phrase) is > 0 and var words && phrase is { Lines: [var lead], Means: LeadMeans.Plain })
            {
                (found, implied, count) = (at.Vocabulary.LineWords.Find(lead.Word), lead.Words, words);
            }

            if (found is null || !Fits(found))
            {
                return false;
            }

            TextSpan item = at.SpanOf(at.At, count);
            at.Add(Kind, found);
            at.Mark(TokenKind.LineWord, item);
            at.At += count;
            foreach (string word in implied)
            {
                Implied(at, word, item);
            }

            return true;
        }

        private bool Fits(LineWord item) => Kind == SlotKind.Vital
            ? item.Kind == WordKind.Vital
            : item.Kind is WordKind.Vital or WordKind.Exam or WordKind.Scan or WordKind.Care && !item.Has(SlotKind.Medicine);

        private static void Implied(Cursor at, string word, TextSpan span)
        {
            if (at.Get<Site>(SlotKind.Site) is { } before)
            {
                at.SaidTwice(span, before.Name);
            }
            else if (at.Vocabulary.Sides.Find(word) is { } side)
            {
                at.Add(SlotKind.Site, new Site(span, Enum.Parse<Side>(side.Word, ignoreCase: true), null, null));
            }
            else if (at.Vocabulary.States(at.Subject.Word).Find(word) is { } state)
            {
                StateSlots.Keep(at, state, span);
            }
        }
    }
}
