using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;
using HealthNotes.Record.Lumps;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Problems;

/// <summary>All that was found about one thing since the clinic last saw the pet. It describes; it names no disease.</summary>
/// <param name="Topic">What it is about.</param>
/// <param name="Detail">Of topics that are told course by course, which course; else empty.</param>
/// <param name="Level">The strongest of what is open; <see cref="FindingLevel.Info"/> where nothing is.</param>
/// <param name="IsEnded">True when a later look has ended all of it.</param>
/// <param name="Last">The last day it was seen; null for what has no day.</param>
/// <param name="Speed">How fast it changes, in percent of itself a month; 0 where nothing is measured.</param>
/// <param name="Parts">What to show of it, in the order of the table of topics.</param>
/// <param name="Findings">What it rests on, in line order.</param>
public sealed record Problem(
    ProblemTopic Topic, string Detail, FindingLevel Level, bool IsEnded, DateOnly? Last, decimal Speed, ImmutableArray<ProblemPart> Parts, ImmutableArray<NoteFinding> Findings)
{
    /// <summary>True for what is a problem, or was one since the visit, and for doses; false for what is known, expected or within what is usual.</summary>
    public bool IsTold => Level > FindingLevel.Info || IsEnded || Parts is [DosePart, ..] || (Parts is [PlacePart { Life.Ended: null }, ..] && Findings.Any(finding => finding.Level > FindingLevel.Info));

    /// <summary>What of it the clinic asked to be phoned about.</summary>
    public ImmutableArray<PhoneAsked> Asked { get; init; } = [];

    /// <summary>The lines it rests on, in order.</summary>
    public ImmutableArray<int> Lines { get; } = [.. Findings.SelectMany(finding => finding.Evidence).Distinct().Order()];
}

/// <summary>One thing to show of a problem.</summary>
public abstract record ProblemPart
{
    /// <summary>The lines that it tells of, in the order of time: what the owner wrote below one of them is about this and nothing else.</summary>
    public ImmutableArray<int> Lines { get; init; } = [];
}

/// <summary>A value of one day.</summary>
/// <param name="Day">The day.</param>
/// <param name="Value">The value.</param>
public sealed record DatedValue(DateOnly Day, ReadValue Value)
{
    /// <summary>For how many seconds it was counted; null for what was not counted.</summary>
    public decimal? Seconds { get; init; }

    /// <summary>True for a weight that is the difference of two, of a person with and without the pet.</summary>
    public bool IsDifference { get; init; }

    /// <summary>How it was taken, such as <c>before-food</c>; null where the note does not say.</summary>
    public string? State { get; init; }

    /// <summary>When it was read on that day; null where the note does not say.</summary>
    public TimeOnly? Time { get; init; }
}

/// <summary>How often a reading lay past the limit that the clinic set, or outside the range it calls usual.</summary>
/// <param name="Low">The lower end; null where it is open.</param>
/// <param name="High">The upper end; null where it is open.</param>
/// <param name="Unit">The canonical unit.</param>
/// <param name="IsLimit">True for a limit to phone at, false for a usual range.</param>
/// <param name="Set">When it was set; null where it is not written.</param>
/// <param name="Above">How many readings of the period lie above it.</param>
/// <param name="Below">How many lie below it.</param>
/// <param name="Of">How many readings of the period there are.</param>
/// <param name="InARow">How many of them are the last ones.</param>
/// <param name="Worst">The reading that lies furthest past it; null where none does.</param>
public sealed record ClinicRange(decimal? Low, decimal? High, string Unit, bool IsLimit, PartialDate? Set, int Above, int Below, int Of, int InARow, DatedValue? Worst)
{
    /// <summary>The days of the period with a reading past it, in order.</summary>
    public ImmutableArray<DateOnly> Days { get; init; } = [];

    /// <summary>The first day of the readings past it that go on without a break up to the last one, before the period too; null where the last one is within.</summary>
    public DateOnly? Since { get; init; }

