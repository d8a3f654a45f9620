using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>What only the whole observation tells: which sign a "gone" ends, whether a plan can be used, and what does not go together.</summary>
internal sealed class ItemCheck(Cursor at)
{
    private readonly ElsewhereCheck elsewhere = new(at);

    private const int SecondsADay = 86_400;

    private FreeWords? Remark => at.Get<FreeWords>(SlotKind.Note);

    /// <summary>
    /// A <c>gone</c> that stands apart from its sign (<c>bloated earlier but gone now</c>) ends it where there is only one; where there
    /// are several, which of them is gone is not guessed. A lump that is gone is gone itself.
    /// </summary>
    public void EndsSign()
    {
        if (!at.SaysGone())
        {
            return;
        }

        List<Described> signs = [.. at.Filled.Select(slot => slot.Value).OfType<Described>().Where(sign => sign.Sense == Sense.Present)];
        if (at.Word.Kind is not (WordKind.Exam or WordKind.Care or WordKind.Vital) || signs.Find(sign => sign.Word is { Part: "any", Word: "gone" or "resolved" }) is not { } gone)
        {
            return;
        }

        signs.RemoveAll(sign => sign.Word.Part == "any");
        if (signs.Count > 1 || (signs.Count == 1 && signs[0].Span.Start > gone.Span.Start))
        {
            at.Report(new Problem(ProblemRules.OpenNegation, gone.Span, $"`{gone.Text}`: which of them is gone? Write it directly behind: {signs[0].Text} gone."));
        }
        else if (signs.Count == 1)
        {
            at.Exchange(signs[0], signs[0] with { Sense = Sense.Ended }, gone);
        }
    }

    /// <summary>The plan behind its medicine as it was written, where it holds steps or times that could not be worked out; else null.</summary>
    public FreeWords? AsWritten()
    {
        if (at.First<FreeWords>() is not { } name || Remark is not { } note)
        {
            return null;
        }

        string[][] stretches = [.. note.Text.Split(", ").Select(stretch => stretch.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries))];
        bool open = at.First<Schedule>()?.Every is null || stretches.Any(IsAnotherStep);
        if (!open && stretches.Any(IsCondition))
        {
            StateSlots.Keep(at, at.Vocabulary.States("med").Find("as-needed")!, note.Span);
        }

        int start = Math.Min(at.End, name.Span.End);
        while (start < at.End && (Scanners.IsBlank(at.Line[start]) || Scanners.IsSeparator(at.Line[start])))
        {
            start++;
        }

