using System.Globalization;

namespace HealthNotes.Rendering.Drawing.Charts;

/// <summary>The time axis that all charts of a page share, with ticks at the starts of days, months or years.</summary>
/// <param name="From">Where it starts.</param>
/// <param name="To">Where it ends.</param>
internal sealed record TimeAxis(DateTime From, DateTime To)
{
    private const int MostTicks = 6;
    private const double DaysInMonth = 30.44;
    private static readonly int[] DaySteps = [1, 2, 7, 14];
    private static readonly int[] MonthSteps = [1, 2, 3, 6, 12, 24, 60, 120, 600];

    /// <summary>How far along a moment lies, from 0 to 1.</summary>
    public double At(DateTime moment) => To <= From ? 0 : Math.Clamp((moment - From) / (To - From), 0, 1);

    /// <summary>The ticks and their words: the fewest parts of a date that tell them apart.</summary>
    public IEnumerable<(DateTime At, string Words)> Ticks()
    {
        double days = (To - From).TotalDays;
        int dayStep = DaySteps.FirstOrDefault(step => days / step <= MostTicks);
        if (dayStep > 0)
        {
            // weeks from the start: which weekday it is says nothing about a pet
            DateTime first = From.TimeOfDay == TimeSpan.Zero || From.Date == DateTime.MaxValue.Date ? From : From.Date.AddDays(1);
            for (int step = 0; step <= (To - first).TotalDays / dayStep; step++)
            {
                DateTime day = first.AddDays(step * dayStep);
                yield return (day, day.ToString("d MMM", CultureInfo.InvariantCulture));
            }

            yield break;
        }

        int months = MonthSteps.First(step => days / DaysInMonth / step <= MostTicks);
        int firstMonth = (From.Year * 12) + From.Month - 1;
        for (int month = (firstMonth + months) / months * months; month < 12 * DateTime.MaxValue.Year; month += months)
        {
            var at = new DateTime(month / 12, (month % 12) + 1, 1);
            if (at > To)
            {
                yield break;
            }

            yield return (at, at.ToString(months >= 12 ? "yyyy" : "MMM yyyy", CultureInfo.InvariantCulture));
        }
    }
}
