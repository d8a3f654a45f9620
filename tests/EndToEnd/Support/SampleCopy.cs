using HealthNotes.Tests.Support;

namespace HealthNotes.EndToEnd.Support;

/// <summary>
/// A copy of a sample with slips in its last check: one word lacks a letter, and two lines have a space too many
/// (a line with a word that is not known keeps its spaces until the word is corrected). The lump of its flank has a tag at
/// each check, for a rename.
/// </summary>
internal static class SampleCopy
{
    private const string Lump = "  lump L-flank ";

    /// <summary>How many lines of the copy hold the tag: those of the sample about that lump.</summary>
    public static int TaggedLines { get; } =
        File.ReadLines(Repository.PathOf("samples/marlow.hnote")).Count(line => line.StartsWith(Lump, StringComparison.Ordinal));

    /// <summary>Writes <c>visit.hnote</c> into an empty folder.</summary>
    public static void Write(string folder)
    {
        string text = File.ReadAllText(Repository.PathOf("samples/marlow.hnote"));
        text = text.Replace(Lump, $"{Lump}@fatty ", StringComparison.Ordinal);
        text = ReplaceLast(text, "gait stiff warms-up", "gait stif  warms-up");
        text = ReplaceLast(text, "stance square", "stance  square");
        File.WriteAllText(Path.Combine(folder, "visit.hnote"), text);
    }

    private static string ReplaceLast(string text, string right, string slip)
    {
        int last = text.LastIndexOf(right, StringComparison.Ordinal);
        Assert.True(last > 0, $"the sample has no line \"{right}\" any more");
        return string.Concat(text.AsSpan(0, last), slip, text.AsSpan(last + right.Length));
    }
}
