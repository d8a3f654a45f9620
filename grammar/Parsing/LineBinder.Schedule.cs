using System.Globalization;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <content>Schedules: every, for, in, from, until, on, at; and who said so, and when.</content>
internal sealed partial class LineBinder
{
    private static readonly string[] ScheduleWords = ["every", "for", "in", "from", "since", "until", "till", "to", "on", "by", "at"];

    private static bool IsScheduleWord(ReadOnlySpan<char> text)
    {
        foreach (string word in ScheduleWords)
        {
            if (text.Equals(word, StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return IsEveryAbbreviation(text, out _);
    }

    /// <summary><c>q12h</c>: every 12 hours.</summary>
    private static bool IsEveryAbbreviation(ReadOnlySpan<char> text, out int digits)
    {
        digits = 0;
        while (digits + 1 < text.Length && Scanners.IsDigit(text[digits + 1]))
        {
            digits++;
        }

        return text.Length > 2 && text[0] is 'q' or 'Q' && digits is > 0 and <= 4 && digits + 1 < text.Length;
    }

    private bool BindScheduleWord()
    {
        ReadOnlySpan<char> text = TextOf(parts[at]);
        if (!Word.Has(SlotKind.Schedule) || !IsScheduleWord(text))
        {
            return false;
        }

        TextSpan keyword = parts[at].Span;
        if (IsEveryAbbreviation(text, out int digits))
        {
            return BindEveryAbbreviation(keyword, digits);
        }

        // "in the ear", "on the skin": a manner, not a time
        int before = at;
        if (BindState())
        {
            return true;
        }

        at = before + 1;
        Mark(TokenKind.Keyword, keyword);
        switch (text.ToString().ToLowerInvariant())
        {
            case "every":
                schedule = schedule with { Every = Once(schedule.Every, SpanOfTime(keyword, "every 12h", some: true), keyword) };
                break;
            case "for":
                schedule = schedule with { For = Once(schedule.For, SpanOfTime(keyword, "for 7d"), keyword) };
                break;
            case "in":
                schedule = schedule with { In = Once(schedule.In, SpanOfTime(keyword, "in 2w"), keyword) };
                break;
            case "from" or "since":
                schedule = schedule with { From = Once(schedule.From, DateAfter(keyword, "from 2026-10-20"), keyword) };
                break;
            case "at":
                schedule = schedule with { At = Once(schedule.At, TimeAfter(keyword), keyword) };
                break;
            case "on" or "by":
                schedule = schedule with { On = Once(schedule.On, DateAfter(keyword, "on 2026-10-20"), keyword) };
                break;
            default:
                schedule = schedule with { Until = Once(schedule.Until, DateAfter(keyword, "until 2026-10-20"), keyword) };
                break;
        }

        return true;
    }

    /// <summary>
    /// What a slot holds after <paramref name="found"/>, which starts at <paramref name="from"/> and ends before the current
    /// part. Saying the same again is harmless; saying something else is a problem.
    /// </summary>
    private T Once<T>(T before, T found, TextSpan from)
    {
        if (before is null || found is null)
        {
            return found ?? before;
        }

        if (!EqualityComparer<T>.Default.Equals(before, found))
        {
            SaidTwice(TextSpan.Between(from.Start, Math.Max(from.End, parts[at - 1].Span.End)));
        }

        return before;
    }

    private string NoInterval(TextSpan span) => $"`{span.In(line)}`: nothing can be done every 0 hours";

    /// <summary>
    /// True for the <c>in</c> of <c>in 2w</c>. What falls due is free words, so there a joining word needs a number or a
    /// unit after it: <c>due trip to vet in 2w</c>.
    /// </summary>
    private bool StartsSchedule(int index)
    {
        ReadOnlySpan<char> text = TextOf(parts[index]);
        if (!IsScheduleWord(text))
        {
            return false;
        }

        return !Word.Has(SlotKind.Topic) || index + 1 >= parts.Count || parts[index + 1].Kind == PartKind.Number
            || vocabulary.Units.Find(TextOf(parts[index + 1])) is { Quantity: Quantity.Time }
            || text.Equals("every", StringComparison.OrdinalIgnoreCase) || IsEveryAbbreviation(text, out _);
    }

    private bool BindEveryAbbreviation(TextSpan span, int digits)
    {
        ReadOnlySpan<char> text = span.In(line);
        ReadOnlySpan<char> unitText = text[(digits + 1)..];
        if (vocabulary.Units.Find(unitText) is not { Quantity: Quantity.Time } unit)
        {
            Report(new Problem(ProblemRules.WrongUnit, TextSpan.Between(span.Start + digits + 1, span.End), $"`{unitText}` is not a unit of time; expected h, d, w or mo, as in q12h"));
            return Taken(TokenKind.Unknown, span);
        }

        decimal number = decimal.Parse(text.Slice(1, digits), CultureInfo.InvariantCulture);
        if (number == 0)
        {
            return Refuse(span, ProblemRules.BadNumber, NoInterval(span));
        }

        Taken(TokenKind.Keyword, span);
        schedule = schedule with { Every = Once(schedule.Every, new Amount(number, unit), span) };
        return true;
    }

    /// <summary>A length of time behind a keyword: <c>12h</c>, <c>2 weeks</c>, <c>day</c>.</summary>
    private Amount? SpanOfTime(TextSpan keyword, string example, bool some = false)
    {
        if (at < parts.Count && parts[at].Kind == PartKind.Word && vocabulary.Units.Find(TextOf(parts[at])) is { Quantity: Quantity.Time } single)
        {
            Taken(TokenKind.Value, parts[at].Span);
            return new Amount(1, single);
        }

        if (at < parts.Count && parts[at] is NumberPart { Second.Exists: false } part && Digits(part.First.Digits) is { } number)
        {
            Bound bound = BoundOf(part);
            TextSpan span = WithUnitWord(Quantity.Time, part, out TextSpan unitSpan);
            if (some && number == 0)
            {
                Refuse(span, ProblemRules.BadNumber, NoInterval(span));
                return null;
            }

            if (unitSpan.Length > 0 && vocabulary.Units.Find(unitSpan.In(line)) is { Quantity: Quantity.Time } unit)
            {
                Mark(TokenKind.Value, span);
                at++;
                return new Amount(number, unit, Bound: bound);
            }

            Mark(TokenKind.Unknown, span);
            at++;
            Report(new Problem(unitSpan.Length == 0 ? ProblemRules.MissingUnit : ProblemRules.WrongUnit, unitSpan.Length == 0 ? span : unitSpan,
                $"`{span.In(line)}` needs a unit of time (min, h, d, w, mo or y), as in {example}"));
            return null;
        }

        return MissingAfter<Amount?>(keyword, example);
    }

    private PartialDate? DateAfter(TextSpan keyword, string example)
    {
        if (at < parts.Count && parts[at] is NumberPart part && LooksLikeDate(part))
        {
            return TakeDate(part);
        }

        return MissingAfter<PartialDate?>(keyword, example);
    }

    private TimeOnly? TimeAfter(TextSpan keyword)
    {
        if (at >= parts.Count || !TimeReader.TryTake(line, parts[at].Span.Start, end, out TimeOnly? time, out int timeEnd, out Problem? bad)
            || timeEnd != parts[at].Span.End)
        {
            return MissingAfter<TimeOnly?>(keyword, "at 08:00");
        }

        Taken(TokenKind.Time, parts[at].Span);
        if (bad is not null)
        {
            Report(bad);
        }

        return time;
    }

    private T? MissingAfter<T>(TextSpan keyword, string example)
    {
        ReadOnlySpan<char> word = keyword.In(line);
        Report(new Problem(ProblemRules.Missing, keyword, $"something is missing after `{word}`; expected for instance {example}"));
        return default;
    }

    /// <summary><c>per vet 2026-01-20</c>.</summary>
    private bool BindPer()
    {
        if (!Word.Has(SlotKind.Per) || !TextOf(parts[at]).Equals("per", StringComparison.OrdinalIgnoreCase))
        {
            return false;
        }

        TextSpan keyword = parts[at].Span;
        Mark(TokenKind.Keyword, keyword);
        at++;
        int first = at;
        while (at < parts.Count && parts[at].Kind == PartKind.Word)
        {
            at++;
        }

        string who = "";
        if (first < at)
        {
            var name = TextSpan.Between(parts[first].Span.Start, parts[at - 1].Span.End);
            Mark(TokenKind.Name, name);
            who = WithSingleBlanks(name);
        }

        PartialDate? when = at < parts.Count && parts[at] is NumberPart part && LooksLikeDate(part) ? TakeDate(part) : null;
        if (who.Length == 0 && when is null)
        {
            MissingAfter<Attribution>(keyword, "per vet 2026-01-20");
            return true;
        }

        AddPer(who, when, TextSpan.Between(keyword.Start, parts[at - 1].Span.End));
        return true;
    }

    /// <summary>Who and when may stand apart: <c>per vet 16-24 2026-01-20</c>.</summary>
    private void AddPer(string who, PartialDate? when, TextSpan span)
    {
        if (per is null)
        {
            per = who.Length == 0 && when is null ? null : new Attribution(span, who, when);
        }
        else if ((who.Length > 0 && per.Who.Length > 0) || (when is not null && per.When is not null))
        {
            SaidTwice(span, per.Span.In(line).ToString());
        }
        else
        {
            per = per with { Who = per.Who + who, When = per.When ?? when };
        }
    }
}
