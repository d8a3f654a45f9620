using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Readings;

namespace HealthNotes.Record.Courses;

/// <summary>What a <see cref="Course"/> is about. Lines with equal keys tell of one thing.</summary>
/// <param name="Word">The word its lines start with (<c>rr</c>, <c>lump</c>, <c>vomit</c>); <c>head</c> and <c>entry</c> for entries themselves.</param>
/// <param name="Detail">
/// What tells several things under one word apart: the state and place of a vital (<c>asleep</c>, <c>any rectal</c>), the
/// site and tag of a lump (<c>L-flank @low</c>), the medicine of a dose in small letters, the kind of an entry.
/// </param>
public readonly record struct CourseKey(string Word, string Detail)
{
    private static readonly char[] Blanks = [' ', '-'];

    /// <summary>The note as a whole: a course that is always there, and empty. Rules about today hang on it.</summary>
    public static CourseKey Note { get; } = new("note", "");

    /// <summary>The heads of all checks in which something is written.</summary>
    public static CourseKey Checks { get; } = new("head", "check");

    /// <summary>All those checks with all that they hold.</summary>
    public static CourseKey WholeChecks { get; } = new("entry", "check");

    /// <summary>All visits with all that they hold.</summary>
    public static CourseKey WholeVisits { get; } = new("entry", "visit");

    /// <summary>The heads of all visits to the clinic.</summary>
    public static CourseKey Visits { get; } = new("head", "visit");

    /// <summary>The heads of all logs of home care.</summary>
    public static CourseKey Logs { get; } = new("head", "log");

    /// <summary>All weighings.</summary>
    public static CourseKey Weight { get; } = new("weight", "any");

    /// <summary>Body condition, in the scale of nine.</summary>
    public static CourseKey BodyCondition { get; } = new("bcs", "any /9");

    /// <summary>The doses of a medicine given (<c>gave</c>), not given (<c>missed</c>), or its end (<c>stop</c>).</summary>
    public static CourseKey Doses(string word, string medicine) => new(word, MedicineName(medicine));

    /// <summary>A medicine's name as it is compared: small letters, single blanks, a hyphen as a blank (<c>ear-drops</c> is <c>Ear drops</c>).</summary>
    public static string MedicineName(string medicine) => string.Join(' ', medicine.Split(Blanks, StringSplitOptions.RemoveEmptyEntries)).ToLowerInvariant();

    /// <summary>Readings that are compared with one another: same vital, state, place and scale. Null for those never compared (panting, excited).</summary>
    public static CourseKey? Of(NoteReading reading)
    {
        if (reading.Comparable is not { } state)
        {
            return null;
        }

        string unit = reading.Value.OnScaleOfNine().Unit;
        return new CourseKey(reading.What, state + (reading.Site is { } site ? " " + site : "") + (unit.StartsWith('/') && unit != "/min" ? " " + unit : ""));
    }

    /// <summary>The courses of looks that take in the place of a part: at itself, at both sides, and at the part as a whole.</summary>
    public static IEnumerable<CourseKey> Covering(NoteItem part) => part.Site is not { } site ? [Of(part)]
        : Enum.GetValues<Side>().Where(side => side.Covers(site.Side)).Select(side => new CourseKey(part.Word.Word, (site with { Side = side }).Name + (part.Tag is { } tag ? $" @{tag.Name}" : ""))).Distinct();

    /// <summary>What visits to the clinic tell of a part and its place in words, whatever else of its line is compared.</summary>
    public static CourseKey AtVisits(NoteItem item) => new("at-visit", $"{item.Word.Word} {item.Site?.Name}");

    /// <summary>The course of a line; null for a vital that is never compared, or cannot be right.</summary>
    public static CourseKey? Of(NoteItem item, NoteReading? reading) => item is not Reading ? Of(item) : reading is null ? null : Of(reading);

    /// <summary>The course of a line that is not a vital's.</summary>
    public static CourseKey Of(NoteItem item) => item switch
    {
        DoseEvent dose => Doses(dose.Word.Word, dose.Medicine.Text),
        Act or LabResult => new(item.Word.Word, MedicineName(item.Name?.Text ?? "")),
        // without its place nobody can tell which lump is gone, and what nobody got is not a dose
        NotSeen when (item.Word.Kind == WordKind.Scan && item.Site is null) || item.Word.Has(SlotKind.Medicine) => new("not-seen", item.Word.Word),
        _ when item.Word.Kind is WordKind.Scan or WordKind.Exam => new(item.Word.Word, (item.Site?.Name ?? "") + (item.Tag is { } tag ? $" @{tag.Name}" : "")),
        _ => new(item.Word.Word, ""),
    };
}
