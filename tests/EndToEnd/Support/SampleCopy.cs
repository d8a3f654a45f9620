using HealthNotes.Tests.Support;

namespace HealthNotes.EndToEnd.Support;

/// <summary>A copy of a sample with one slip in it: a letter is missing and a space is too many, in its last check.</summary>
internal static class SampleCopy
{
    private const string Right = "gait stiff warms-up";
    private const string Slip = "gait stif  warms-up";

    /// <summary>Writes <c>visit.hnote</c> into an empty folder.</summary>
    public static void Write(string folder)
    {
        string text = File.ReadAllText(Repository.PathOf("samples/marlow.hnote"));
        int last = text.LastIndexOf(Right, StringComparison.Ordinal);
        Assert.True(last > 0, $"the sample has no line \"{Right}\" any more");
        File.WriteAllText(Path.Combine(folder, "visit.hnote"), text[..last] + Slip + text[(last + Right.Length)..]);
    }
}
