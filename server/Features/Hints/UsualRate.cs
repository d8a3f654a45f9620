using HealthNotes.Analysis.Rules;
using HealthNotes.Analysis.Trends;
using HealthNotes.Features.Documents;
using HealthNotes.Record.Courses;

namespace HealthNotes.Features.Hints;

/// <summary>What a count that is about to be written can be compared with.</summary>
public static class UsualRate
{
    /// <summary>
    /// What is usual for this pet and its last reading, in a few words; empty where the note says nothing of it.
    /// </summary>
    /// <param name="document">The note.</param>
    /// <param name="word"><c>hr</c> or <c>rr</c>.</param>
    /// <param name="state">How the pet is meanwhile; empty at rest.</param>
    public static string Of(Document document, string word, string state)
    {
        string wanted = state.Length == 0 ? "rest" : state;
        Course[] same = [.. document.Record.All(word).Where(course => course.Key.Detail.Split(' ')[0] == wanted)
            .Select(course => SameVital.Of(course, document.Record.All)).DistinctBy(course => course.Key)];
        string usual = same.Select(course => UsualNow.Of(document.Record, course)).OfType<UsualNow>().Select(range =>
            $"Usual for this pet: {Wording.Show(range.Low, range.High, range.Unit, us: false)} ({(range.Readings is { } count ? $"last {count} readings" : "by its vet")}). ").FirstOrDefault("");
        Noted? last = same.Select(course => course.Last).OfType<Noted>().MaxBy(noted => noted.Moment);
        return (usual + (last?.Reading is { } reading ? $"Last: {Wording.Show(reading.Value.Number, reading.Value.Unit)} on {DayWords.Iso(last.Day)}." : "")).Trim();
    }
}
