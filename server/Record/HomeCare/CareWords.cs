using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Courses;

namespace HealthNotes.Record.HomeCare;

/// <summary>Which lines of vomiting, stools, coughing and seizures count.</summary>
public static class CareWords
{
    private static readonly string[] Loose = ["loose", "watery"];

    /// <summary>True for a line that tells of something, and not only of what is ordinary (a hair-ball, grass, none).</summary>
    public static bool Counts(Noted line) => line.Item is CareEvent { Times: not 0, Ok: false } care
        && (care.Word.Word == "seizure" || (care.Word.Word == "stool"
            ? care.Words.Any(word => Loose.Contains(word.Word.Word))
            : care.Words.Length == 0 || care.Words.Any(word => word.Word.Meanings.Any(meaning => meaning.Level > Level.Expected))));

    /// <summary>Words that say that nothing came, or that nobody saw it.</summary>
    private static readonly string[] Nothing = ["none", "not-seen", "cannot-pass"];

    /// <summary>How many times a line tells of; a bound above is at least one more. A line that says that nothing came tells of no time.</summary>
    public static int Times(Noted line) => line.Item is NotSeen || (line.Item is CareEvent { Times: null } nothing && nothing.Words.Any(word => Nothing.Contains(word.Word.Word))) ? 0 : Told(line);

    private static int Told(Noted line) => line.Item is CareEvent { Times: { } times } care ? times + (care.TimesBound == Bound.Above ? 1 : 0) : 1;
}
