using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>Names in free words: a medicine, a food, what falls due, what a laboratory measured. A name ends where a value, a time or a state starts.</summary>
internal static class NameSlots
{
    public static ImmutableArray<SlotReader> All { get; } =
        [new NameSlot(SlotKind.Medicine), new NameSlot(SlotKind.FoodName), new NameSlot(SlotKind.Topic), new NameSlot(SlotKind.Analyte)];

    /// <summary>True when some word of the name is one of a medicine that is known, or of a kind of medicine.</summary>
    public static bool IsMedicine(NoteVocabulary vocabulary, string name)
    {
        string[] words = name.Split(' ');
        return vocabulary.Medicines.Find(name) is not null || words.Any(word => vocabulary.Medicines.Find(word) is not null || IsForm(vocabulary, word))
            || Enumerable.Range(0, words.Length - 1).Any(index => vocabulary.Medicines.Find($"{words[index]} {words[index + 1]}") is not null);
    }

    /// <summary>True for words that name no medicine, however they stand: ordinary words and those of the notes themselves.</summary>
    public static bool IsOrdinary(NoteVocabulary vocabulary, string word) =>
        vocabulary.Everyday.Find(word) is not null || vocabulary.LineWords.Find(word) is { Kind: not WordKind.Fact } || vocabulary.Small.Find(word) is not null
        || vocabulary.Before.Find(word) is not null || vocabulary.IsDescribing(word);

    private static bool IsForm(NoteVocabulary vocabulary, string word) => vocabulary.Units.Find(word) is { Quantity: Quantity.Dose };

    private sealed class NameSlot(SlotKind kind) : SlotReader(kind)
    {
        public override string Hint(LineWord word) => Kind switch
        {
            SlotKind.Medicine => "the medicine's name",
            SlotKind.Topic => "what falls due",
            SlotKind.Analyte => "what was measured, such as creatinine",
            _ => "",
        };

        public override bool BindWord(Cursor at)
        {
            bool goesOn = Kind == SlotKind.Topic && at.First<FreeWords>() is { } implied && implied.Span == at.HeadSpan && at.HeadSpan.Length > 0 && at.First<Schedule>() is null && at.Word.Kind == WordKind.Task;
            if (goesOn && (at.Is(at.At, "due") || (at.Is(at.At + 1, "due") && (at.Is(at.At, "is") || at.Is(at.At, "are")))))
            {
                // "heart scan is due on 12 Dec"
                return at.Taken(TokenKind.Filler);
            }

            if ((at.First<FreeWords>() is not null && !goesOn) || at.Blocked || StartsSomething(at, at.At) || WordSlots.StartsSign(at, at.At)
                || Modifiers.At(at, at.At) is not null
                || (Kind is SlotKind.Medicine or SlotKind.Topic && (at.Phrase(at.Vocabulary.Small, at.At, out _) > 0 || IsGiven(at, at.At)))
                || (at.Word.Has(SlotKind.Amount) && StartsAmount(at, at.At)))
            {
                return false;
            }

            int stop = at.At + 1;
            while (stop < at.Parts.Count && (at.Parts[stop].Kind == PartKind.Word || Numbers.IsOrdinal(at, at.Parts[stop])) && !StartsSomething(at, stop)
                && !IsGiven(at, stop) && Modifiers.At(at, stop) is null
                && !(Kind == SlotKind.FoodName && at.Phrase(at.Vocabulary.Ok, stop, out _) is > 0 and var ok && !at.IsWord(stop + ok))
                && !(Kind == SlotKind.Medicine && (at.StartsSegment(stop) || Dates.Month(at.TextAt(stop)) is not null)))
            {
                stop++;
            }

            int last = stop - 1;
            if (Kind == SlotKind.Medicine && at.Word.Kind == WordKind.Care && FirstKnown(at, stop) is { } own)
            {
                // "evening insulin", "other dog's carprofen": the medicine is the one that is known, what stands before it is kept as written
                if (own > at.At)
                {
                    var ahead = TextSpan.Between(at.Part.Span.Start, at.Parts[own - 1].Span.End);
                    if (at.Is(at.At, "to") || at.Is(at.At, "whether") || at.Is(at.At, "if"))
                    {
                        at.Report(new Problem(ProblemRules.WrongValue, ahead, $"`{ahead.In(at.Line)}`: was a dose given or not? Write gave or missed, and the medicine."));
                    }

                    at.Remark.Add(ahead);
                    at.Mark(TokenKind.Text, ahead);
                    at.At = own;
                }

                last = at.At + KnownLength(at, Math.Min(stop, at.At + at.Phrase(at.Vocabulary.Medicines, at.At, out _) + 1)) - 1;
            }
            else if (Kind == SlotKind.Medicine)
            {
                int known = KnownLength(at, stop);
                bool valueFollows = stop < at.Parts.Count && at.Parts[stop].Kind == PartKind.Number && at.OnlyBlanks(stop - 1, 2);
                bool whole = known == 0 || (at.Word.Kind == WordKind.Fact && stop < at.Parts.Count && (valueFollows || StartsSomething(at, stop))
                    && !Enumerable.Range(at.At + known, stop - at.At - known).Any(index => at.Phrase(at.Vocabulary.Small, index, out _) > 0));
                last = !whole ? at.At + known - 1
                    : valueFollows || at.Word.Kind == WordKind.Fact || stop == at.At + 1 || StartsSomething(at, Math.Min(stop, at.Parts.Count - 1)) ? last
                    : at.At;
            }

            TextSpan span = TextSpan.Between(at.Part.Span.Start, at.Parts[last].Span.End);
            at.Mark(TokenKind.Name, span);
            at.Set(Kind, goesOn ? new FreeWords(TextSpan.Between(at.HeadSpan.Start, span.End), at.WithSingleBlanks(TextSpan.Between(at.HeadSpan.Start, span.End))) : new FreeWords(span, at.WithSingleBlanks(span)));
            at.At = last + 1;
            return true;
        }

