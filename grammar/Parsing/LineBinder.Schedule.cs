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
        switch (text)
        {
            case "every" or "Every" or "EVERY":
                schedule = schedule with { Every = SpanOfTime(keyword, "every 12h") ?? schedule.Every };
                break;
            case "for" or "For" or "FOR":
                schedule = schedule with { For = SpanOfTime(keyword, "for 7d") ?? schedule.For };
                break;
            case "in" or "In" or "IN":
                schedule = schedule with { In = SpanOfTime(keyword, "in 2w") ?? schedule.In };
                break;
            case "from" or "From" or "FROM" or "since" or "Since" or "SINCE":
                schedule = schedule with { From = DateAfter(keyword, "from 2026-10-20") ?? schedule.From };
                break;
            case "at" or "At" or "AT":
                BindAt(keyword);
                break;
            case "on" or "On" or "ON" or "by" or "By" or "BY":
                schedule = schedule with { On = DateAfter(keyword, "on 2026-10-20") ?? schedule.On };
                break;
            default:
                schedule = schedule with { Until = DateAfter(keyword, "until 2026-10-20") ?? schedule.Until };
                break;
        }

        return true;
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

        schedule = schedule with { Every = new Amount(decimal.Parse(text.Slice(1, digits), CultureInfo.InvariantCulture), unit) };
        return Taken(TokenKind.Keyword, span);
    }

    /// <summary>A length of time behind a keyword: <c>12h</c>, <c>2 weeks</c>, <c>day</c>.</summary>
    private Amount? SpanOfTime(TextSpan keyword, string example)
    {
        if (at < parts.Count && parts[at].Kind == PartKind.Word && vocabulary.Units.Find(TextOf(parts[at])) is { Quantity: Quantity.Time } single)
        {
            Taken(TokenKind.Value, parts[at].Span);
            return new Amount(1, single);
        }

        if (at < parts.Count && parts[at] is NumberPart { Second.Exists: false } part && Digits(part.First.Digits) is { } number)
        {
            TextSpan span = WithUnitWord(Quantity.Time, part, out TextSpan unitSpan);
            if (unitSpan.Length > 0 && vocabulary.Units.Find(unitSpan.In(line)) is { Quantity: Quantity.Time } unit)
            {
                Mark(TokenKind.Value, span);
                at++;
                return new Amount(number, unit);
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

    private void BindAt(TextSpan keyword)
    {
        if (at < parts.Count && TimeReader.TryTake(line, parts[at].Span.Start, end, out TimeOnly? time, out int timeEnd, out Problem? bad))
        {
            Mark(TokenKind.Time, TextSpan.Between(parts[at].Span.Start, timeEnd));
            schedule = schedule with { At = time };
            at++;
            if (bad is not null)
            {
                Report(bad);
            }
        }
        else
        {
            MissingAfter<Amount?>(keyword, "at 08:00");
        }
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

        string who = first < at ? Spaced(first, at - 1) : "";
        if (who.Length > 0)
        {
            Mark(TokenKind.Name, TextSpan.Between(parts[first].Span.Start, parts[at - 1].Span.End));
        }

        PartialDate? when = at < parts.Count && parts[at] is NumberPart part && LooksLikeDate(part) ? TakeDate(part) : null;
        if (who.Length == 0 && when is null)
        {
            MissingAfter<Attribution>(keyword, "per vet 2026-01-20");
            return true;
        }

        per = new Attribution(TextSpan.Between(keyword.Start, parts[at - 1].Span.End), who, when);
        return true;
    }
}
