using System.Globalization;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Rendering.Text;

/// <summary>Every word the page says of itself, in one place. The words of findings, ranges and cautions come from the analysis.</summary>
internal static partial class PageWords
{
    // The page
    public const string Language = "en";
    public const string PetWithoutName = "A pet without a name";
    public const string Attention = "Problems";
    public const string Lab = "Laboratory values";
    public const string Body = "Lumps, wounds and sore places";
    public const string Log = "Home-care log";
    public const string LookedAt = "What was looked at";
    public const string Due = "Rechecks and due dates";
    public const string Pictures = "Pictures";
    public const string Texts = "In the writer's own words";
    public const string NotUnderstood = "Lines that were not understood";
    public const string Earlier = "Earlier entries";
    public const string Cautions = "Cautions";
    public const string SharedSubtitle = "Made for sharing: without contacts and chip number, and only with pictures that were chosen.";

    // The pet
    public const string PetHeading = "The pet";
    public const string KnownLabel = "Known";
    public const string AllergyLabel = "Allergies";
    public const string MedicinesLabel = "Medicines";
    public const string LimitsLabel = "Set for this pet";

    /// <summary>A limit or range of the clinic's rules, and the file it stands in.</summary>
    public static string SetIn(string limit, string file) => $"{limit} ({file})";

    // Columns
    public const string Part = "Part";
    public const string AsWritten = "As written";
    public const string When = "When";
    public const string Vital = "Vital";
    public const string Value = "Value";
    public const string Kind = "What";
    public const string LabRange = "Laboratory's range";
    public const string Day = "Day";

    // Small words
    public const string Ok = "ok";
    public const string NoneSeen = "none";
    public const string OutsideOfLab = "outside the laboratory's range";
    public const string NoDay = "no day";
    public const string Recheck = "Look again at";
    public const string AboutThePet = "About the pet";
    public const string Source = "Source";

    /// <summary>A day as people write it: <c>5 Nov 2026</c>.</summary>
    public static string DayAndYear(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>With a capital letter: the name of a medicine as a title.</summary>
    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    public static string Iso(DateOnly day) => $"{day:yyyy-MM-dd}";

    public static string Iso(DateOnly? day) => day is { } known ? Iso(known) : NoDay;

    public static string NameOf(Species species) => species switch { Species.Dog => "Dog", Species.Cat => "Cat", _ => "" };

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
        Side.Front => "both front",
        Side.Hind => "both hind",
        _ => "",
    };

    /// <summary>What a part or a measure is called for a reader: the trade's term for a clinic, the plain one for an owner.</summary>
    public static string NameFor(Audience reader, string word) => word == "crt" && reader != Audience.Owner ? "Capillary refill time (CRT)" : Wording.NameOf(word);

    /// <summary>An age as a clinic writes it: <c>about 9y 8mo</c>.</summary>
    public static string ShortAge(string age) => age.Replace(" years", "y", StringComparison.Ordinal).Replace(" year", "y", StringComparison.Ordinal).Replace(" months", "mo", StringComparison.Ordinal).Replace(" month", "mo", StringComparison.Ordinal);

    public static string BothOf(string regions) => $"both {regions}";

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

    public static string PerKilogram(decimal perKg) => $"{Wording.Round(perKg, perKg < 0.01m ? 4 : perKg < 1 ? 2 : perKg < 10 ? 1 : 0)} mg/kg";

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

    public static string Per(string who, string? when) => string.Join(' ', new[] { "per", who, when ?? "" }.Where(word => word.Length > 0));

    // Lines and what is left out

    public static string LineNumber(int number) => $"line {number}";

    public static string LineOn(int number, DateOnly day) => $"line {number}, {Iso(day)}";

    public static string LeftOut(int count) => count == 1 ? "One more is in the notes." : $"{count:N0} more are in the notes.";

    public const string LabCaption = "Each as written, with the laboratory's own range";
    public const string ValuesCaption = "Each as written and as worked out";
    public const string Values = "Values";
    public const string Lines = "Lines behind the problems";
    public const string RangeNotGiven = "not given";
    public const string IsDone = "done";

    public static string LimitOf(bool above, string number, bool now) => $"{(above ? "above" : "below")} {number}: phone{(now ? " now" : "")}";

    public static string UsualOf(string range) => $"usually {range}";

    // Not looked at
    public static string SkippedBecause(string item, string reason) => reason.Length == 0 ? item : $"{item} (\u201C{reason}\u201D)";

    // Due
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
