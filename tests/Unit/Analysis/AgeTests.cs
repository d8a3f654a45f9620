using CsCheck;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Ranges;
using HealthNotes.Tests.Support;
using NodaTime;

namespace HealthNotes.Tests.Analysis;

public class AgeTests
{
    private static readonly Gen<DateOnly> Days = Gen.Int[0, 40_000].Select(days => new DateOnly(1990, 1, 1).AddDays(days));

    private static PartialDate Born(string text) => Note.Read($"born {text}").Opening.First<BornFact>()!.Date;

    /// <summary>NodaTime is an independent reference for calendar ages; it keeps a 29 February birthday on 28 February, we on 1 March.</summary>
    [Fact]
    public void Years_and_months_agree_with_NodaTime() => Gen.Select(Days, Days).ForAll((one, other) =>
    {
        (DateOnly born, DateOnly day) = one < other ? (one, other) : (other, one);
        if (born is { Month: 2, Day: 29 } || day.Day > 28 || born.Day > 28)
        {
            return;
        }

        Period period = Period.Between(Local(born), Local(day), PeriodUnits.Years | PeriodUnits.Months);
        var age = new Age(born, day, About: false);
        Assert.Equal((period.Years, period.Months), (age.Years, age.MonthsPastYears));
        Assert.Equal(Period.DaysBetween(Local(born), Local(day)), age.Days);
    });

    [Theory]
    [InlineData("2017-03-08", "2026-10-04", "9 years 6 months", 3497)]
    [InlineData("2026-09-01", "2026-11-25", "12 weeks", 85)]
    [InlineData("2026-03-08", "2026-11-25", "8 months", 262)]
    [InlineData("2017-03", "2026-10-04", "about 9 years 6 months", 3490)] // counted from the middle of the month
    [InlineData("~2010", "2026-10-04", "about 16 years", 5939)] // and from the middle of the year
    [InlineData("2024-02-29", "2025-02-28", "11 months", 365)]
    [InlineData("2024-02-29", "2025-03-01", "1 year", 366)]
    [InlineData("2026-12-01", "2026-11-25", "not born yet", -6)]
    public void In_words(string born, string day, string words, int days)
    {
        Age age = Age.On(Born(born), DateOnly.Parse(day));
        Assert.Equal(words, age.ToString());
        Assert.Equal(days, age.Days);
    }

    private static LocalDate Local(DateOnly day) => new(day.Year, day.Month, day.Day);
}
