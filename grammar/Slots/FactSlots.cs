using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>Small closed lists about the pet: species, sex, birth, units shown.</summary>
internal static class FactSlots
{
    public static ImmutableArray<SlotReader> All { get; } = [new SpeciesSlot(), new SexSlot(), new UnitsSlot(), new BirthSlot()];

    /// <summary>True for the facts that owners write in one breath: species, sex, birth.</summary>
    public static bool IsSignalment(LineWord word) => word.Has(SlotKind.Species) || word.Has(SlotKind.Sex) || word.Has(SlotKind.Birth);

    /// <summary>True for free words that end where another fact about the pet starts: <c>pet Pip, cat, female</c>, <c>breed spaniel, neutered</c>.</summary>
    public static bool EndsAtFact(LineWord word) => word.Word is "breed" or "pet";

    private sealed class SpeciesSlot() : SlotReader(SlotKind.Species)
    {
        public override string Hint(LineWord word) => "dog or cat";

        public override IEnumerable<string> Spellings(NoteVocabulary vocabulary, LineWord word) => vocabulary.Fixed("species").Spellings;

        public override bool BindWord(Cursor at)
        {
            if (at.Holds(Kind) || !at.TakePhrase(at.Vocabulary.Fixed("species"), TokenKind.State, out FixedWord? kind, out TextSpan span))
            {
                return false;
            }

            at.Add(Kind, new SpeciesWord(span, Enum.Parse<Species>(kind!.Word, ignoreCase: true)));
            return true;
        }
    }

    private sealed class SexSlot() : SlotReader(SlotKind.Sex)
    {
        public override string Hint(LineWord word) => "male or female, then maybe neutered or entire";

        public override IEnumerable<string> Spellings(NoteVocabulary vocabulary, LineWord word) => vocabulary.Fixed("sex").Spellings.Concat(vocabulary.Fixed("neuter").Spellings);

        public override bool BindWord(Cursor at)
        {
            if (at.Phrase(at.Vocabulary.Fixed("neuter"), at.At, out FixedWord? phrase) is > 1 and var count)
            {
                // "not spayed yet"
                SexWords before = at.First<SexWords>() ?? new SexWords(null, null);
                Once(at, before.Neutered, at.SpanOf(at.At, count));
                at.Set(Kind, before with { Neutered = before.Neutered ?? phrase!.Word == "neutered" });
                at.Mark(TokenKind.State, at.SpanOf(at.At, count));
                at.At += count;
                return true;
            }

            TextSpan span = at.Part.Span;
            string text = at.TextOf(at.Part).TrimEnd(':').ToString();
            string plain = at.Vocabulary.Abbreviations("sex").Find(text)?.StandsFor ?? text;
            string[] words = plain.Split(' ');
            if (!words.All(word => at.Vocabulary.Fixed("sex").Find(word) is not null || at.Vocabulary.Fixed("neuter").Find(word) is not null))
            {
                return false;
            }

            at.Taken(TokenKind.State);
            SexWords known = at.First<SexWords>() ?? new SexWords(null, null);
            foreach (string word in words)
            {
                if (at.Vocabulary.Fixed("sex").Find(word) is { } sex)
                {
                    Once(at, known.Male, span);
                    known = known with { Male = known.Male ?? sex.Word == "male" };
                }
                else if (at.Vocabulary.Fixed("neuter").Find(word) is { } neuter)
                {
                    Once(at, known.Neutered, span);
                    known = known with { Neutered = known.Neutered ?? neuter.Word == "neutered" };
                }
            }

            at.Set(Kind, known);
            return true;
        }

        private static void Once(Cursor at, bool? before, TextSpan span)
        {
            if (before is not null)
            {
                at.SaidTwice(span);
            }
        }
    }

    private sealed class UnitsSlot() : SlotReader(SlotKind.Units)
    {
        public override string Hint(LineWord word) => "metric or us";

        public override IEnumerable<string> Spellings(NoteVocabulary vocabulary, LineWord word) => vocabulary.Fixed("units").Spellings;

        public override bool BindWord(Cursor at)
        {
            if (at.Holds(Kind) || at.Vocabulary.Fixed("units").Find(at.TextOf(at.Part)) is not { } shown)
            {
                return false;
            }

            at.Add(Kind, shown);
            return at.Taken(TokenKind.State);
        }
    }

    private sealed class BirthSlot() : SlotReader(SlotKind.Birth)
    {
        public override string Hint(LineWord word) => "a date such as 2017-03-08, 2017-03, 2017 or ~2017";

        public override bool BindWord(Cursor at)
        {
            int about = at.Phrase(at.Vocabulary.Bounds, at.At, out FixedWord? bound) is > 0 and var words && bound!.Word == "about" ? words : 0;
            int season = at.Vocabulary.Fixed("season").Find(at.HasPart && at.IsWord(at.At + about) ? at.TextAt(at.At + about) : "") is not null ? 1 : 0;
            if (!Dates.Starts(at, at.At + about + season))
            {
                return false;
            }

            TextSpan from = at.Part.Span;
            if (season > 0)
            {
                // "spring 2012": about the year
                at.Mark(TokenKind.Keyword, at.Parts[at.At + about].Span);
                about++;
            }

            at.At += about;
            PartialDate? date = Dates.Take(at);
            ScheduleSlots.Once(at, Kind, (about > 0 || at.BoundInWords == Bound.About) && date is not null ? date with { About = true } : date, from);
            return true;
        }

        public override bool BindNumber(Cursor at, NumberPart part) => BindWord(at)
            || at.Refuse(part.Span, ProblemRules.BadDate, $"`{at.TextOf(part)}` is not a date. Write year-month-day, such as 2017-03-08, 2017-03 or ~2017.");
    }
}