    /// <summary>How long after the last insulin of its day the worst glucose was; null where none is written before it.</summary>
    public TimeSpan? AfterInsulin { get; init; }
}

/// <summary>So many readings in a row past a value, as the clinic asked to be phoned about.</summary>
/// <param name="InARow">How many.</param>
/// <param name="Above">True for above it.</param>
/// <param name="End">The value.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Day">The day of the last of them, the latest time this happened.</param>
public sealed record RowMet(int InARow, bool Above, decimal End, string Unit, DateOnly Day);

/// <summary>A vital, from then to now.</summary>
/// <param name="Key">What was measured and how.</param>
/// <param name="From">Where it comes from: the highest or lowest reliable weight, the start of a clear trend, the last reading up to the visit; null when there is one reading alone.</param>
/// <param name="AtVisit">The last reading up to the visit, where it is not the first one shown; else null.</param>
/// <param name="Now">The last reading.</param>
/// <param name="InPercent">The change from <paramref name="From"/> in percent, for a weight; else null.</param>
/// <param name="SinceVisit">The change from the visit in percent, for a weight; else null.</param>
/// <param name="PerMonth">The present rate in percent a month, for a weight; null where the last stretch is too short to tell.</param>
/// <param name="Normal">The general range; null where the clinic set one, or none is known.</param>
/// <param name="Clinic">What the clinic set; null when it set nothing.</param>
/// <param name="Found">True when a finding is about it; false for what stands beside it.</param>
public sealed record ValuePart(
    CourseKey Key, DatedValue? From, DatedValue? AtVisit, DatedValue Now, decimal? InPercent, decimal? SinceVisit, decimal? PerMonth, NormalRange? Normal, ClinicRange? Clinic, bool Found) : ProblemPart
{
    /// <summary>The first day of the stretch that <see cref="PerMonth"/> is worked out from.</summary>
    public DateOnly? RateSince { get; init; }

    /// <summary>The first day of the readings outside the general range that go on without a break up to the last one; null where that lies within.</summary>
    public DateOnly? OutsideSince { get; init; }

    /// <summary>Of a score its levels: that of <see cref="From"/>, of the visit and of now, each with the first and last day of the readings that agree; empty for other values.</summary>
    public ImmutableArray<(DatedValue Value, DateOnly First, DateOnly Last)> Levels { get; init; } = [];

    /// <summary>What the clinic asked to be phoned about, so many readings in a row past a value, where the period has them; else null.</summary>
    public RowMet? Rule { get; init; }

    /// <summary>The latest readings, where one was past what the clinic set, in order, where an open question or the clinic's own words are about them; else empty.</summary>
    public ImmutableArray<DatedValue> ByDay { get; init; } = [];

    /// <summary>The first day on which more or less was written without an amount, before <see cref="From"/>; null where that was not.</summary>
    public (string Word, DateOnly Day)? NoticedOn { get; init; }

    /// <summary>The range that the clinic calls usual, where <see cref="Clinic"/> is a limit; else null.</summary>
    public ClinicRange? Usual { get; init; }
}

/// <summary>A sign at one part, or something that happened, as often as it was written.</summary>
/// <param name="Item">One of its lines: the part and its place.</param>
/// <param name="Words">What was written of it, in the vocabulary's spelling; those of the last line first.</param>
/// <param name="First">The first day of the run of lines that have it.</param>
/// <param name="Last">The last day.</param>
/// <param name="IsKnown">True when the clinic noted it at the visit, expects it, or knows of it.</param>
/// <param name="Ended">The later look without it; null while there is none.</param>
public sealed record SignPart(NoteItem Item, ImmutableArray<string> Words, DateOnly First, DateOnly Last, bool IsKnown, Noted? Ended) : ProblemPart
{
    /// <summary>What happened in the period, a line each, in order; empty for a part that was looked at.</summary>
    public ImmutableArray<Noted> Events { get; init; } = [];

