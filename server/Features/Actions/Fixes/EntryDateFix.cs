using System.Globalization;
using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>
/// An entry dated after today, or before the pet was born: most likely a slip in the year. The same day of this year is
/// offered if it has been, else of the year before; never a day before the birth.
/// </summary>
internal static class EntryDateFix
{
    public static IEnumerable<LineFix> Of(LineAt at, NoteFinding finding)
    {
        if (at.Line.EntryHead is null || at.Entry?.Head.Date is not { } date)
        {
            yield break;
        }

        DateOnly today = at.Document.Today;
        DateOnly? born = at.Document.Record.Pet.Born?.Earliest;
        for (int year = today.Year; year >= today.Year - 1; year--)
        {
            if (date.Day > DateTime.DaysInMonth(year, date.Month) || year == date.Year)
            {
                continue;
            }

            var day = new DateOnly(year, date.Month, date.Day);
            if (day <= today && (born is null || day >= born))
            {
                string text = day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
                yield return new LineFix("nearer-year", $"Write `{text}`", finding.Span, text, Preferred: true);
                yield break;
            }
        }
    }
}
