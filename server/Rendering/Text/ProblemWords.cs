using System.Globalization;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;

namespace HealthNotes.Rendering.Text;

/// <content>The words of the problems since the last visit.</content>
internal static partial class PageWords
{
    public const string Questions = "Questions";
    public const string Ended = "No longer there or out of range";
    public const string AlsoNoted = "Also noted, known or expected";
    public const string InRange = "Other measurements";
    public const string LastVisit = "Last visit";
    public const string Ordered = "Ordered";
    public const string NoMedicine = "none in the notes";
    public const string SurgeryLabel = "Surgery";

    public static string Until(string day) => $"until {day}";

    public const string NotDone = "Was due";
    public const string NextSteps = "What to do now";
    public const string InFull = "In full";
    public const string Background = "Background";
    public const string Paste = "To paste into the record";
    public const string Appendix = "Appendix";
    public const string AppendixLead = "The lines behind each problem, all values, the log and the owner's own text.";
    public const string Sources = "Sources";
    public const string NoClearChange = "no clear change in size";
    public const string NewToClinic = "not yet seen by the clinic";
    public const string OwnerWrites = "In the notes";
    public const string OwnerDid = "Done";
    public const string KnownToClinic = "known to the clinic";

    public static string SeenAtClinic(string day) => $"seen at the clinic {day}";

    public const string AtVisit = "visit";

    /// <summary>What a level is called for the reader.</summary>
    public static string LevelFor(Audience reader, FindingLevel level) => reader == Audience.Owner ? Wording.ForOwner(level) : level switch
    {
        FindingLevel.Urgent => "Urgent",
        FindingLevel.Call => "Significant",
        FindingLevel.Watch => "Out of range or changed",
        FindingLevel.Error => "Not understood",
        _ => "Noted",
    };

