using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>Levels in plain words.</summary>
internal static class PlainLevels
{
    public static string Of(Level level) => level switch
    {
        Level.Watch => "worth watching",
        Level.Call => "a reason to phone the clinic",
        Level.Urgent => "cannot wait: phone now",
        _ => "as expected",
    };
}
