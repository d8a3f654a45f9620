using HealthNotes.EndToEnd.Support;

namespace HealthNotes.EndToEnd.Editors;

/// <summary>The sample with slips, in which the lump at the left flank has a tag as well, to be renamed.</summary>
internal static class TaggedSample
{
    private const string Tag = "@slow";

    /// <summary>Writes <c>visit.hnote</c> into an empty folder.</summary>
    public static void Write(string folder)
    {
        SampleCopy.Write(folder);
        string text = File.ReadAllText(PathIn(folder)).Replace("lump L-flank ", $"lump L-flank {Tag} ", StringComparison.Ordinal);
        Assert.Contains(Tag, text, StringComparison.Ordinal);
        File.WriteAllText(PathIn(folder), text);
    }

    /// <summary>How often the tag stands in the file on disk.</summary>
    public static int Mentions(string folder) => File.ReadAllText(PathIn(folder)).Split(Tag).Length - 1;

    private static string PathIn(string folder) => Path.Combine(folder, "visit.hnote");
}