        public override bool BindNumber(Cursor at, NumberPart part) => Numbers.IsOrdinal(at, part) && !IsStones(at, part) && BindWord(at);

        /// <summary>Where the first known medicine stands before <paramref name="stop"/>; null where none does.</summary>
        private static int? FirstKnown(Cursor at, int stop)
        {
            for (int index = at.At; index < stop; index++)
            {
                if (at.Phrase(at.Vocabulary.Medicines, index, out MedicineName? known) > 0)
                {
                    // the tablet of "thyroid tablet" names nothing by itself
                    return index > at.At && (known!.Word == "meds" || at.Is(index - 1, "human")) ? null : index;
                }
            }

            return null;
        }

        /// <summary>True for the <c>1st</c> of <c>food 1st ok</c>, an amount: no word follows that it could count.</summary>
        private bool IsStones(Cursor at, NumberPart part) => Kind == SlotKind.FoodName && part.First.Unit.In(at.Line) is "st"
            && (!at.IsWord(at.At + 1) || at.StartsSegment(at.At + 1) || at.Phrase(at.Vocabulary.Ok, at.At + 1, out _) > 0 || WordSlots.StartsSign(at, at.At + 1) || at.Phrase(at.Vocabulary.TimesWords, at.At + 1, out _) > 0);

        /// <summary>How many parts, up to <paramref name="stop"/>, end with the last word of a known medicine or its form: <c>thyroid tablets</c>; 0 where none is.</summary>
        private static int KnownLength(Cursor at, int stop)
        {
            int known = 0;
            for (int index = at.At; index < stop; index++)
            {
                int count = at.Phrase(at.Vocabulary.Medicines, index, out _);
                if (count > 0)
                {
                    known = Math.Min(index + count, stop) - at.At;
                    index += count - 1;
                }
                else if (known > 0 && index == at.At + known && at.Vocabulary.Units.Find(at.TextAt(index)) is { Quantity: Quantity.Dose })
                {
                    known++;
                }
            }

            return known;
        }

        /// <summary>True where a schedule, a state, a route, an amount in words or a result starts, so that a name ends before it.</summary>
        private static bool StartsSomething(Cursor at, int index)
        {
            if (!at.IsWord(index))
            {
                return false;
            }

            bool schedule = at.Word.Has(SlotKind.Schedule) || at.Word.Has(SlotKind.Validity);
            return (schedule && ScheduleSlots.Starts(at, index))
                || (at.Word.Has(SlotKind.Medicine) && at.Phrase(at.Vocabulary.Fixed("dose-change"), index, out _) > 0)
                || at.Phrase(at.Vocabulary.States(StateSlots.ScopeOf(at)), index, out _) > 0
                || (at.Word.Has(SlotKind.Route) && at.Vocabulary.RouteShort.Find(at.TextAt(index)) is not null)
                || (at.Word.Has(SlotKind.LabValue) && SlotTable.Row(SlotKind.LabValue).Spellings(at.Vocabulary, at.Word).Any(word => at.Is(index, word)))
                || (at.Word.Has(SlotKind.Amount) && index > at.At && StartsAmount(at, index));
        }

        private static bool StartsAmount(Cursor at, int index) => CountSlots.NumberWord(at, index, out int count) is not null
            && at.IsWord(index + count) && (at.Is(index + count, "a") || at.Is(index + count, "of") || at.Vocabulary.Units.Find(at.TextAt(index + count)) is { Quantity: Quantity.Dose });

        /// <summary>True for the <c>given</c> of an act, which says no more than the line does.</summary>
        private static bool IsGiven(Cursor at, int index) => at.Word.Kind == WordKind.Act
            && (at.Vocabulary.DoseEvents.Find(at.TextAt(index)) is { Word: "gave" } || at.Is(index, "due") || at.Is(index, "today"));
    }
}
