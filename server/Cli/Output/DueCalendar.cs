using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using HealthNotes.Files;
using HealthNotes.Rendering;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;

namespace HealthNotes.Cli.Output;

/// <summary>
/// What is due as an iCalendar file (RFC 5545): whole-day events, each with an alarm the morning before while it is still to come.
/// Nothing stands on a day that is over: what is overdue stands on today. The same thing of the same note always has
/// the same name, so that a calendar that imports the file again changes its event and adds no second one.
/// </summary>
internal static class DueCalendar
{
    /// <summary>A whole day begins at midnight: so many hours before is nine in the morning of the day before.</summary>
    private const int HoursBefore = 15;

    private const string Transparent = "TRANSPARENT";
    private const string Display = "DISPLAY";
    private const string Domain = "hnote.invalid";
    private const string Caution = "From the notes kept at home, which describe and compare. A veterinarian decides.";

    /// <summary>The file. What has no day is left out.</summary>
    public static string Of(IEnumerable<DueOfPet> due, DateOnly today)
    {
        var calendar = new Ical.Net.Calendar { ProductId = PageMark.Calendar, Method = Ical.Net.CalendarMethods.Publish };
        foreach (IGrouping<string, DueOfPet> same in due.Where(one => one.Due.On is not null).GroupBy(NameOf))
        {
            int number = 0;
            foreach (DueOfPet one in same)
            {
                calendar.Events.Add(Event(one, number == 0 ? same.Key : $"{same.Key}-{number}", today));
                number++;
            }
        }

        return new CalendarSerializer().SerializeToString(calendar) ?? throw new InvalidOperationException("the calendar was not written");
    }

    private static CalendarEvent Event(DueOfPet one, string name, DateOnly today)
    {
        DateOnly on = one.Due.On!.Value;
        string what = ShownText.Of($"{one.Pet}: {(on < today ? one.Line : one.What)}".Replace('\t', ' '));
        var made = new CalendarEvent
        {
            Uid = $"{name}@{Domain}",
            DtStamp = new CalDateTime(today.Year, today.Month, today.Day, 0, 0, 0, CalDateTime.UtcTzId),
            Start = new CalDateTime(on < today ? today : on),
            Summary = what,
            Description = one.Clinic.Length == 0 ? Caution : $"{ShownText.Of($"Clinic: {one.Clinic}".Replace('\t', ' '))}\n{Caution}",
            Transparency = Transparent,
        };
        if (on > today)
        {
            made.Alarms.Add(new Alarm { Action = Display, Description = what, Trigger = new Trigger(Duration.FromHours(-HoursBefore)) });
        }

        return made;
    }

    /// <summary>From the note's file, the pet and what is due, not from the day: a check that was done moves its event.</summary>
    private static string NameOf(DueOfPet one)
    {
        string about = string.Create(CultureInfo.InvariantCulture, $"{Path.GetFileName(one.Path)}\n{one.Pet}\n{one.Due.Kind}\n{one.Due.What.ToUpperInvariant()}");
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(about)).AsSpan(0, 12));
    }
}
