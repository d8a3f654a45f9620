namespace HealthNotes.Rendering.Html;

/// <summary>Which link targets the page may have: the web, mail, and places on the page itself. All others become plain text.</summary>
internal static class SafeLinks
{
    private static readonly string[] Allowed = ["https://", "http://", "mailto:", "#"];

    /// <summary>True when a link may be made.</summary>
    public static bool IsAllowed(string? target) =>
        target is not null && Array.Exists(Allowed, start => target.StartsWith(start, StringComparison.OrdinalIgnoreCase));

    /// <summary>A second lock behind <see cref="IsAllowed"/>: a target that is not allowed leads nowhere.</summary>
    public static string Rewrite(string target) => IsAllowed(target) ? target : "#";
}
