using HealthNotes.Grammar.Items;
using HealthNotes.Record.Courses;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>A limit that the clinic drew, in the unit in which the owner counts.</summary>
internal static class ClinicLimit
{
    private const decimal SecondsAMinute = 60;

    /// <summary>
    /// What asks for a phone call: <c>phone at 16 or more in 30 s</c>. Exactly the limit is not past it. The seconds are those of the
    /// last count, or of the check sheet (<paramref name="onSheet"/>).
    /// </summary>
    public static string Words(ShownUnits units, Course course, decimal limit, bool above, string unit, int inARow = 1, bool onSheet = false) => (unit == "/min"
        ? (onSheet ? SheetSeconds(course) : SecondsOf(course)) is var seconds && FirstPast(limit, above, seconds) is { } count ? PageWords.PhoneAtCount(count, above, seconds) : PageWords.PhoneAt(units.Show(limit, unit), above)
        : PageWords.PhoneAt(units.Show(limit, unit), above)) + (inARow > 1 ? PageWords.SoManyInARow(inARow) : "");

    /// <summary>The first whole count past the limit, a rate in a minute; null where none is, below zero.</summary>
    internal static int? FirstPast(decimal limit, bool above, decimal seconds)
    {
        decimal counted = limit * seconds / SecondsAMinute;
        decimal first = above ? Math.Floor(counted) + 1 : Math.Ceiling(counted) - 1;
        return first >= 0 ? (int)first : null;
    }

    /// <summary>For how long breaths or beats are counted.</summary>
    internal static decimal SecondsOf(Course course) =>
        course.Lines.Select(line => line.Item?.Value).OfType<CountOverTime>().LastOrDefault() is { } count ? count.Time * count.Unit.Factor : SheetSeconds(course);

    private static decimal SheetSeconds(Course course) => course.Key.Word == "rr" ? 30 : 15;
}
