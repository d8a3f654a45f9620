using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Record.Checks;

/// <summary>One part or measure of a check, with what is known of it.</summary>
/// <param name="Item">What is looked at.</param>
/// <param name="Last">Its last line; null before the first.</param>
/// <param name="Normal">The range shown as normal; null for parts, and where none is known.</param>
/// <param name="Same">The courses of a vital as a check takes it; empty for parts.</param>
public sealed record CheckStep(CheckItem Item, Noted? Last, NormalRange? Normal, ImmutableArray<Course> Same)
{
    /// <summary>How its line starts: breathing is counted asleep, and a line must say so to be held against that.</summary>
    public string LineStart => Item.Word.Word == "rr" ? "rr asleep" : Item.Word.Word;

    /// <summary>A step for a pet. A vital is meant as a check takes it: breathing asleep, the pulse at rest, a rectal temperature.</summary>
    internal static CheckStep Of(PetRecord record, CheckItem item)
    {
        string word = item.Word.Word;
        (string state, string? place) = word switch { "rr" => ("asleep", null), "hr" => ("rest", null), "temp" => ("any", "rectal"), _ => ("any", (string?)null) };
        IEnumerable<Course> courses = record.All(word);
        if (!item.IsMeasured)
        {
            return new CheckStep(item, Latest(courses), null, []);
        }

        ImmutableArray<Course> same = [.. courses.Where(course => course.Key.Detail.Split(' ')[0] == state && (place is null || course.Key.Detail.EndsWith(place, StringComparison.Ordinal)))
            .Select(course => SameVital.Of(course, record.All)).DistinctBy(course => course.Key)];
        var asked = new NoteReading(0, default, record.Today, null, word, place, null, null, state, "", new ReadValue(0, "", null, null, Bound.Exact));
        return new CheckStep(item, Latest(same), record.Pet.KeyOf(asked) is { } key ? ClinicalTables.Default.NormalFor(key) : null, same);
    }

    private static Noted? Latest(IEnumerable<Course> courses) => courses.Select(course => course.Last).OfType<Noted>().MaxBy(noted => (noted.Day, noted.Time, noted.Line));
}
