namespace HealthNotes.Tests.Support;

/// <summary>Says which of many are wrong, all at once.</summary>
public static class None
{
    public static void Wrong<T>(IEnumerable<T> wrong) => Assert.True(!wrong.Any(), string.Join("\n", wrong));
}