        int stop = at.End;
        return open && start < stop ? new FreeWords(TextSpan.Between(start, stop), at.Line[start..stop]) : null;
    }

    /// <summary>True for a stretch that may change the dose or its times: <c>half after a week</c>, <c>2.5mg at night</c>, <c>then once a day</c>.</summary>
    private bool IsAnotherStep(string[] words) => !BesideMeal(words) && !IsCondition(words) && (words.Any(IsNumber) || ChangesPlan(words));

    /// <summary>True for <c>1h before food</c>: when, and no other dose.</summary>
    private bool BesideMeal(string[] words)
    {
        int meal = Array.FindIndex(words, word => word is "before" or "after");
        return meal >= 0 && meal + 1 < words.Length && words[(meal + 1)..].All(word => at.Vocabulary.Fixed("meal").Find(word) is not null || at.Vocabulary.Fixed("mealtime").Find(word) is not null || at.Vocabulary.Small.Find(word) is not null)
            && (meal == 0 || words[..meal].Any(word => at.Vocabulary.Units.Find(word.AsSpan().TrimStart("0123456789/.")) is { Quantity: Quantity.Time }));
    }

    /// <summary>True for <c>if he is sore</c>: a dose that is left out was not missed. Not so for <c>if he vomits stop</c>, <c>if bad two</c>.</summary>
    private bool IsCondition(string[] words) => words.Length > 0 && at.Vocabulary.Fixed("condition").Find(words[0]) is not null
        && !words.Any(word => IsNumber(word) || (word is not "after" && at.Vocabulary.Fixed("taper").Find(word) is not null) || at.Vocabulary.DoseEvents.Find(word) is not null || at.Vocabulary.Fixed("advice").Find(word) is not null);

    /// <summary>True for the <c>half</c> of <c>half in the evening</c>, for a figure, and for what counts doses.</summary>
    private bool IsNumber(string word) => word.Any(char.IsAsciiDigit) || (word is not ("a" or "an") && at.Vocabulary.NumberWords.Find(word) is not null) || at.Vocabulary.Units.Find(word) is { Quantity: Quantity.Dose };

    private bool GivenAfterAll(string[] words) => Enumerable.Range(0, words.Length).Any(index => at.Vocabulary.DoseEvents.Find(words[index]) is { Word: "gave" } && (index + 1 == words.Length || at.Vocabulary.Fixed("after-all").Find(words[index + 1]) is not null || char.IsAsciiDigit(words[index + 1][0]))
        && !(index > 0 && at.Vocabulary.Before.Find(words[index - 1]) is not null));

    /// <summary>True where a word tells of another step: <c>then once a day</c>; not so in <c>stop if vomiting</c>.</summary>
    private bool ChangesPlan(string[] words) => Enumerable.Range(0, words.Length).Any(index =>
        at.Vocabulary.Fixed("taper").Find(words[index]) is not null && !IsDenied(words, index) && !(index + 1 < words.Length && at.Vocabulary.Asides.Find(words[index + 1]) is not null));

    /// <summary>True for the <c>stop</c> of <c>do not stop</c>.</summary>
    private bool IsDenied(string[] words, int index) => Enumerable.Range(1, Math.Min(2, index)).Any(count => at.Vocabulary.Before.Find(string.Join(' ', words[(index - count)..index])) is not null);

    public void Check(bool none, LeadWord? lead)
    {
        if (!MeasureSlots.SubjectFits(at) && at.First<NoteValue>() is { } value && at.About is { } about)
        {
            at.Report(Refusals.Subject(at, value.Span, value.Span, (value as ValueRange)?.Unit ?? (value as Limit)?.Unit, about));
        }

        if (at.Word.Kind is WordKind.Care or WordKind.Scan && (none || at.HasNone()) && !at.Word.Has(SlotKind.Medicine)
            && ((at.First<EventCount>() is { Number: > 0 } && at.Times.Count > 0) || Remark is { } since && since.Text.StartsWith("since", StringComparison.OrdinalIgnoreCase) && (at.Times.Count > 0 || (at.HeadSpan.Length > 0 && at.HeadSpan.End < at.End && at.Line[at.HeadSpan.End] == ','))))
        {
            at.Report(new Problem(ProblemRules.OpenNegation, at.HeadSpan.Length > 0 ? at.HeadSpan : at.Parts[0].Span, "Did it happen, or not? Write what happened with its time, and that there was none on a line of its own."));
        }

        if (none && at.First<NoteValue>() is { } counted)
        {
            at.Report(new Problem(ProblemRules.OpenNegation, counted.Span, $"`{counted.Span.In(at.Line)}` does not go with a negation. Write what happened, or that nothing did."));
        }

        if (lead is not null && Joins.StartsWithNegation(at.Vocabulary, lead.Word.Split(' ')) && at.SignBehindHead() is { } praise)
        {
            at.Report(new Problem(ProblemRules.OpenNegation, praise.Span, $"`{praise.Text}` does not go with `{at.HeadSpan.In(at.Line)}`. Write what happened, in one way."));
        }

        if (at.Word.Kind is WordKind.Care or WordKind.Scan && (none || at.First<EventCount>() is { Number: 0, Bound: Bound.Exact } || at.HasNone()) && at.PresentSign() is { } there)
        {
            at.Report(new Problem(ProblemRules.OpenNegation, there.Span, $"`{there.Text}` does not go with a negation. Write what happened, or that nothing did."));
        }

        if (at.Word.Has(SlotKind.Portion) && at.Filled.Any(slot => slot.Value is Portion { Part: 0 }) && (Poison() ?? MoreOfMeal()) is { } eaten)
        {
            at.Report(new Problem(ProblemRules.OpenNegation, eaten, $"`{eaten.In(at.Line)}`: was it eaten or not? Write one line for what was eaten, and one for what was not."));
        }

        if (at.Word.Kind == WordKind.Vital && Remark is { } range && range.Text.Split(' ') is ["to" or "till" or "until" or "and" or "or" or "times" or "x", [>= '0' and <= '9', ..], ..] or ["and", "a", "half", ..])
        {
            at.Report(new Problem(ProblemRules.WrongValue, range.Span, $"`{range.Text}`: write one number, or one line for each count."));
        }

        if (at.Word.Word == "missed" && Remark is { } late && GivenAfterAll(late.Text.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries)))
        {
            at.Report(new Problem(ProblemRules.WrongValue, late.Span, $"`{late.Text}`: was it given after all? Write gave, the medicine and the time; missed only where no dose was given."));
        }

        if (at.Word.Kind == WordKind.Exam && Remark is { } often && IntervalWords.IsInterval(at.Vocabulary, often.Text))
        {
            at.Report(new Problem(ProblemRules.WrongValue, often.Span, $"`{often.Text}`: is this something to do? Write due for a task, med for a medicine, or put the line behind >."));
        }

        if (NotDone() is { } open)
        {
            at.Report(new Problem(ProblemRules.WrongValue, open.Span, $"`{open.Text}`: was it done on this day or not? Write gave, missed or stop for what happened, and due for what is to come."));
        }

        elsewhere.Check();
        if (Remark is { } soon && soon.Text.Split(", ").Any(InShort) && at.Filled.Any(slot => slot.Value is Described { Sense: Sense.Ended } or Described { Word: { Part: "any", Word: "gone" or "resolved" } }))
        {
            at.Report(new Problem(ProblemRules.WrongValue, soon.Span, "Is it over, or does it come each time and pass? Write gone alone where it is over; anything else goes behind >."));
        }

        if (at.Word.Word == "stop" && lead is not null && at.HeadSpan.In(at.Line).Contains('/') && at.First<FreeWords>() is { } ended && at.Vocabulary.Medicines.Find(ended.Text) is null)
        {
            at.Report(new Problem(ProblemRules.WrongValue, at.HeadSpan, $"`{at.HeadSpan.In(at.Line)}` has several meanings, and `{ended.Text}` is not a medicine I know. Write stop and the medicine, or put the line behind >."));
        }

        if (at.Word.Word == "phone" && at.First<FreeWords>() is { } number && number.Text.Contains(" if ", StringComparison.OrdinalIgnoreCase))
        {
            at.Report(new Problem(ProblemRules.WrongValue, number.Span, "`phone` takes the clinic's telephone number. A limit is written as call-if rr asleep >30."));
        }

        if (at.Word.Word == "done" && lead is not null && at.First<FreeWords>() is { } act && (act.Text.Split(',').Any(IsAhead) || Enumerable.Range(0, at.Parts.Count).Any(index => Dates.Starts(at, index, yearless: true) && !(index > 0 && at.Phrase(at.Vocabulary.Asides, index - 1, out _) > 0))))
        {
            at.Report(new Problem(ProblemRules.WrongValue, act.Span, $"`{act.Text}`: done, or still to come? What was done has the day of its entry. What is to come starts with due."));
        }

        if (at.Times.Count > 0 && Remark is { } also && also.Text.Split(' ') is ["and" or "&" or "+", [>= '0' and <= '9', ..], ..])
        {
            at.Report(new Problem(ProblemRules.BadTime, also.Span, $"`{also.Text}`: write each time with its minutes, such as 08:00 and 10:00, and one line for each."));
        }

        if (at.Times.Count > 1 && Remark is { } several && at.Vocabulary.ScheduleShort.Find(several.Text) is null && !(at.Word.Has(SlotKind.Medicine) && several.Text.Split(' ', ',').All(word => at.Vocabulary.Fixed("part-of-doses").Find(word) is null && !word.Any(char.IsAsciiDigit))))
        {
            at.Report(new Problem(ProblemRules.WrongValue, several.Span, $"`{several.Text}`: which of the times does this go with? Write one line for each."));
        }

        if (at.Word.Has(SlotKind.Medicine) && at.Word.Kind == WordKind.Care && at.First<FreeWords>() is { } name)
        {
            string first = name.Text.Split(' ')[0];
            if (at.Vocabulary.NumberWords.Find(first) is not null)
            {
                at.Report(new Problem(ProblemRules.WrongValue, name.Span, $"`{name.Text}`: how much of it? Write the medicine, then the amount: gave carprofen 1/2 tablet"));
            }
            else if (NameSlots.IsOrdinary(at.Vocabulary, first) && !NameSlots.IsMedicine(at.Vocabulary, name.Text))
            {
                at.Report(new Problem(ProblemRules.UnknownWord, name.Span,
                    $"`{name.Text}` does not look like a medicine. Write {at.Word.Word} and the medicine's name; anything else goes on a line that starts with >."));
            }

            if (at.HeadSpan.Length == 0 && Remark is { } asked && asked.Text.EndsWith('?'))
            {
                at.Report(new Problem(ProblemRules.WrongValue, asked.Span, $"`{asked.Text}`: was it given or not? Write gave or missed; a question for the vet starts with ask."));
            }

            if (Remark is { } note && ((at.Times.Count == 0 && note.Text.Split(' ', ',').Count(word => at.Vocabulary.Fixed("day").Find(word) is { Word: "morning" }) > 1) || note.Text.Split(' ', ',').Any(word => (word.Length > 0 && char.IsLetter(word[0]) && at.Vocabulary.TimesWords.Find(word) is not null) || word is "2x" or "x2" or "3x" or "x3")))
            {
                at.Report(new Problem(ProblemRules.WrongValue, note.Span, $"`{note.Text}`: write one line a dose, each with its time, such as 08:00 gave {name.Text}; a plan starts with med"));
            }
            else if (Remark is { } more && more.Text.Split(' ', ',').FirstOrDefault(word => at.Vocabulary.Medicines.Find(word) is { Word: not "meds" }) is { } other)
            {
                at.Report(new Problem(ProblemRules.SaidTwice, more.Span, $"`{other}` is a second medicine. Write one medicine a line."));
            }
        }

        if (at.First<FreeWords>() is null)
        {
            return;
        }

        if ((at.Word.Kind == WordKind.Care || at.Word.Word == "done") && ShortDate() is { } date)
        {
            at.Report(new Problem(ProblemRules.BadDate, date, $"`{date.In(at.Line)}` can be read two ways. Write year-month-day, such as 2026-10-20."));
        }

        if (at.First<NoteValue>() is not null && at.Word.Kind == WordKind.Care && !at.Word.Has(SlotKind.Medicine) && at.Filled.Select(slot => slot.Value).OfType<FreeWords>()
            .FirstOrDefault(words => words.Span != at.HeadSpan && at.Vocabulary.Fixed("remains").Find(words.Text.Split(' ')[0]) is not null) is { } left)
        {
            at.Report(new Problem(ProblemRules.WrongValue, left.Span, $"`{left.Text}` may mean what was left. Write what was eaten or drunk, such as ate half."));
        }
    }

    /// <summary>What is worrying to have eaten, beside a meal of which nothing was eaten; null where nothing is.</summary>
    private TextSpan? Poison() => at.Filled.Select(slot => slot.Value).OfType<Described>()
        .FirstOrDefault(sign => sign.Sense == Sense.Present && sign.Word.Part != "any" && sign.Word.Meanings.Any(meaning => meaning.Level >= Level.Call) && at.Vocabulary.Fixed("not-eating").Find(sign.Word.Word) is null)?.Span;

    /// <summary>A second part of a meal, in a remark: <c>did not eat all</c>.</summary>
    private TextSpan? MoreOfMeal() => Remark is { } note && at.Vocabulary.Portions.Find(note.Text) is not null ? note.Span : null;

    /// <summary>True for <c>after 5 minutes</c>, <c>within an hour</c>: what ends so soon may come again.</summary>
    private bool InShort(string stretch) => stretch.Split(' ') is ["after" or "within" or "in", .., var unit] && at.Vocabulary.Units.Find(unit.AsSpan().TrimStart("0123456789")) is { Quantity: Quantity.Time, Factor: < SecondsADay };

    /// <summary>Words of a dose or an act that leave open whether it was done: <c>carprofen none</c>, <c>vaccine overdue</c>, <c>stop carprofen tomorrow</c>.</summary>
    private FreeWords? NotDone()
    {
        bool dose = at.Word.Has(SlotKind.Medicine) && at.Word.Kind == WordKind.Care;
        bool late = at.Word.Word == "gave" && at.Remark.Count > 0 && at.Remark[0] == at.HeadSpan;
        if (late || (!dose && at.Word.Kind != WordKind.Act && at.Word.Word is not ("done" or "surgery")))
        {
            return null;
        }

        foreach (FreeWords words in at.Filled.Select(slot => slot.Value).OfType<FreeWords>())
        {
            string[] said = words.Text.ToLowerInvariant().Split(' ', ',');
            bool starts = Enumerable.Range(1, Math.Min(3, said.Length)).Any(count => at.Vocabulary.Fixed("not-done").Find(string.Join(' ', said[..count])) is not null);
            bool ends = at.Vocabulary.Fixed("not-done").Find(said[^1]) is not null || (said.Length > 1 && at.Vocabulary.Fixed("not-done").Find($"{said[^2]} {said[^1]}") is not null);
            bool missed = at.Word.Word == "missed" && !(said[0] is "gave" || words.Text.StartsWith("not stopped", StringComparison.OrdinalIgnoreCase));
            bool refused = dose && said[0] == "refused" && said.Length > 1;
            if (!missed && !refused && (starts || ends || (at.Word.Word == "stop" && IsAhead(words.Text))))
            {
                return words;
            }
        }

        return null;
    }

    /// <summary>True for words that tell of what is still to come: <c>in 10 days</c>, <c>due</c>.</summary>
    private bool IsAhead(string text)
    {
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        for (int index = 0; index < words.Length; index++)
        {
            bool span = words[index] is "in" && index + 1 < words.Length && char.IsAsciiDigit(words[index + 1][0])
                && (words[index + 1].AsSpan().IndexOfAnyExceptInRange('0', '9') is > 0 and var digits
                    ? at.Vocabulary.Units.Find(words[index + 1].AsSpan(digits))
                    : at.Vocabulary.Units.Find(index + 2 < words.Length ? words[index + 2] : "")) is { Quantity: Quantity.Time };
            if (span || words[index] is "due" or "tomorrow" or "booked")
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>A day and a month with a slash, which two countries read differently, in free words; null where none stands.</summary>
    private TextSpan? ShortDate()
    {
        foreach (SlotValue slot in at.Filled)
        {
            if (slot.Value is not FreeWords words || at.Vocabulary.Asides.Find(words.Text.Split(' ')[0]) is not null)
            {
                // "since 3/14": not the day of what happened
                continue;
            }

            foreach (System.Range range in words.Text.AsSpan().Split(' '))
            {
                ReadOnlySpan<char> word = words.Text.AsSpan()[range].Trim(",;.()");
                int slash = word.IndexOf('/');
                ReadOnlySpan<char> behind = words.Text.AsSpan()[range.End..].TrimStart();
                if (!at.Word.Has(SlotKind.Medicine) && at.Word.Has(SlotKind.Portion) && at.Vocabulary.Units.Find(behind[..(behind.IndexOf(' ') is >= 0 and var blank ? blank : behind.Length)]) is { Quantity: not Quantity.Time })
                {
                    // "1/4 cup"
                    continue;
                }

                if (slash is 1 or 2 && word.Length - slash is 2 or 3 && !word[..slash].SequenceEqual(word[(slash + 1)..]) && word[..slash].IndexOfAnyExceptInRange('0', '9') < 0 && word[(slash + 1)..].IndexOfAnyExceptInRange('0', '9') < 0)
                {
                    int start = at.Line.AsSpan(words.Span.Start).IndexOf(word);
                    return start < 0 ? words.Span : new TextSpan(words.Span.Start + start, word.Length);
                }
            }
        }

        return null;
    }
}
