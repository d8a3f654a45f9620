using System.Globalization;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Features.Hints;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>Days near the one that is meant, each with its name.</summary>
internal static class DateOffers
{
    /// <summary>The day of the entry, today, and some days on.</summary>
    public static IEnumerable<Offer> Ahead(NoteAround note, int group) =>
        Days(note, group, [(0, "the day itself"), (1, "a day on"), (3, "3 days on"), (7, "a week on"), (14, "2 weeks on"), (28, "4 weeks on"), (91, "3 months on"), (365, "a year on")]);

    /// <summary>The day of the entry, today, and some days before.</summary>
    public static IEnumerable<Offer> Back(NoteAround note, int group) =>
        Days(note, group, [(0, "the day itself"), (-1, "the day before"), (-7, "a week before")]);

    /// <summary>The forms a date of birth may have; which one is for the writer to say.</summary>
    public static IEnumerable<Offer> Birth(DateOnly today, int group)
    {
        yield return new Offer(DayWords.Iso(today), CompletionKind.Date, group, "a day");
        yield return new Offer(today.ToString("yyyy-MM", CultureInfo.InvariantCulture), CompletionKind.Date, group, "a month");
        for (int back = 0; back < 25 && today.Year - back >= 1900; back++)
        {
            yield return new Offer($"{today.Year - back:0000}", CompletionKind.Date, group + 1, "a year");
            yield return new Offer($"~{today.Year - back:0000}", CompletionKind.Date, group + 2, "about this year");
        }
    }

    private static IEnumerable<Offer> Days(NoteAround note, int group, (int On, string Detail)[] steps)
    {
        DateOnly today = note.Document.Today;
        if (note.Day != today)
        {
            yield return new Offer(DayWords.Iso(today), CompletionKind.Date, group + 1, $"{today.DayOfWeek}, today");
        }

        foreach ((int on, string detail) in steps)
        {
            int number = note.Day.DayNumber + on;
            if (number >= 0 && number <= DateOnly.MaxValue.DayNumber)
            {
                DateOnly day = DateOnly.FromDayNumber(number);
                yield return new Offer(DayWords.Iso(day), CompletionKind.Date, group, $"{day.DayOfWeek}, {(day == today ? "today" : detail)}");
            }
        }
    }
}