    /// <summary>A day for a page that is read later: <c>22 Nov</c> in the year of the page, else <c>22 Nov 2025</c>.</summary>
    public static string On(DateOnly day, DateOnly today) => day.ToString(day.Year == today.Year ? "d MMM" : "d MMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>A month, or a day of this year: where something began.</summary>
    public static string Since(DateOnly day, DateOnly today) => $"since {On(day, today)}";

    public static string ProblemsHeading(CurrentPeriod period, DateOnly today) => period switch
    {
        { Start: PeriodStart.Visit } => "Since the visit",
        { Start: PeriodStart.Asked, From: { } day } => $"Since {On(day, today)}",
        _ => "In the last twelve months",
    };

    public static string NoVisit => "No visit before today: the last twelve months.";

    public static string PeriodLine(DateOnly? first, DateOnly? last, DateOnly today) =>
        (first is { } from && last is { } to ? $"Notes {(from.Plus(31) > to || from.Year == today.Year ? Days(from, to, today) : $"{from.ToString("MMM yyyy", CultureInfo.InvariantCulture)} to {to.ToString(to.Year == today.Year ? "d MMM" : "d MMM yyyy", CultureInfo.InvariantCulture)}")}" : "The notes hold no entry yet") + $"; made {today.ToString("d MMM yyyy", CultureInfo.InvariantCulture)}. Not a diagnosis.";

    public static string Title(string name, DateOnly today) => $"{name}: visit page, {Iso(today)}";

    /// <summary>Said with care: silence is not health.</summary>
    public static string NothingCrossed(bool hasEntries) => hasEntries
        ? "No recorded value is out of range. This does not mean that the pet is healthy: only what was recorded was compared."
        : "There is nothing to compare yet. This does not mean that the pet is healthy.";

    public static string SameInAll(string value, int readings, string from, string to) => readings == 2 ? $"{value} ({from} and {to})" : $"{value} in all {readings:N0} readings, {from} to {to}";

    public static string OutsideSince(string day) => $", outside it since {day}";

    public static string Otherwise(IEnumerable<string> words) => string.Join(", ", words) is { Length: > 0 } list ? $"otherwise {list}" : "";

    public static string UpTo(string day) => $"until {day}";

    public static string NoticedOn(string word, string day) => $"\u201C{word}\u201D first written {day}";

    private static readonly string[] TimesInWords = ["", "once", "twice", "three times", "four times", "five times"];

    public const string Asked = "The clinic asked to be phoned";

    public static string RowMet(int inARow, bool above, string end) => $"{(above ? "above" : "below")} {end} {(inARow < TimesInWords.Length ? TimesInWords[inARow] : Times(inARow))} in a row";

    public static string PastEnd(bool above, string end) => $"{(above ? "above" : "below")} {end}";

    public static string ClinicOf(string day) => $"The clinic's words of {day}.";

    public static string LimitOf(string set) => $"The clinic's limit{(set.Length == 0 ? "" : $" ({set})")}.";

    public static string Phoned(bool seen, string day) => $"{(seen ? "Seen" : "Phoned")} {day}.";

    public static string PhonedBefore(bool seen, string day) => $"{(seen ? "Seen" : "Phoned")} {day}, no call in the notes after that.";

    public const string NotPhoned = "No call in the notes.";

    public static string NotedTimes(int times, string first, string last) => times == 2 ? $"noted {first} and {last}" : $"noted {Times(times)} since {first}, last {last}";

    /// <summary>Of what is counted, the most in one day now and before.</summary>
    public static string MoreInADay(int now, int then) => $"up to {now} in one day, before that at most {then}";

    /// <summary>How long or how far, and when.</summary>
    public static string ExtentOn(string extent, string day) => $"{extent} on {day}";

    public const string AnyKind = "any kind ";

    public static string InPart(string words) => $"in part {words}";

    /// <summary>Several words: on how many days all of them stood, and on how many any of them.</summary>
    public static string SomeOnDays(int together, int days, string first, string last) => $"{(together == 0 ? "never together" : $"together on {Count(together, "day")}")}, at least one {OnDays(days, first, last)}";

    public static string PercentIn(decimal percent, int days) => $"{Signed(percent)} % in {Span(days)}";

    public static string PercentFrom(decimal percent, string value, string day) => $"{Signed(percent)} % from {value} ({day})";

    public static string AsOn(string day) => $"the same as on {day}";

    public static string PercentSinceVisit(decimal percent) => $"{Signed(percent)} % since the visit";

    public static string PercentAMonth(decimal percent, string since) => $"{Signed(percent)} % a month since {since}";

    /// <summary>A stretch of time in the unit that a person would say it in.</summary>
    public static string Span(int days) => days < 14 ? Count(days, "day") : days < 61 ? Count((int)Math.Round(days / 7m), "week") : Count((int)Math.Round(days / 30.4375m), "month");

    public static string Count(int number, string what) => number == 1 ? $"1 {what}" : $"{number.ToString("N0", CultureInfo.InvariantCulture)} {what}s";

    /// <summary>Over how many seconds each of the values that are shown was counted; null for one that was not counted.</summary>
    public static string CountedOver(IReadOnlyList<decimal?> seconds) => seconds[^1] is not { } last ? ""
        : seconds.Contains(null) && seconds.Count > 1 ? $"the last counted over {last:0.#} s"
        : $"counted over {(seconds.Distinct().Count() == 1 ? "" : string.Join(", ", seconds.SkipLast(1).Select(one => $"{one:0.#}")) + " and ")}{last:0.#} s";

    public static string LimitIs(string number) => $"limit of {number}";

    public static string UsualIs(string ends) => $"usual {ends}";

    /// <summary>One end, or both: <c>150 to 190</c>.</summary>
    public static string Between(IReadOnlyList<string> ends) => string.Join(" to ", ends);

    public static string UsualAtClinic(string ends) => $"the clinic's usual {ends}";

    public const string WithinClinic = "within the clinic's";

    public static string PastClinic(bool above, string range) => $"{(above ? "above" : "below")} the clinic's {range}";

    /// <summary>How many readings of the period, how many of them in a row up to the last, and since when.</summary>
    public static string SomeOf(int past, int of, int inARow, string since) =>
        past == 1 && of == 1 ? "in the only reading" : past == of && of > 1 ? of == 2 ? "in both readings" : $"in all {of:N0} readings" : $"in {past:N0} of {Count(of, "reading")}{(inARow > 1 ? $", the last {inARow:N0} in a row (since {since})" : "")}";

    public static string AllSince(string day) => $"at each reading since {day}";

    public static string AfterInsulin(TimeSpan after) => $", {(after.TotalHours < 1 ? $"{after.Minutes} min" : after.Minutes == 0 ? $"{(int)after.TotalHours} h" : $"{(int)after.TotalHours} h {after.Minutes} min")} after insulin";

    public static string KnownAs(string words) => $"known: {words}";

    public const string Results = "Results";

    public const string Changed = "Changed";

    public static string ChangedTo(string what, string before, string now, string day, string since) => $"{what} {before} \u2192 {now} ({day}; {before} each time since {since})";

    public static string SeeProblems(IReadOnlyList<int> problems, IReadOnlyList<int> lumps) => "see " + string.Join(", ", new[] { Several("problem", problems), Several("lump", lumps) }.Where(part => part.Length > 0));

    private static string Several(string what, IReadOnlyList<int> numbers) => numbers.Count == 0 ? "" : $"{what}{(numbers.Count == 1 ? "" : "s")} {string.Join(" and ", numbers)}";

    public static string AskedOn(string question, string day) => $"{question} ({day})";

    public static string WorstOf(bool above, string value, string day) => $"{(above ? "highest" : "lowest")} {value} on {day}";

    public static string SetOn(string day) => $"set {day}";

    public static string GeneralRange(string range) => $"reference range {range}";

    public static string TimesOnDays(int times, int days, string last) => days == 1 ? $"{TimesShort(times)} on {last}" : $"{TimesShort(times)} on {Count(days, "day")}, last {last}";

    public static string OnDays(int days, string first, string last) => $"on {Count(days, "day")}, {first} to {last}";

    public static string EarlierOn(string days) => $"earlier {days}";

    public static string FoodLeft(int days, string first, string last) => $"some food left on each of the last {days:N0} days with meals logged ({first} to {last})";

    public static string Quoted(string words) => $"\u201C{words}\u201D";

    public static string ClinicExpects(string words, string until) => $"{Capital(words)}: expected by the clinic until {until}.";

    public static string ClinicSaid(string day, string words) => $"The clinic, {day}: \u201C{words}\u201D.".Replace(".\u201D.", ".\u201D", StringComparison.Ordinal);

    public static string Because(string words) => $" (\u201C{words}\u201D)";

    public static string NoneOn(string day) => $"none {day}";

    /// <summary>A part and its place: <c>left ear</c>, <c>joint both hips</c>.</summary>
    public static string PartAt(string name, string place, bool sideOnly) => (name, place.Length > 0) switch
    {
        ("joint" or "gait", true) => place,
        ("mood", _) => place,
        ("muscle", true) => $"{name} of {place}",
        _ => (sideOnly ? $"{place} {name}" : $"{name} {place}").Trim(),
    };

    public static string SinceAndLast(string since, string last, bool same) => same ? since : $"since {since}{(last.Length == 0 ? "" : $", last {last}")}";

    public static string NotSeenOn(string day) => $"gone at the look of {day}";

    public static string OrdinaryOn(string day) => $"as usual again {day}";

    public static string OutsideGeneral(string range) => $"outside the reference range of {range}";

    public static string IdealIs(string range) => $"ideal {range}";

    public static string PlaceTitle(string kind, int number, string place) => $"{kind} {number}, {(place.Length == 0 ? "place not written" : place)}";

    public static string EndedOn(string word, string day) => $"{word} {day}";

    public static string FirstNotedOn(string day) => $"first noted {day}";

    public static string DosesLogged(int given) => $"{Count(given, "dose")} logged";

    public static string GivenTwice(int times, string day, string clocks) => $"given {(times == 2 ? "twice" : Times(times))} on {day}{(clocks.Length == 0 ? "" : $", at {clocks}")}";

    public static string MissedOn(string days) => $"missed {days}";

    public static string NotLoggedOn(string days) => $"not logged {days}";

    public static string DetailsAt(int number) => $"A{number}";

    public static string MoreAt(int number) => $"more: A{number}";

    public static string DueIn(string what, string day) => $"{what} ({day})";

    /// <summary>What was ordered, the day it was done, and the day it was ordered for, where it was done later.</summary>
    public static string DoneOn(string what, string day, string? dueOn) => $"{what} {IsDone} {day}{(dueOn is null ? "" : $" (due {dueOn})")}";

    public const string GivenLabel = "At the visit";

    public static string ValidUntil(string what, string? until) => until is null ? what : $"{what}, valid until {until}";

    public static string SeenByVet(string day) => $"Vet's visit {day}";

    public static string OnlyValues(int values, string? day, TimeOnly? from, TimeOnly? to) => $" (only {values:N0} values{(day is null ? "" : $" on {day}")}{(from is null || to is null ? "" : $", {from:HH\\:mm} to {to:HH\\:mm}")})";

    public const string WeighedByDifference = "weighed by difference";

    public const string LastNoted = "last noted";

    public static string TeethRemoved(IEnumerable<string> teeth) => $"Teeth removed: {string.Join(", ", teeth)}.";

    public static string LineNotRead(int number) => $"line {number} could not be read:";

    public static string LookedAtIn(string day, IEnumerable<string> parts) => $"Check of {day}, nothing abnormal noted: {string.Join(", ", parts)}.";

    /// <summary>A part and what was written of it.</summary>
    public static string PartSeen(string part, string seen) => seen.Length == 0 || seen == Ok ? part : $"{part} ({seen})";

    public static string NotMeasuredIn(string day, IEnumerable<string> parts) => $"Not measured in the check of {day}: {string.Join("; ", parts)}.";

    public static string NotLookedAtIn(string? day, IEnumerable<string> parts) => $"Not looked at{(day is null ? "" : $" in the check of {day}")}: {string.Join("; ", parts)}.";

    public static string LastOn(string part, string day) => $"{part} (last {day})";

    public const string NothingToPaste = "nothing out of range in what was recorded";

    public static string CouldNotBeRead(int lines) => lines == 1 ? "One line could not be read, and was compared with nothing." : $"{lines:N0} lines could not be read, and were compared with nothing.";

    public static string MoreNotUnderstood(IEnumerable<int> lines, int more) => $"Also lines {string.Join(", ", lines)}{(more == 0 ? "" : $" and {more:N0} more")}.";

    public static string EarlierLines(int count) => count == 1 ? "1 earlier line is in the notes." : $"{count:N0} earlier lines are in the notes.";

    public static string NotesOf(DateOnly first, DateOnly last) => $"notes {Iso(first)} to {Iso(last)}";

    public static string MadeOn(DateOnly day) => $"made {Iso(day)}";

    public const string RestTicked = "The owner noted all other parts as normal.";

    public static string RunningFooter(IEnumerable<string> parts) => string.Join(" \u00B7 ", parts.Where(part => part.Length > 0));

    public static string Version(string version) => $"hnote {version}";

    public static string NextStep(FindingLevel level) => level switch
    {
        FindingLevel.Urgent => "Phone your clinic or an emergency clinic now about what is marked \u201CPhone now\u201D.",
        FindingLevel.Call => "Phone the clinic about what is marked \u201CPhone the clinic\u201D.",
        FindingLevel.Watch => "Look again at what is marked \u201CKeep an eye on\u201D, and write down what you see.",
        _ => "",
    };

    private static string Signed(decimal percent) => $"{(percent < 0 ? "\u2212" : "+")}{Wording.Round(Math.Abs(percent), Math.Abs(percent) < 1 ? 1 : 0)}";
}
