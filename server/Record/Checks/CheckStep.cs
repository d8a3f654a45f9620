using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Record.Checks;

/// <summary>One part or measure of a check, with what is known of it.</summary>
/// <param name="Item">What is looked at.</param>
/// <param name="Last">Its last line; null before the first.</param>
/// <param name="Normal">The range shown as normal; null for parts, and where none is known.</param>
/// <param name="Same">The courses of a vital as a check takes it; empty for parts.</param>
/// <param name="Standing">For a part, the lines with something not as expected that no later line of the same place has replaced, the newest first.</param>
public sealed record CheckStep(CheckItem Item, Noted? Last, NormalRange? Normal, ImmutableArray<Course> Same, ImmutableArray<Noted> Standing)
{
    /// <summary>How its line starts: breathing is counted asleep, and a line must say so to be compared with that.</summary>
    public string LineStart => Item.Word.Word == "rr" ? "rr asleep" : Item.Word.Word;

    /// <summary>A step for a pet. A vital is meant as a check takes it: breathing asleep, the pulse at rest, a rectal temperature.</summary>
    internal static CheckStep Of(PetRecord record, CheckItem item)
    {
        string word = item.Word.Word;
        (string state, string? place) = word switch { "rr" => ("asleep", null), "hr" => ("rest", null), "temp" => ("any", "rectal"), _ => ("any", (string?)null) };
        IEnumerable<Course> courses = record.All(word);
        if (!item.IsMeasured)
        {
            return new CheckStep(item, Latest(courses), null, [], StandingIn(courses, record.Pet));
        }

        ImmutableArray<Course> same = [.. courses.Where(course => course.Key.Detail.Split(' ')[0] == state && (place is null || course.Key.Detail.EndsWith(place, StringComparison.Ordinal)))
            .Select(course => SameVital.Of(course, record.All)).DistinctBy(course => course.Key)];
        var asked = new NoteReading(0, default, record.Today, null, word, place, null, null, state, "", new ReadValue(0, "", null, null, Bound.Exact));
        return new CheckStep(item, Latest(same), record.Pet.KeyOf(asked) is { } key ? ClinicalTables.Default.NormalFor(key) : null, same, []);
    }

    /// <summary>A side that is not as expected stays, whatever the other side is like, until a line of it or of the whole part says otherwise.</summary>
    private static ImmutableArray<Noted> StandingIn(IEnumerable<Course> courses, PetProfile pet)
    {
        List<Noted> standing = [];
        foreach (Noted line in courses.SelectMany(course => course.Lines).Order(Course.ByTime))
        {
            standing.RemoveAll(earlier => earlier.Day < line.Day && Covers(line.Item!.Site, earlier.Item!.Site));
            if (line.Item!.Words.Any(sign => sign.Word.For(pet.Species, pet.Male == true)?.Level > Level.Expected))
            {
                standing.Add(line);
            }
        }

        standing.Reverse();
        return [.. standing];
    }

    /// <summary>True when a line of one site speaks for another: the whole part for all of it, both sides for each.</summary>
    private static bool Covers(Site? site, Site? of) => site is null || (of is not null
        && (site.Region is null || site.Region.Word == of.Region?.Word) && (site.Number is null || site.Number == of.Number)
        && site.Side.Covers(of.Side));

    private static Noted? Latest(IEnumerable<Course> courses) => courses.Select(course => course.Last).OfType<Noted>().MaxBy(noted => (noted.Day, noted.Time, noted.Line));
}
