namespace HealthNotes.Rendering.Text;

/// <content>The words of a folder's index.</content>
internal static partial class PageWords
{
    public const string FolderTitle = "Health notes";
    public const string FolderDue = "Due";

    public static string FolderDocument(DateOnly today) => $"Health notes, {Iso(today)}";

    public static string FolderIntro(int notes, DateOnly today) => $"{(notes == 1 ? "One note" : $"{notes:N0} notes")}, as read on {Iso(today)}.";

    public static string FolderUnread(string problem) => $"This note could not be read: {problem}.";

    public static string FolderLast(DateOnly? day) => day is { } last ? $"last entry {Iso(last)}" : "no entry yet";

    public static string FolderMore(int count) => count == 1 ? "One more is on its page." : $"{count:N0} more are on its page.";

    public static string FolderNotUnderstood(int lines) => lines == 1 ? "One thing written could not be understood." : $"{lines:N0} things written could not be understood.";
}
