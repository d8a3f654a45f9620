using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Items;

namespace HealthNotes.Features.Hover;

/// <summary>On a date: its weekday, how old the pet was, and how long ago it is.</summary>
internal static class DateHover
{
    public static string? At(HoverLine at)
    {
        if (at.Line.EntryHead is not null && at.Entry is { Head.Date: { } head })
        {
            return Day(at, head);
        }

        PartialDate? date = DateIn(at);
        if (date is null)
        {
            return null;
        }

        // of a birth the age today is asked, not the age on that day
        if (at.Item is BornFact born)
        {
            string age = at.Document.Record.Pet.AgeOn(at.Document.Today)?.ToString() ?? "not known";
            string day = born.Date.Exact is { } exact ? DayWords.Long(exact) : $"between {DayWords.Iso(born.Date.Earliest)} and {DayWords.Iso(born.Date.Latest)}";
            return $"**{day}**. Age today: {age}.";
        }

        return date.Exact is { } known ? Day(at, known) : $"Between {DayWords.Iso(date.Earliest)} and {DayWords.Iso(date.Latest)}.";
    }

    /// <summary>The weekday, the pet's age, and the days from today.</summary>
    public static string Day(HoverLine at, DateOnly day)
    {
        string age = at.Document.Record.Pet.AgeOn(day) is { Days: >= 0 } known ? $" Age on that day: {known}." : "";
        return $"**{DayWords.Long(day)}**, {DayWords.From(at.Document.Today, day)}.{age}";
    }

    /// <summary>The day a task of the line falls due, or null.</summary>
    public static DateOnly? Due(HoverLine at) => at.Item is { Word.Kind: Grammar.Vocabulary.WordKind.Task } task ? task.Schedule.DayAfter(at.Entry?.Head.Date) : null;

    private static PartialDate? DateIn(HoverLine at)
    {
        Schedule? schedule = at.Item?.Schedule;
        PartialDate?[] dates =
        [
            (at.Item as BornFact)?.Date, schedule?.From, schedule?.Until, schedule?.On,
            at.Item?.Body.First<Attribution>()?.When,
        ];
        return Array.Find(dates, date => date is not null && date.Span.Start <= at.Token.Span.End && at.Token.Span.Start <= date.Span.End);
    }
}
