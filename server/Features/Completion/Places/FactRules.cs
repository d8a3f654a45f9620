using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Completion.Places;

/// <summary>Where facts may stand, and how often. The note itself holds the same rules; a test compares the two.</summary>
internal static class FactRules
{
    private static readonly string[] MoreThanOnce = ["known", "allergy", "usual", "call-if", "phone-now-if", "med", "med-range", "med-strength", "phone", "home-check", "accept", "expect", "surgery", "include", "alias", "override-urgent"];
    private static readonly string[] InEntries = ["med", "known", "allergy", "home-check", "accept", "expect", "surgery"];
    private static readonly string[] InVisits = ["usual", "call-if", "phone-now-if", "med-range", "med-strength"];

    private static readonly string[] OnlyInRules = ["alias", "override-urgent"];

    /// <summary>True when the opening may say it again.</summary>
    public static bool MayRepeat(LineWord fact) => MoreThanOnce.Contains(fact.Word);

    /// <summary>True when an entry of this kind may hold it.</summary>
    public static bool MayStandIn(LineWord fact, string entryKind) => InEntries.Contains(fact.Word) || (entryKind == "visit" && InVisits.Contains(fact.Word));

    /// <summary>True when a line of this word may stand before the first entry of a note, or in a clinic's rules.</summary>
    public static bool MayOpen(LineWord word, bool isRules) => isRules ? ClinicRules.Takes(word.Word) : !OnlyInRules.Contains(word.Word) && word.Kind is WordKind.Fact or WordKind.Task or WordKind.Act or WordKind.Picture;
}
