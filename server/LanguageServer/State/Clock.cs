namespace HealthNotes.LanguageServer.State;

/// <summary>The only place of the server that reads the clock.</summary>
internal static class Clock
{
    /// <summary>The day.</summary>
    public static DateOnly Today => DateOnly.FromDateTime(DateTime.Now);

    /// <summary>The time of day.</summary>
    public static TimeOnly Now => TimeOnly.FromDateTime(DateTime.Now);
}
