using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record;
using HealthNotes.Record.Courses;

namespace HealthNotes.Analysis.Changes;

/// <summary>A sign of one part (a describing word that is worth watching or more) that is new, or no longer noted.</summary>
/// <param name="Key">The part and its place.</param>
/// <param name="Word">The describing word.</param>
/// <param name="Site">The place; null where none is written.</param>
/// <param name="Tag">The tag; null where none is written.</param>
/// <param name="First">For a new sign its first line since; for one no longer noted the line that had it last.</param>
/// <param name="Last">For a new sign its last line; for one no longer noted the last look, which did not name it.</param>
/// <param name="IsNew">True for a new sign.</param>
public sealed record SignChange(CourseKey Key, DescribingWord Word, Site? Site, FindingTag? Tag, Noted First, Noted Last, bool IsNew)
{
    /// <summary>A sign that was last noted longer ago than this before the day counts as new again (common practice, no source).</summary>
    private const int RememberedDays = 365;

    /// <summary>New signs first, by their first day.</summary>
    internal static ImmutableArray<SignChange> Since(PetRecord record, DateOnly day) =>
        [.. NoteVocabulary.Default.LineWords.Terms.Where(word => word.Kind == WordKind.Exam)
            .SelectMany(word => record.All(word.Word))
            .SelectMany(course => Of(course, day, record))
            .OrderByDescending(change => change.IsNew).ThenBy(change => change.First.Day).ThenBy(change => change.First.Line)];

    private static IEnumerable<SignChange> Of(Course course, DateOnly day, PetRecord record)
    {
        int count = course.CountUpTo(day);
        ImmutableArray<Noted> before = course.Lines[..count].RemoveAll(line => line.Day.DayNumber < day.DayNumber - RememberedDays);
        ImmutableArray<Noted> after = course.Lines[count..];
        if (after.IsEmpty)
        {
            yield break;
        }

        HashSet<string> known = [.. before.SelectMany(Words).Select(word => word.Word)];
        foreach (IGrouping<DescribingWord, Noted> sign in after.SelectMany(line => Words(line).Select(word => (word, line))).GroupBy(pair => pair.word, pair => pair.line))
        {
            if (!known.Contains(sign.Key.Word) && IsWorth(sign.Key, record))
            {
                yield return Change(course, sign.Key, sign.First(), sign.Last(), isNew: true);
            }
        }

        if (!before.IsEmpty)
        {
            HashSet<string> now = [.. Words(after[^1]).Select(word => word.Word)];
            foreach (DescribingWord word in Words(before[^1]).Where(word => !now.Contains(word.Word) && IsWorth(word, record)))
            {
                yield return Change(course, word, before[^1], after[^1], isNew: false);
            }
        }
    }

    private static SignChange Change(Course course, DescribingWord word, Noted first, Noted last, bool isNew)
    {
        return new SignChange(course.Key, word, first.Item!.Site, first.Item.Tag, first, last, isNew);
    }

    private static IEnumerable<DescribingWord> Words(Noted line) => (line.Item?.Words ?? []).Select(word => word.Word);

    private static bool IsWorth(DescribingWord word, PetRecord record) =>
        word.For(record.Pet.Species, record.Pet.Male == true) is { Level: > Level.Expected };
}
