using HealthNotes.Grammar.Notes;
using HealthNotes.Record;
using HealthNotes.Record.Due;

namespace HealthNotes.Tests.Analysis.Due;

/// <summary>What the plans of medicines say of days to come.</summary>
public class DueMedicineTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    [Fact]
    public void A_dose_given_less_often_than_daily_is_due_after_the_last()
    {
        Assert.Equal([(DueKind.Medicine, new DateOnly(2026, 11, 30))], Of("med x 1 tablet every 30d from 2026-06-01\n2026-10-31 log\n  gave x\n"));
        Assert.Equal([(DueKind.Medicine, new DateOnly(2026, 11, 1))], Of("med x 1 tablet every 30d from 2026-11-01\n2026-10-31 log\n  gave x\n"));
    }

    [Fact]
    public void Daily_doses_are_no_appointments() => Assert.Empty(Of("med x 1 tablet every 12h from 2026-11-01\nmed y 1 tablet every 24h from 2026-11-01\n2026-11-02 log\n  gave x\n"));

    [Fact]
    public void A_last_day_that_is_written_is_told_and_one_that_has_passed_is_not()
    {
        Assert.Equal([(DueKind.CourseEnd, new DateOnly(2026, 11, 29))], Of("med x 1 tablet every 12h for 10d from 2026-11-20\n"));
        Assert.Empty(Of("med x 1 tablet every 12h for 10d from 2026-10-20\n"));
        Assert.Empty(Of("med x 1 tablet every 30d from 2026-06-01\n2026-11-01 log\n  stop x\n"));
    }

    private static IEnumerable<(DueKind, DateOnly?)> Of(string note) =>
        DueList.Of(PetRecord.Of(Note.Read("pet A\nspecies dog\n" + note), Today)).Where(due => due.Kind is DueKind.Medicine or DueKind.CourseEnd).Select(due => (due.Kind, due.On));
}
