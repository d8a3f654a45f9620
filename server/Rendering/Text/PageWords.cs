using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Rendering.Model;

namespace HealthNotes.Rendering.Text;

/// <summary>Every word the page says of itself, in one place. The words of findings, ranges and cautions come from the analysis.</summary>
internal static partial class PageWords
{
    // The page
    public const string Language = "en";
    public const string PetWithoutName = "A pet without a name";
    public const string Attention = "What needs attention";
    public const string Questions = "Questions for the vet";
    public const string CheckHeadToTail = "This check, head to tail";
    public const string LookedAt = "What was looked at";
    public const string Vitals = "Vitals";
    public const string Lab = "Laboratory values";
    public const string Body = "Lumps, wounds and sore places";
    public const string Log = "Home-care log";
    public const string NotLookedAt = "Not looked at";
    public const string Due = "Rechecks and things due";
    public const string Pictures = "Pictures";
    public const string Texts = "In the writer's own words";
    public const string NotUnderstood = "Lines that were not understood";
    public const string ToKnow = "To know";
    public const string Earlier = "Earlier entries";
    public const string Cautions = "Cautions";

    // The pet
    public const string PetHeading = "The pet";
    public const string SpeciesLabel = "Species";
    public const string BreedLabel = "Breed";
    public const string SexLabel = "Sex";
    public const string AgeLabel = "Age";
    public const string WeightLabel = "Last weight";
    public const string KnownLabel = "Known conditions";
    public const string AllergyLabel = "Allergies";
    public const string MedicinesLabel = "Medicines now";
    public const string LimitsLabel = "Set for this pet";

    // Columns
    public const string Part = "Part";
    public const string Place = "Place";
    public const string Seen = "What was seen";
    public const string AsWritten = "As written";
    public const string LevelColumn = "Level";
    public const string When = "When";
    public const string Vital = "Vital";
    public const string Value = "Value";
    public const string Taken = "How taken";
    public const string Normal = "Normal";
    public const string UsualHere = "Pet's usual";
    public const string Kind = "What";
    public const string Size = "Size";
    public const string FirstNoted = "First noted";
    public const string LastNoted = "Last noted";
    public const string LabRange = "Laboratory's range";
    public const string LabRemark = "Remark";
    public const string Day = "Day";
    public const string Time = "Time";
    public const string HowMuch = "How much, how";

    // Small words
    public const string Ok = "ok";
    public const string NoneSeen = "none";
    public const string OutsideOfLab = "outside the laboratory's range";
    public const string Or = " or ";
    public const string EverythingElse = "Everything else";
    public const string NotCompared = "not compared";
    public const string NoDay = "no day";
    public const string Grown = "grown";
    public const string Recheck = "Look again at";
    public const string AboutThePet = "About the pet";
    public const string Source = "Source";

    public static string Title(string name, DateOnly today) => $"{name}: visit page, {Iso(today)}";

    public static string SharedSubtitle(DateOnly today) => $"Made for sharing from the notes kept at home, as read on {Iso(today)}: without contacts and chip number, and only with pictures that were chosen.";

    public static string Subtitle(DateOnly today) => $"Visit page, made from the notes kept at home, as read on {Iso(today)}.";

    public static string Summary(PeriodName period) => (period.HasEntries, period.FromCheck, period.From) switch
    {
        (false, _, _) => "The notes hold no entry yet.",
        (_, true, { } day) => $"Shown in full: the last check, {Iso(day)}, and everything since.",
        (_, true, null) => "Shown in full: the last check and everything since.",
        (_, false, { } day) => $"Shown in full: everything since {Iso(day)}. The notes hold no check.",
        _ => "Shown in full: all entries. None has a day that could be read.",
    };

    public static string Iso(DateOnly day) => $"{day:yyyy-MM-dd}";

    public static string Iso(DateOnly? day) => day is { } known ? Iso(known) : NoDay;

    public static string OnDay(string what, DateOnly? day) => day is { } known ? $"{what} on {Iso(known)}" : what;

    public static string NameOf(Species species) => species switch { Species.Dog => "Dog", Species.Cat => "Cat", _ => "" };

    public static string NameOf(Verdict verdict) => verdict switch
    {
        Verdict.AsExpected => "As expected",
        Verdict.AsUsual => "As usual",
        Verdict.NotUnderstood => LevelName(FindingLevel.Error),
        _ => "",
    };

