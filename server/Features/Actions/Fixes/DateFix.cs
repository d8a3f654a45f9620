using System.Globalization;
using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>
/// A date in another order gives way to each day it can mean. Where it can mean two, both are offered and none is
/// preferred: which one was meant is for the writer to say. Days that have been come before days to come.
/// </summary>
internal static class DateFix
{
    /// <summary>The orders in use. With the year first the day comes last, unless that isn't a day.</summary>
    private static readonly string[][] Orders =
    [
        ["yyyy/M/d", "yyyy.M.d"],
        ["yyyy-d-M", "yyyy/d/M", "yyyy.d.M"],
        ["d/M/yyyy", "M/d/yyyy", "M.d.yyyy", "d-M-yyyy", "M-d-yyyy"],
        ["d/M/yy", "M/d/yy", "M.d.yy", "d-M-yy", "M-d-yy"],
    ];

    private const int ShortestDay = 3;

    /// <summary>Within them every day comes once, the 29th of February too.</summary>
    private const int DaysOfFourYears = 1_462;

    public static IEnumerable<LineFix> Of(LineAt at, NoteFinding finding)
    {
        List<DateOnly> days = Named(at, finding.Span.In(at.Text)) ?? [.. Readings(finding.Span.In(at.Text)).OrderBy(day => day > at.Document.Today).ThenBy(day => day)];
        bool single = days.Count == 1;
        return at.Better(finding, days.Select(day =>
        {
            string text = day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            return new LineFix("date-order", $"Write `{text}`, {day.ToString("d MMMM yyyy", CultureInfo.InvariantCulture)}", finding.Span, text, single, single);
        }));
    }

    /// <summary>The day that a word at the head of an entry means: today, yesterday, the last day of that name; null for any other text.</summary>
    private static List<DateOnly>? Named(LineAt at, ReadOnlySpan<char> written)
    {
        if (at.Line.EntryHead?.NoYear is var (month, date))
        {
            return [.. Enumerable.Range(0, DaysOfFourYears).Select(days => at.Document.Today.Plus(-days)).Where(day => (day.Month, day.Day) == (month, date)).Take(1)];
        }

        int back = written.Equals("today", StringComparison.OrdinalIgnoreCase) ? 0 : written.Equals("yesterday", StringComparison.OrdinalIgnoreCase) ? 1 : -1;
        for (int days = 0; back < 0 && days < 7 && written.Length >= ShortestDay && at.Line.Kind == LineKind.EntryHead; days++)
        {
            back = at.Document.Today.Plus(-days).DayOfWeek.ToString().StartsWith(written.ToString(), StringComparison.OrdinalIgnoreCase) ? days : back;
        }

        return back < 0 ? null : [at.Document.Today.Plus(-back)];
    }

    private static HashSet<DateOnly> Readings(ReadOnlySpan<char> written)
    {
        foreach (string[] orders in Orders)
        {
            HashSet<DateOnly> days = [];
            foreach (string order in orders)
            {
                // two figures of a year are of this century: a pet's notes are not older
                if (DateOnly.TryParseExact(written, order, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day))
                {
                    days.Add(day.Year < 2000 && orders == Orders[^1] ? day.PlusMonths(1_200) : day);
                }
            }

            if (days.Count > 0)
            {
                return days;
            }
        }

        return [];
    }
}
