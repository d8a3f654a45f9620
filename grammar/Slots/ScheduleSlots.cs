using System.Globalization;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>Times of plans and tasks: every, for, in, from, until, on, at; and who said so, and when.</summary>
internal static class ScheduleSlots
{
    private const int SecondsADay = 86_400;

    private static readonly string[] Words = ["every", "for", "in", "from", "since", "until", "till", "to", "on", "by", "at", "starting"];

    public static SlotReader Schedule { get; } = new ScheduleSlot(SlotKind.Schedule);

    /// <summary>The same words behind an act: when it was done, and for how long it holds.</summary>
    public static SlotReader Validity { get; } = new ScheduleSlot(SlotKind.Validity);

    public static SlotReader Per { get; } = new PerSlot();

    public static SlotReader Since { get; } = new SinceSlot();

    /// <summary>
    /// True where a schedule starts, so that a name ends before it. What falls due is free words, so there a joining word needs a
    /// number or a unit behind it: <c>due trip to vet in 2w</c>.
    /// </summary>
    public static bool Starts(Cursor at, int index)
    {
        if (!at.IsWord(index))
        {
            return false;
        }

        if ((at.Word.Kind == WordKind.Task && at.Phrase(at.Vocabulary.Fixed("ahead"), index, out _) > 0) || Dates.Starts(at, index, yearless: true) || IntervalWords.Short(at, index) is not null || IntervalWords.Daily(at, index, out _) is not null || IntervalWords.EveryAbbreviation(at.TextAt(index), out _))
        {
            return true;
        }

        ReadOnlySpan<char> text = at.TextAt(index);
        bool known = false;
        foreach (string word in Words)
        {
            known |= text.Equals(word, StringComparison.OrdinalIgnoreCase);
        }

        known &= !(at.Word.Has(SlotKind.Medicine) && text.Equals("to", StringComparison.OrdinalIgnoreCase)) || Dates.Starts(at, index + 1, yearless: true);
        bool length = text is "x" or "X" && at.First<FreeWords>() is not null && index + 1 < at.Parts.Count && at.Parts[index + 1] is NumberPart;
        return length || known && (!(at.Word.Has(SlotKind.Topic) || at.Word.Has(SlotKind.Note)) || index + 1 >= at.Parts.Count || at.Parts[index + 1].Kind == PartKind.Number
            || (CountSlots.NumberWord(at, index + 1, out int number) is not null && (number == 0 || index + 1 + number >= at.Parts.Count || at.Vocabulary.Units.Find(at.TextAt(index + 1 + number)) is { Quantity: Quantity.Time }))
            || at.Vocabulary.Units.Find(at.TextAt(index + 1)) is { Quantity: Quantity.Time } || Dates.Month(at.TextAt(index + 1)) is not null
            || text.Equals("every", StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>True for the <c>for 14 days</c> of a plan that has its interval: <c>BID 30min before food for 14 days</c>.</summary>
    public static bool LengthAhead(Cursor at, int index) => at.Word.Kind == WordKind.Fact && at.Word.Has(SlotKind.Medicine) && at.First<Schedule>() is { Every: not null, For: null }
        && at.Is(index, "for") && index + 1 < at.Parts.Count && at.Parts[index + 1] is NumberPart;

    /// <summary>Keeps what was found; the same again is harmless, something else is reported.</summary>
    public static void Once(Cursor at, SlotKind kind, object? found, TextSpan from)
    {
        object? before = at.Get<object>(kind);
        if (found is null)
        {
            return;
        }

        if (before is null)
        {
            at.Add(kind, found);
        }
        else if (!before.Equals(found))
        {
            at.SaidTwice(TextSpan.Between(from.Start, Math.Max(from.End, at.Parts[at.At - 1].Span.End)));
        }
    }

    private sealed class ScheduleSlot(SlotKind kind) : SlotReader(kind)
    {
        public override string Hint(LineWord word) => word.Word switch
        {
            "home-check" => "how often, such as every 30d",
            "accept" or "expect" => "until when, such as until 2027-03-01",
            "recheck" or "due" => "when, such as in 2w or 2026-11-01",
            _ when Kind == SlotKind.Validity => "how long it holds, such as for 3y or every 12w",
            _ => "times, such as every 12h",
        };

        public override IEnumerable<string> Spellings(NoteVocabulary vocabulary, LineWord word) => Words;

        public override bool IsFilled(Cursor at)
        {
            Schedule schedule = at.First<Schedule>() ?? Items.Schedule.None;
            return at.Word.Word is "accept" or "expect" ? schedule.Until is not null
                : at.Word.Word == "home-check" ? schedule.Every is not null
                : schedule.NamesDay || schedule.Every is not null;
        }

        public override bool BindWord(Cursor at)
        {
            if (IntervalWords.Short(at, at.At) is { } abbreviation && !at.Is(at.At + 1, "of"))
            {
                TextSpan span = at.Part.Span;
                at.Taken(TokenKind.Keyword);
                TimesBehind(at);
                StandsFor(at, abbreviation.StandsFor, span);
                return true;
            }

            if (IntervalWords.Daily(at, at.At, out int count) is { } interval)
            {
                Take(at, count, interval);
                return true;
            }

            if (at.Word.Has(SlotKind.Medicine) && at.TakePhrase(at.Vocabulary.Fixed("day-part"), TokenKind.Keyword, out _, out TextSpan part))
            {
                // "at bedtime": once a day; "every morning and every night": twice. Which part of the day is kept as it is written
                int parts = 1 + at.Remark.Count(span => at.Vocabulary.Fixed("day-part").Find(at.WithSingleBlanks(span)) is not null);
                if (at.First<Schedule>()?.Every is null || parts > 1)
                {
                    Update(at, schedule => schedule with { Every = parts == 1 || schedule.Every is { Number: 24 } ? new Amount(24 / parts, at.Vocabulary.Units.Find("h")!) : schedule.Every });
                }

                at.Remark.Add(part);
                return true;
            }

            if (IntervalWords.Lasting(at) is { } lasting)
            {
                TextSpan span = at.Part.Span;
                at.Taken(TokenKind.Keyword);
                Update(at, schedule => schedule with { For = Once(at, schedule.For, lasting, span) });
                return true;
            }

            if (IntervalWords.EveryAbbreviation(at.TextOf(at.Part), out int digits))
            {
                return Every(at, digits);
            }

            if (at.Word.Kind == WordKind.Task && at.TakePhrase(at.Vocabulary.Fixed("ahead"), TokenKind.Value, out FixedWord? ahead, out TextSpan when))
            {
                var wait = new Amount(ahead!.Word[0] - '0', at.Vocabulary.Units.Find(ahead.Word.AsSpan(1))!);
                Update(at, schedule => schedule with { In = Once(at, schedule.In, wait, when) });
                return true;
            }

            return Day(at) || (Starts(at, at.At) && !at.StateAhead() && Joined(at));
        }

        public override bool BindNumber(Cursor at, NumberPart part)
        {
            if (IntervalWords.Parts(at, part) is { } daily)
            {
                Take(at, 1, daily);
                return true;
            }

            if (at.Word.Has(SlotKind.Medicine) && at.First<Schedule>()?.Every is not null && part is { Third.Exists: false, First: { Digits.Length: 4, Unit.Length: 0 }, Second: { Digits.Length: 4, Unit.Length: 0 } } && part.Second.Sign(at.Line) == '/')
            {
                // "q12h 0700/1900": says no more than the interval does
                return at.Taken(TokenKind.Time);
            }

            if (IntervalWords.TimesADay(at, part, out int count) is { } times)
            {
                Take(at, count, times);
                return true;
            }

            count = 1;
            if (at.Word.Kind == WordKind.Fact && at.Word.Has(SlotKind.Medicine) && at.First<Schedule>() is { Every: not null, For: null } && (IntervalWords.Sevenths(at, part) ?? IntervalWords.BareLength(at, part, out count)) is { Unit.Factor: >= SecondsADay } lasting)
            {
                // "BID 5/7", "twice a day 10 days"
                TextSpan span = at.SpanOf(at.At, count);
                at.Mark(TokenKind.Value, span);
                at.At += count;
                Update(at, schedule => schedule with { For = lasting });
                return true;
            }

            if (at.Word.Kind == WordKind.Task && IntervalWords.BareLength(at, part, out int length) is not null && (at.Is(at.At + length, "post") || at.Is(at.At + length, "post-op") || at.Is(at.At + length, "after")))
            {
                // "8wk post op": counted from another day than that of the entry
                int date = at.At + length;
                while (date < at.Parts.Count && !Dates.Starts(at, date, yearless: true))
                {
                    date++;
                }

                TextSpan counted = at.SpanOf(at.At, date - at.At);
                if (date == at.Parts.Count)
                {
                    return at.Refuse(counted, ProblemRules.BadDate, $"`{counted.In(at.Line)}`: which day is that? Write the day, such as 2026-11-01, or how long from today, such as in 2w.");
                }

                at.Remark.Add(counted);
                at.Mark(TokenKind.Text, counted);
                at.At = date;
                return true;
            }

            count = 1;
            if ((at.Word.Kind is WordKind.Task or WordKind.Act) && at.First<Schedule>() is not { NamesDay: true }
                && ((at.TextOf(part).EndsWith("/52") ? IntervalWords.Sevenths(at, part) : null) ?? IntervalWords.BareLength(at, part, out count)) is { } bare)
            {
                TextSpan span = at.SpanOf(at.At, count);
                at.Mark(TokenKind.Value, span);
                at.At += count;
                Update(at, schedule => at.Word.Kind == WordKind.Act
                    ? schedule with { For = Once(at, schedule.For, bare, span) }
                    : schedule with { In = Once(at, schedule.In, bare, span) });
                return true;
            }

            if (at.Word.Kind == WordKind.Task && at.First<Schedule>() is { NamesDay: true, At: null } && TimeReader.Within(at, at.At, out count) is { } time)
            {
                TextSpan span = at.SpanOf(at.At, count);
                at.Mark(TokenKind.Time, span);
                at.At += count;
                Update(at, schedule => schedule with { At = Once(at, schedule.At, time, span) });
                return true;
            }

            return Day(at) || Dates.Refuse(at, part);
        }

        /// <summary>A day, with or without its year: <c>2026-11-09</c>, <c>Nov 9</c>.</summary>
        private static bool Day(Cursor at)
        {
            if (!Dates.Starts(at, at.At, yearless: true))
            {
                return false;
            }

            TextSpan from = at.Part.Span;
            PartialDate? date = Dates.Take(at, yearless: true);
            Update(at, schedule => schedule with { On = Once(at, schedule.On, date, from) });
            return true;
        }

        /// <summary>Takes so many parts that say how often, and the times of day behind them.</summary>
        private static void Take(Cursor at, int count, string interval)
        {
            TextSpan span = at.SpanOf(at.At, count);
            at.Mark(TokenKind.Keyword, span);
            at.At += count;
            TimesBehind(at);
            StandsFor(at, "every " + interval, span);
        }

        /// <summary>The clock times behind <c>8am and 8pm</c>, which say no more than the interval does; one alone is kept.</summary>
        private static void TimesBehind(Cursor at)
        {
            TimeOnly? first = null;
            bool several = false;
            TextSpan from = default;
            while (at.HasPart)
            {
                int index = at.At + (at.Is(at.At, "and") || at.Is(at.At, "&") ? 1 : 0);
                if (TimeReader.Within(at, index, out int count) is not { } time)
                {
                    break;
                }

                several = first is not null;
                first ??= time;
                from = at.SpanOf(at.At, index + count - at.At);
                at.Mark(TokenKind.Time, from);
                at.At = index + count;
            }

            if (first is not null && !several)
            {
                Update(at, schedule => schedule with { At = Once(at, schedule.At, first, from) });
            }
        }

        private static bool Every(Cursor at, int digits)
        {
            TextSpan span = at.Part.Span;
            ReadOnlySpan<char> text = at.TextOf(at.Part);
            ReadOnlySpan<char> unitText = text[(digits + 1)..];
            if (at.Vocabulary.Units.Find(unitText) is not { Quantity: Quantity.Time } unit)
            {
                at.Report(new Problem(ProblemRules.WrongUnit, TextSpan.Between(span.Start + digits + 1, span.End), $"`{unitText}` is not a unit of time. Use h, d, w or mo, as in q12h."));
                return at.Taken(TokenKind.Unknown);
            }

            string[] ends = text.Slice(1, digits).ToString().Split('-', '–');
            if (ends.Length > 2 || !decimal.TryParse(ends[0], NumberStyles.None, CultureInfo.InvariantCulture, out decimal number) || number == 0
                || !decimal.TryParse(ends[^1], NumberStyles.None, CultureInfo.InvariantCulture, out decimal last) || last < number)
            {
                return at.Refuse(span, ProblemRules.BadNumber, NoInterval(at, span));
            }

            at.Taken(TokenKind.Keyword);
            Update(at, schedule => schedule with
            {
                Every = Once(at, schedule.Every, new Amount(number, unit), span),
                EveryTo = ends.Length == 2 ? new Amount(last, unit) : schedule.EveryTo,
            });
            return true;
        }

        private static bool Joined(Cursor at)
        {
            TextSpan keyword = at.Part.Span;
            string word = at.TextOf(at.Part).ToString().ToLowerInvariant();
            at.Taken(TokenKind.Keyword);
            switch (word)
            {
                case "every":
                    Amount? last = null;
                    Amount? every = SpanOfTime(at, keyword, "every 12h", interval: true, ref last);
                    TimesBehind(at);
                    Update(at, schedule => schedule with { Every = Once(at, schedule.Every, every, keyword), EveryTo = last ?? schedule.EveryTo });
                    break;
                case "for" or "x":
                    Amount? length = SpanOfTime(at, keyword, "for 7d");
                    Update(at, schedule => schedule with { For = Once(at, schedule.For, length, keyword) });
                    break;
                case "in" when at.HasPart && Dates.Starts(at, at.At, yearless: true):
                    // "blood test in December"
                    TextSpan named = at.Part.Span;
                    PartialDate? month = Dates.Take(at, yearless: true);
                    Update(at, schedule => schedule with { On = Once(at, schedule.On, month, named) });
                    break;
                case "in":
                    Amount? ahead = SpanOfTime(at, keyword, "in 2w");
                    Update(at, schedule => schedule with { In = Once(at, schedule.In, ahead, keyword) });
                    break;
                case "from" or "since" or "starting" when at.TakePhrase(at.Vocabulary.Fixed("from-now"), TokenKind.Text, out _, out TextSpan now):
                    // "from tonight": the day of its entry
                    at.Remark.Add(TextSpan.Between(keyword.Start, now.End));
                    break;
                case "from" or "since" or "starting":
                    PartialDate? from = DateAfter(at, keyword, "from 2026-10-20");
                    Update(at, schedule => schedule with { From = Once(at, schedule.From, from, keyword) });
                    break;
                case "at":
                    AtTimes(at, keyword);
                    break;
                case "on" or "by":
                    PartialDate? on = DateAfter(at, keyword, "on 2026-10-20");
                    Update(at, schedule => schedule with { On = Once(at, schedule.On, on, keyword) });
                    break;
                default:
                    PartialDate? until = DateAfter(at, keyword, "until 2026-10-20");
                    Update(at, schedule => schedule with { Until = Once(at, schedule.Until, until, keyword) });
                    break;
            }

            return true;
        }

        /// <summary>One time of day, or several that make an interval: <c>at 8am and 8pm</c>.</summary>
        private static void AtTimes(Cursor at, TextSpan keyword)
        {
            List<TimeOnly> times = [];
            while (at.HasPart)
            {
                int index = at.At + (times.Count > 0 && (at.Is(at.At, "and") || at.Is(at.At, "&")) ? 1 : 0);
                if (times.Count > 0 && (at.Is(index, "one") || at.Is(index, "again")) && at.Is(index + 1, "at"))
                {
                    // "one at 07:00 and one at 19:00"
                    index++;
                }

                index += times.Count > 0 && at.Is(index, "at") ? 1 : 0;
                if (TimeReader.Within(at, index, out int count) is not { } time
                    && !(index < at.Parts.Count && at.Parts[index] is NumberPart { First.Unit.Length: 0, Second.Exists: false } bare && (count = 1) == 1
                        && TimeReader.Read(at.TextOf(bare), hourAlone: true) is { } hour && (time = hour) == hour))
                {
                    break;
                }

                at.Mark(TokenKind.Time, at.SpanOf(at.At, index + count - at.At));
                at.At = index + count;
                times.Add(time);
            }

            if (times.Count == 0)
            {
                if (at.HasPart && at.Part is NumberPart)
                {
                    at.Report(new Problem(ProblemRules.BadTime, at.Part.Span, $"`{at.TextOf(at.Part)}` is not a time of day. Write hours and minutes, such as 07:30 or 6:05pm."));
                    at.Taken(TokenKind.Unknown);
                }
                else
                {
                    Missing(at, keyword, "at 08:00");
                }

                return;
            }

            Update(at, schedule => times.Count == 1
                ? schedule with { At = Once(at, schedule.At, times[0], keyword) }
                : schedule with { Every = Once(at, schedule.Every, new Amount(24 / times.Count, at.Vocabulary.Units.Find("h")!), keyword) });
        }

        private static void StandsFor(Cursor at, string standsFor, TextSpan span)
        {
            if (standsFor.StartsWith("every ", StringComparison.Ordinal))
            {
                ReadOnlySpan<char> interval = standsFor.AsSpan(6);
                int digits = interval.IndexOfAnyExceptInRange('0', '9');
                var every = new Amount(decimal.Parse(interval[..digits], CultureInfo.InvariantCulture), at.Vocabulary.Units.Find(interval[digits..])!);
                Update(at, schedule => schedule with { Every = Once(at, schedule.Every, every, span) });
            }
            else if (at.Vocabulary.States(StateSlots.ScopeOf(at)).Find(standsFor) is { } manner)
            {
                StateSlots.Keep(at, manner, span);
            }
        }

        private static void Update(Cursor at, Func<Schedule, Schedule> change)
        {
            SlotKind kind = at.Word.Has(SlotKind.Validity) ? SlotKind.Validity : SlotKind.Schedule;
            at.Set(kind, change(at.First<Schedule>() ?? Items.Schedule.None));
        }

        private static T Once<T>(Cursor at, T before, T found, TextSpan from)
        {
            if (before is null || found is null)
            {
                return found ?? before;
            }

            if (!EqualityComparer<T>.Default.Equals(before, found))
            {
                at.SaidTwice(TextSpan.Between(from.Start, Math.Max(from.End, at.Parts[at.At - 1].Span.End)));
            }

            return before;
        }

        private static string NoInterval(Cursor at, TextSpan span) => $"`{span.In(at.Line)}` is not an interval. Write every 12h, every 2 days.";

        private static Amount? SpanOfTime(Cursor at, TextSpan keyword, string example)
        {
            Amount? none = null;
            return SpanOfTime(at, keyword, example, interval: false, ref none);
        }

        /// <summary>A length of time behind a keyword: <c>12h</c>, <c>2 weeks</c>, <c>day</c>, <c>other day</c>, <c>8-12h</c>.</summary>
        private static Amount? SpanOfTime(Cursor at, TextSpan keyword, string example, bool interval, ref Amount? last)
        {
            decimal number = 1;
            int index = at.At;
            if (interval && at.Phrase(at.Vocabulary.Fixed("every-nth"), index, out FixedWord? nth) > 0 && at.IsWord(index + 1) && at.Vocabulary.Units.Find(at.TextAt(index + 1)) is { Quantity: Quantity.Time })
            {
                number = decimal.Parse(nth!.Word, CultureInfo.InvariantCulture);
                index++;
            }
            else if (CountSlots.NumberWord(at, index, out int words) is { Over: 1 } written)
            {
                number = written.Number;
                index += words;
            }

            if (at.IsWord(index) && at.Vocabulary.Units.Find(at.TextAt(index)) is { Quantity: Quantity.Time } single)
            {
                at.Mark(TokenKind.Value, at.SpanOf(at.At, index + 1 - at.At));
                at.At = index + 1;
                return new Amount(number, single);
            }

            if (at.HasPart && at.Part is NumberPart weeks && IntervalWords.Sevenths(at, weeks) is { } clinical)
            {
                // "in 4/52"
                at.Taken(TokenKind.Value);
                return clinical;
            }

            if (!at.HasPart || at.Part is not NumberPart { Third.Exists: false } part || at.Digits(part.First.Digits) is not { } first
                || (part.Second.Exists && !(interval && part.Second.Sign(at.Line) == '-')))
            {
                return Missing(at, keyword, example);
            }

            Operand end = part.Second.Exists ? part.Second : part.First;
            bool apart = end.Unit.Length == 0 && at.IsWord(at.At + 1) && at.Vocabulary.Units.Find(at.TextAt(at.At + 1)) is not null;
            TextSpan unitSpan = apart ? at.Parts[at.At + 1].Span : end.Unit;
            var span = TextSpan.Between(part.Span.Start, Math.Max(part.Span.End, unitSpan.End));
            decimal to = part.Second.Exists ? at.Digits(part.Second.Digits) ?? -1 : first;
            if (unitSpan.Length == 0 || at.Vocabulary.Units.Find(unitSpan.In(at.Line)) is not { Quantity: Quantity.Time } unit)
            {
                at.Mark(TokenKind.Unknown, part.Span);
                at.At++;
                at.Report(new Problem(unitSpan.Length == 0 ? ProblemRules.MissingUnit : ProblemRules.WrongUnit, unitSpan.Length == 0 ? part.Span : unitSpan,
                    $"`{part.Span.In(at.Line)}` needs a unit of time (min, h, d, w, mo or y), as in {example}"));
                return null;
            }

            at.At += apart ? 2 : 1;
            if (to < first || (interval && first == 0))
            {
                at.Mark(TokenKind.Unknown, span);
                at.Report(new Problem(ProblemRules.BadNumber, span, NoInterval(at, span)));
                return null;
            }

            at.Mark(TokenKind.Value, span);
            last = part.Second.Exists ? new Amount(to, unit) : null;
            return new Amount(first, unit, Bound: at.BoundOf(part));
        }

        private static PartialDate? DateAfter(Cursor at, TextSpan keyword, string example)
        {
            if (Dates.Starts(at, at.At, yearless: true))
            {
                return Dates.Take(at, yearless: true);
            }

            Missing(at, keyword, example);
            return null;
        }
    }

    public static Amount? Missing(Cursor at, TextSpan keyword, string example)
    {
        at.Report(new Problem(ProblemRules.Missing, keyword, $"Something is missing behind `{keyword.In(at.Line)}`, as in {example}"));
        return null;
    }
}
