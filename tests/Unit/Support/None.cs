namespace HealthNotes.Tests.Support;

/// <summary>Says which of many are wrong, all at once.</summary>
public static class None
{
    public static void Wrong<T>(IEnumerable<T> wrong)
    {
        List<T> found = [.. wrong];
        Assert.True(found.Count == 0, string.Join("\n", found));
    }
}
