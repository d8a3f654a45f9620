using System.Globalization;
using HealthNotes.Record;
using HealthNotes.Record.Checks;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Trends;

/// <summary>
/// What is usual for this pet, as it may be printed beside new readings. What the vet wrote stands as it is. Otherwise it comes
/// from a settled time: not from the readings that are being judged, not from the days after surgery, not while the value is
/// on the move, and it never lies past the reference range or a limit of the clinic.
/// </summary>
public static class SettledUsual
{
    /// <summary>Without a later visit, readings so many days old are no longer the ones being judged (common practice, no source).</summary>
    private const int JudgedDays = 31;

    /// <summary>A visit longer ago no longer parts what is judged from what was (common practice, no source).</summary>
    private const int MostJudgedDays = 365;

    /// <summary>So many days after surgery nothing is usual (common practice, no source).</summary>
    private const int HealingDays = 30;

    /// <summary>The range of a vital; null where none can be given.</summary>
    public static UsualNow? Of(PetRecord record, Course course)
    {
        DateOnly today = record.Today;
        if (UsualNow.Of(record, course) is { Readings: null } byVet)
        {
            return byVet;
        }

        if (UsualRow.For(course.Key) is not { } row || Trend.Of(course, today, record.Pet.GrownOn(row.GrownMonths)) is { IsClear: true })
        {
            return null;
        }

        DateOnly judged = Judged(record);
        DateOnly[] surgeries = [.. Surgeries(record).Select(surgery => surgery.Day)];
        var settled = new Course(course.Key, course.Lines.RemoveAll(line => surgeries.Any(day => line.Day >= day && line.Day.DayNumber - day.DayNumber <= HealingDays)));
        return UsualNow.On(record, settled, judged) is { Readings: not null } own && course.Last?.Reading is { } last ? Within(record, course, own, last) : null;
    }

    /// <summary>The same for a step of a check; null for a part.</summary>
    public static UsualNow? Of(PetRecord record, CheckStep step) => step.Same.Select(course => Of(record, course)).FirstOrDefault(usual => usual is not null);

    /// <summary>Operations whose day is known: written in the fact, else that of its entry.</summary>
    public static IEnumerable<(DateOnly Day, string What)> Surgeries(PetRecord record) =>
        record.Facts.Conditions.Facts.Where(fact => fact.Fact.Word.Word == "surgery").Select(fact => (Day: DayIn(fact.Fact.Text.Text) ?? fact.Day, fact.Fact.Text.Text))
            .Where(surgery => surgery.Day <= record.Today).Select(surgery => (surgery.Day!.Value, surgery.Text));

    /// <summary>The clinic's limits that hold for a vital today, the latest of each side, in the canonical unit.</summary>
    public static IEnumerable<(decimal Limit, bool Above, DateOnly? Since)> Limits(PetRecord record, Course course) =>
        record.Facts.LimitsOn(LimitKey.For(course.Key), record.Today).DistinctBy(drawn => drawn.IsAbove)
            .Select(drawn => (drawn.Limit, drawn.IsAbove, drawn.Fact.Fact.Per?.When?.Earliest ?? drawn.Fact.Day));

    private static DateOnly Judged(PetRecord record)
    {
        DateOnly old = DayValue.Before(record.Today, JudgedDays);
        return record.Of(CourseKey.Visits).Last?.Day is { } visit && visit < old && visit > DayValue.Before(record.Today, MostJudgedDays) ? visit : old;
    }

    private static UsualNow? Within(PetRecord record, Course course, UsualNow own, NoteReading last)
    {
        NormalRange? normal = record.NormalFor(last);
        (decimal low, decimal high) = (Math.Max(own.Low, normal?.Low ?? own.Low), Math.Min(own.High, normal?.High ?? own.High));
        foreach ((decimal limit, bool above, _) in Limits(record, course))
        {
            (low, high) = above ? (low, Math.Min(high, limit)) : (Math.Max(low, limit), high);
        }

        return low < high ? own with { Low = low, High = high } : null;
    }

    private static DateOnly? DayIn(string text) => text.Split(' ')
        .Select(word => DateOnly.TryParseExact(word, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day : (DateOnly?)null)
        .FirstOrDefault(day => day is not null);
}
