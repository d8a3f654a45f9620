namespace HealthNotes.Features.Completion.Places;

/// <summary>
/// How far back a list looks, so that it is there before the next key is pressed however long the note is. It is years of
/// a line every hour.
/// </summary>
internal static class Lookback
{
    /// <summary>The most lines of earlier entries that are looked through.</summary>
    public const int Lines = 20_000;
}