    public static string NameOf(Side side) => side switch
    {
        Side.L => "left",
        Side.R => "right",
        Side.LF => "left front",
        Side.RF => "right front",
        Side.LH => "left hind",
        Side.RH => "right hind",
        Side.Mid => "midline",
        Side.Both => "both sides",
        _ => "",
    };

    public static string NameOfCare(string word) => word switch
    {
        "gave" => "Gave",
        "missed" => "Missed",
        "stop" => "Stopped",
        "ate" => "Ate",
        "pee" => "Urine",
        _ => Wording.NameOf(word),
    };

    public static string ContactLabel(string word) => word switch
    {
        "owner" => "Owner",
        "vet" => "Vet",
        "clinic" => "Clinic",
        "phone" => "Phone",
        "chip" => "Chip",
        _ => word,
    };

    public static string? Sex(bool? male, bool? neutered) => (male, neutered) switch
    {
        (true, true) => "Male, neutered",
        (true, false) => "Male, entire",
        (true, null) => "Male",
        (false, true) => "Female, neutered",
        (false, false) => "Female, entire",
        (false, null) => "Female",
        (null, true) => "Neutered",
        (null, false) => "Entire",
        _ => null,
    };

    public static string AgeAndStage(string age, string? stage, string born) => stage is null ? $"{age} (born {born})" : $"{age}, {stage} (born {born})";

    public static string PerKilogram(decimal perKg, string weight) =>
        $" (is {Wording.Round(perKg, perKg < 0.01m ? 4 : perKg < 1 ? 3 : perKg < 10 ? 2 : 1)} mg/kg at {weight})";

    // Values
    public static string Pressure(string written) => $"{written} mmHg";

    public static string NotThere(string word, bool ended) => ended ? $"{word} gone" : $"no {word}";

    /// <summary>When an act was done, and how long it holds.</summary>
    public static string Validity(Schedule schedule) => string.Join(", ", new[]
    {
        (schedule.On ?? schedule.From) is { } on ? $"on {on}" : "",
        schedule.Until is { } until ? $"valid until {until}" : schedule.For is { } holds ? $"valid for {ValuePrinter.Print(holds)}" : schedule.Every is { } every ? $"every {ValuePrinter.Print(every)}" : "",
    }.Where(word => word.Length > 0));

    public static string Between(string low, string high) => $"({low} to {high})";

    public static string OnOtherScale(string value) => $" (is {value})";

    public static string Bounded(Bound bound, string value) => bound switch
    {
        Bound.About => $"about {value}",
        Bound.Below => $"below {value}",
        Bound.Above => $"above {value}",
        _ => value,
    };

    public static string Times(int times) => times == 1 ? "once" : $"{times} times";

    public static string StateOfRange(string state) => state switch
    {
        "rest" => "at rest",
        "on-insulin" => "on insulin",
        _ => state.Replace('-', ' '),
    };

    public static string Per(string who, string? when) => string.Join(' ', new[] { "per", who, when ?? "" }.Where(word => word.Length > 0));

    // What needs attention
    public static string LevelName(FindingLevel level) => Wording.NameOf(level);

    /// <summary>Said with care: silence is not health.</summary>
    public static string NothingCrossed(PeriodName period) => period.HasEntries
        ? "In what was written down and understood, no line was crossed. That is not a clean bill of health: it says nothing about what was not looked at, not written or not understood."
        : "There is nothing to compare yet. That is not a clean bill of health.";

    public static string AlsoNotUnderstood(int lines) =>
        lines == 1 ? "One thing written could not be understood, so it was compared with nothing; see below." : $"{lines} things written could not be understood, so they were compared with nothing; see below.";

    public static string Totals(IEnumerable<KeyValuePair<FindingLevel, int>> counts) => $"{Counted(counts)}; strongest first.";

    private static string Counted(IEnumerable<KeyValuePair<FindingLevel, int>> counts) =>
        string.Join(", ", counts.OrderByDescending(c => c.Key).Select(c => $"{c.Value} {LevelName(c.Key).ToLowerInvariant()}"));

    public static string Older(IEnumerable<KeyValuePair<FindingLevel, int>> counts) =>
        $"Not repeated here, from earlier entries: {Counted(counts)}.";

    public static string LineNumber(int number) => $"line {number}";

    public static string LineOn(int number, DateOnly day) => $"line {number}, {Iso(day)}";

