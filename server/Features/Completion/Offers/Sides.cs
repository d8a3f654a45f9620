using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>The sides that a region can have, in the order they are offered.</summary>
internal static class Sides
{
    public static readonly IReadOnlyList<string> All = ["L", "R", "both", "LF", "RF", "LH", "RH", "front", "hind", "mid"];

    /// <summary>The sides of a region; none for the midline.</summary>
    public static IReadOnlyList<string> Of(SideRule rule) => rule switch
    {
        SideRule.Mid => [],
        SideRule.Four => ["LF", "RF", "LH", "RH", "both", "front", "hind"],
        SideRule.Any => ["L", "R", "mid", "both"],
        _ => ["L", "R", "both"],
    };

    /// <summary>True when a side can stand before a region. The forms <c>LF</c> and <c>LH</c> go with the limb they name.</summary>
    public static bool Fits(SideRule rule, string side) => (rule, side) switch
    {
        (SideRule.Four, "L" or "R") => true,
        (SideRule.Front, "LF" or "RF" or "front") or (SideRule.Hind, "LH" or "RH" or "hind") => true,
        (SideRule.Mid, "mid") => true,
        _ => Of(rule).Contains(side),
    };

    /// <summary>The region that a word is itself the name of: <c>ear</c>, <c>paw</c>.</summary>
    public static Region? OwnRegion(LineWord word) => NoteVocabulary.Default.Regions.Find(word.Word);

    /// <summary>The sides that may stand alone after a word.</summary>
    public static IReadOnlyList<string> OfWord(LineWord word) => word.Word is "limb" or "gait"
        ? Of(SideRule.Four)
        : OwnRegion(word) is { } own ? Of(own.Sides) : [];
}