    /// <summary>The lines before with any of the words, in order: of what happened before the period, of a look before <see cref="First"/>.</summary>
    public ImmutableArray<Noted> Before { get; init; } = [];

    /// <summary>The days of <see cref="Before"/> on which all of the words were written.</summary>
    public ImmutableHashSet<DateOnly> BeforeTogether { get; init; } = [];

    /// <summary>The days of <see cref="Events"/> with all of the words in one line, in order.</summary>
    public ImmutableArray<DateOnly> Together { get; init; } = [];

    /// <summary>How many days from the first to the last have it; 0 for what happened.</summary>
    public int Looks { get; init; }

    /// <summary>How many days in between have <c>else ok</c> in a check that does not name the part: whether it was there, nobody wrote.</summary>
    public int Unnamed { get; init; }

    /// <summary>Of what is counted, the most in one day of the period and in one day of the year before it; null where nothing is counted.</summary>
    public (int Times, DateOnly Day)? Most { get; init; }

    /// <inheritdoc cref="Most"/>
    public (int Times, DateOnly Day)? MostBefore { get; init; }
}

/// <summary>A lump, a wound or a node over its life.</summary>
/// <param name="Number">Its number, which never changes.</param>
/// <param name="Life">Its life.</param>
/// <param name="From">The first size that can be compared with the last; null when fewer than two are written.</param>
/// <param name="Between">Sizes between the two: all where there are few, else that of the visit and the one before the last.</param>
/// <param name="Now">The last size; null when none is written.</param>
/// <param name="Signs">What was written of it since the visit beside its size.</param>
public sealed record PlacePart(int Number, LumpLife Life, LumpSize? From, ImmutableArray<LumpSize> Between, LumpSize? Now, ImmutableArray<PlaceSign> Signs) : ProblemPart
{
    /// <summary>True where the notes hold a visit and it was first noted after the last one.</summary>
    public bool IsNewToClinic { get; init; }

    /// <summary>What can be said of the first and the last size; null when they cannot be compared.</summary>
    public SizeChange? Change => From is not null && Now is not null ? new SizeChange(From, Now) : null;
}

/// <summary>A word written of a lump, a wound or a node.</summary>
/// <param name="Word">The word.</param>
/// <param name="Runs">The first and last day of each stretch of lines that have it, in order; a line about the place that does not have it ends a stretch.</param>
/// <param name="Gone">The day on which the line after the last stretch says that it is not there; null where none does.</param>
/// <param name="IsNow">True when the last line that describes the place has it.</param>
public sealed record PlaceSign(string Word, ImmutableArray<(DateOnly First, DateOnly Last)> Runs, DateOnly? Gone, bool IsNow);

/// <summary>Meals of which a part was left, day after day up to the last day with a meal.</summary>
/// <param name="First">The first of these days.</param>
/// <param name="Last">The last.</param>
/// <param name="Days">How many days with a meal there are among them: on each some was left.</param>
public sealed record MealsPart(DateOnly First, DateOnly Last, int Days) : ProblemPart;

/// <summary>The doses of one medicine since the visit.</summary>
/// <param name="Medicine">The medicine, as compared.</param>
/// <param name="Order">The plan that held last; null where none is written.</param>
/// <param name="Given">How many doses were written as given.</param>
/// <param name="Doubled">Doses given so close together that they count as one.</param>
/// <param name="Missed">The lines that say that a dose was missed.</param>
/// <param name="NotLogged">The days on which the log is silent about a dose of the plan.</param>
public sealed record DosePart(string Medicine, MedicineOrder? Order, int Given, ImmutableArray<DoseCluster> Doubled, ImmutableArray<Noted> Missed, ImmutableArray<DateOnly> NotLogged) : ProblemPart;

/// <summary>What nothing else tells: the finding's own words.</summary>
/// <param name="Finding">The finding.</param>
public sealed record ToldPart(NoteFinding Finding) : ProblemPart;