    public static string LeftOut(int count) => count == 1 ? "One more is in the notes." : $"{count:N0} more are in the notes.";

    public static string LeftOutEvidence(int count) => $"and {count:N0} earlier lines";

    public static string AlsoOn(IEnumerable<DateOnly?> days, int leftOut)
    {
        IEnumerable<string> counted = days.GroupBy(day => day).Select(day => day.Count() == 1 ? Iso(day.Key) : $"{Iso(day.Key)} ({day.Count()} times)");
        return $"Also on {string.Join(", ", counted)}{(leftOut == 0 ? "" : $" and {leftOut:N0} times before")}";
    }

    public static string SourceIs(string source) => $"{Source}: {source}.";

    // Captions
    public static string CheckCaption(DateOnly? day) => $"Check of {Iso(day)}";

    public const string SinceCaption = "Looked at since";
    public const string LookedAtCaption = "Looked at, by day";
    public const string LabCaption = "Each as written, with the laboratory's own range";
    public const string VitalsCaption = "Each value as written and as worked out, beside the range shown as normal";
    public const string BodyCaption = "Each with its sizes over time, the longest diameter first; numbers as on the map";
    public const string LogCaption = "By day and time";

    public static string RangeSources(string vital, IEnumerable<string> sources) => $"{vital}: {string.Join("; ", sources)}.";

    public const string RangeSourcesLead = "Whose ranges:";

    // Not looked at
    public static string SkippedBecause(string item, string reason) => reason.Length == 0 ? $"{item}: skipped, no reason written" : $"{item}: skipped, {reason}";

    public const string RestWasOk = "Parts not named were written as looked at and ok (else ok).";

    public static string NotMentioned(IEnumerable<string> words) => $"Not mentioned in the check: {string.Join(", ", words)}.";

    // Due
    public static string DueOn(DateOnly? on, int? days) => (on, days) switch
    {
        ({ } day, 0) => $"{Iso(day)} (today)",
        ({ } day, 1) => $"{Iso(day)} (tomorrow)",
        ({ } day, -1) => $"{Iso(day)} (was due yesterday)",
        ({ } day, < 0) => $"{Iso(day)} (was due {-days:N0} days ago)",
        ({ } day, _) => $"{Iso(day)} (in {days:N0} days)",
        _ => "no day",
    };

    public static string NextCheck(int days, bool asWritten) => asWritten ? $"Next home check (every {days:N0} days)" : $"Next home check (about every {days:N0} days)";

    public static string NextWeighing(int days) => $"Next weighing (about every {days:N0} days)";

    public static string NextVisit(int days) => $"Next visit to the clinic (about every {days:N0} days)";

    public static string NextDose(string medicine) => $"Next dose of {medicine}, as its plan is written";

    public static string LastDayOf(string medicine) => $"Last day of {medicine}, as its plan is written";

    public static string DayBy(string day, string by) => $"{day}, by {by}";

    // Texts and lines
    public static string EntryTitle(DateOnly? day, EntryHead head) => $"{Iso(day)}, {head.Kind}{(head.By is null ? "" : $" by {NoteText.Field(head.By)}")}";

    public const string TextCut = "The rest of this text is in the notes.";
    public const string NotUnderstoodLead = "Kept exactly as written. What could not be read in them, or cannot be right, was compared with nothing.";

    public static string EarlierNotUnderstood(int count, IEnumerable<int> lines) =>
        count == 1 ? $"In earlier entries one line was not understood: line {string.Join(", ", lines)}." : $"In earlier entries {count:N0} lines were not understood, the last of them: {string.Join(", ", lines)}.";

    public static string EarlierLeftOut(int count, DateOnly? first) => $"And {count:N0} more, back to {Iso(first)}.";

    public const string PictureNote = "Kept beside the notes; not part of this page.";
    public const string NoRoomForPicture = "the page holds enough pictures";

    public static string NotShown(string why) => $"not shown: {why}";

    public static string PictureOf(string caption, DateOnly? day) => $"Photo of {Iso(day)}: {caption}";

    public const string PictureStart = "[picture not shown: ";

    public static string PictureEnd(string? file) => string.IsNullOrEmpty(file) ? "]" : $" ({NoteText.Field(file)})]";

    public const string Closing = "These notes describe and compare. They are not a diagnosis and propose no treatment: a veterinarian decides.";
}
