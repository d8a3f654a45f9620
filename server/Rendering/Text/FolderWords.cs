namespace HealthNotes.Rendering.Text;

/// <content>The words of a folder's index.</content>
internal static partial class PageWords
{
    public const string FolderTitle = "Health notes";
    public const string FolderDue = "Due";
    public const string FolderOverdue = "Overdue";

    public static string FolderDocument(DateOnly today) => $"Health notes, {Iso(today)}";

    public static string FolderIntro(int notes, DateOnly today) => $"{(notes == 1 ? "One note" : $"{notes:N0} notes")}, as read on {Iso(today)}.";

    public static string FolderUnread(string problem) => $"This note could not be read: {problem}.";

    public static string FolderLast(DateOnly? day) => day is { } last ? $"last entry {Iso(last)}" : "no entry yet";

    public static string FolderMore(int count) => count == 1 ? "One more is on its page." : $"{count:N0} more are on its page.";

    public static string FolderNotUnderstood(int lines) => lines == 1 ? "One thing written could not be understood." : $"{lines:N0} things written could not be understood.";

    /// <summary>When something is due: <c>due yesterday</c>, <c>due 18 Oct, 38 days ago</c>, <c>in 6 days, 1 Dec</c>.</summary>
    public static string DueWhen(DateOnly? on, DateOnly today) => on is not { } day ? "no day given" : (day.DayNumber - today.DayNumber) switch
    {
        0 => "today",
        1 => "tomorrow",
        -1 => "due yesterday",
        < 0 and var days => $"due {ShortDay(day, today)}, {-days:N0} days ago",
        var days => $"in {days:N0} days, {ShortDay(day, today)}",
    };

    /// <summary>The same for a clinic: <c>recheck left ear</c>.</summary>
    public static string RecheckOf(string what, string place, bool sideOnly) => LookAgain(what, place, sideOnly).Replace(Recheck, "recheck", StringComparison.Ordinal);

    /// <summary>Something to look at again: <c>Look again at left ear</c>, <c>Look again at lump, right armpit</c>.</summary>
    public static string LookAgain(string what, string place, bool sideOnly) => sideOnly ? $"{Recheck} {place} {what}" : $"{Recheck} {what}{(place.Length == 0 ? "" : $", {place}")}";
}
