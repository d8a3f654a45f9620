using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>
/// Times of a plan or a task. How often a medicine is given is for the one who ordered it to say: only the words are
/// offered there, and an interval once the abbreviation for it is typed.
/// </summary>
internal static class ScheduleOffers
{
    private static readonly (string Span, string Detail)[] Ahead =
        [("2d", "two days"), ("1w", "a week"), ("2w", "two weeks"), ("4w", "four weeks"), ("3mo", "three months"), ("1y", "a year")];

    /// <summary>What follows the joining word before the cursor; null when none stands there.</summary>
    public static IEnumerable<Offer>? AfterKeyword(LineState line)
    {
        // a joining word without what it joins is not understood yet
        if (line.Last.Kind is not (TokenKind.Keyword or TokenKind.Unknown))
        {
            return null;
        }

        return line.LastText switch
        {
            "every" => Every(line.Word),
            "for" => [],
            "in" when !line.Word.Has(SlotKind.Medicine) => Ahead.Select((span, index) => InSpan(line, span, "", 0)),
            "from" or "since" => DateOffers.Back(line.Note, 0),
            "until" or "till" or "to" or "on" or "by" => DateOffers.Ahead(line.Note, 0),
            "per" => [new Offer("vet", CompletionKind.Value, 0, "who said so")],
            "like" or "like a" or "like an" => ClosedOffers.Objects(0),
            "at" => [],
            _ => null,
        };
    }

    /// <summary>The joining words that the line has not used yet.</summary>
    public static IEnumerable<Offer> Keywords(LineState line, int group)
    {
        HashSet<string> said = [.. line.Texts(TokenKind.Keyword).Select(text => text.ToLowerInvariant())];
        bool medicine = line.Word.Has(SlotKind.Medicine);
        bool task = line.Word.Kind == WordKind.Task;
        if (task && said.Count == 0 && !line.Has(TokenKind.Date))
        {
            foreach ((string Span, string Detail) span in Ahead)
            {
                yield return InSpan(line, span, "in ", group);
            }
        }

        foreach ((string word, string detail, bool fits) in (IEnumerable<(string, string, bool)>)
        [
            ("every", "how often: every day, every 12h", true),
            ("for", "for how long: for 7d", medicine),
            ("from", "from which day on", medicine),
            ("until", "up to which day", medicine || task),
            ("on", "on which day", task),
            ("at", "at what time: at 08:30", medicine || task),
        ])
        {
            if (fits && !said.Contains(word))
            {
                yield return new Offer(word, CompletionKind.Joining, group + 1, detail);
            }
        }

        if (!said.Contains("every"))
        {
            foreach (Abbreviation abbreviation in NoteVocabulary.Default.Abbreviations("schedule").Terms.Where(a => a.StandsFor.StartsWith("every ", StringComparison.Ordinal)))
            {
                yield return new Offer(abbreviation.StandsFor, CompletionKind.Value, group + 2, abbreviation.Definition)
                {
                    Label = $"{abbreviation.Word}: {abbreviation.StandsFor}",
                    Spellings = [abbreviation.Word],
                    WhenTyped = true,
                };
            }
        }

        if (task && line.At.Typed.Length > 0 && char.IsAsciiDigit(line.At.Typed[0]))
        {
            foreach (Offer day in DateOffers.Ahead(line.Note, group))
            {
                yield return day;
            }
        }
    }

    private static IEnumerable<Offer> Every(LineWord word)
    {
        foreach ((string span, string unit, string detail) in (IEnumerable<(string, string, string)>)[("1d", "day", "once a day"), ("1w", "week", "once a week"), ("1mo", "month", "once a month")])
        {
            yield return new Offer(span, CompletionKind.Value, 0, detail) { Label = unit, Spellings = [unit] };
        }

        if (!word.Has(SlotKind.Medicine))
        {
            foreach ((string span, string detail) in (IEnumerable<(string, string)>)[("2w", "two weeks"), ("30d", "30 days"), ("3mo", "three months"), ("1y", "a year")])
            {
                yield return new Offer(span, CompletionKind.Value, 1, detail);
            }
        }
    }

    private static Offer InSpan(LineState line, (string Span, string Detail) span, string before, int group)
    {
        Unit unit = NoteVocabulary.Default.Units.Find(span.Span.AsSpan(1))!;
        DateOnly day = Schedule.Add(line.Note.Day, new Amount(span.Span[0] - '0', unit));
        return new Offer(before + span.Span, CompletionKind.Value, group, $"{span.Detail}: {day.DayOfWeek} {DayWords.Iso(day)}");
    }
}
