namespace HealthNotes.Features.Checks;

/// <summary>The line that stands over a check to be filled in: nothing is recorded that was not looked at.</summary>
internal static class FillIn
{
    /// <summary>A comment, without its indent.</summary>
    public const string HowTo = "# Take the # away from a line and write what you saw. What stays behind a # is not recorded.";
}
