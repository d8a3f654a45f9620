using HealthNotes.Record.Checks;

namespace HealthNotes.Rendering.Text;

/// <content>The words of the check sheet and the log of home care.</content>
internal static partial class PageWords
{
    public const string SheetOwner = "Owner:";
    public const string SheetChip = "Chip:";
    public const string SheetKnown = "Known:";
    public const string SheetAllergies = "Allergies:";
    public const string SheetMedicines = "Medicines:";
    public const string SheetNoneKnown = "none written down";
    public const string SheetNoneNoted = "none written down";
    public const string SheetDay = "Day and time";
    public const string SheetBy = "Checked by";
    public const string SheetClinic = "Clinic:";
    public const string SheetLimitsOf = "Your clinic's limits:";
    public const string SheetLead = "Check about once a month, when your pet is calm, in this order. Tick ok, or write what you see. Leave empty what you do not check. Stop if your pet struggles.";
    public const string SheetListCaption = "Small letters beside a part: the word its line starts with in the notes.";
    public const string SheetHow = "How";
    public const string SheetRange = "Range";
    public const string SheetLast = "Last";
    public const string SheetToday = "Today";
    public const string SheetWithPet = "you with the pet";
    public const string SheetAlone = "you alone";
    public const string SheetSince = "Since the last check.";
    public const string SheetAskedCaption = "Tick as usual, or write what changed, how much and since when.";
    public const string SheetAsUsual = "as usual";
    public const string SheetMedicinesGiven = "Medicines given";
    public const string SheetPlaces = "Lumps and wounds to measure again";
    public const string SheetPlacesCaption = "Numbers as on the map; they never change. Mark what is new on the map under the next number.";
    public const string SheetNewPlace = "new";
    public const string SheetThings = "True size when the bar measures right: hold them beside a lump that you cannot measure. Things of one kind differ in size.";
    public const string SheetScaleRegion = "Ruler and sizes";
    public const string SheetBodyCondition = "Body condition, of 9:";
    public const string SheetCounting = "From a count to a rate a minute. In the notes write what you counted: 18/15s";
    public const string SheetCount = "count";
    public const string SheetPhoneNow = "Phone now";
    public const string SheetQuestions = "Questions for the clinic";
    public const string SheetTypingLead = "Typing it up:";
    public const string SheetTyping = "this adds an entry with the same lines in the same order, ready to be filled in:";
    public const string LogLead = "Write each thing as it happens. Tick a dose when your pet has swallowed it, and write the time beside it. If a dose is not given, write missed or withheld, and why.";
    public const string CareSheetCaption = "Small letters: the word that its line starts with in the notes.";
    public const string LogWhat = "What";
    public const string LogOtherDose = "Another medicine:";
    public const string LogNotes = "Notes and questions";
    public const string LogTyping = "start each day with a line like this; each cell is a line below it:";

    public static string SheetMore(int count) => $"{count:N0} more in the notes";

    public static string LogTitle(string name) => $"{name}: home-care log";

    public static string LogDose(string medicine, int dose) => $"{medicine}, dose {dose}";

    public static string LogDosesLeftOut(int count) => count == 1 ? "One more dose a day is in the notes." : $"{count:N0} more doses a day are in the notes.";

    public static string LogWound(string wound) => $"{wound}: dry, red, swollen, open, weeping, licked?";

    /// <summary>The rows of the log below the medicines, each with the word of its line.</summary>
    public static (string Name, string Word)[] LogRows(ShownUnits units) =>
    [
        ("First meal: how much eaten?", "ate"), ("Second meal: how much eaten?", "ate"), ($"Water drunk, {units.NameOf("mL")}", "water"), ("Urine: how often, colour", "pee"),
        ("Stool: how often, how firm", "stool"), ("Vomit: how often, what", "vomit"), ("Cough: how often", "cough"), ("Breathing asleep: breaths in 30 s", "rr asleep"),
        ($"Temperature, if asked for, {units.NameOf("Cel")}", "temp"), ("Mood, pain, walks", "mood"),
    ];

    public static string NameOf(CheckStage stage) => stage switch
    {
        CheckStage.Asleep => "Before you wake your pet",
        CheckStage.Across => "From across the room",
        CheckStage.Scales => "On the scales",
        CheckStage.Hands => "With your hands, from head to tail",
        _ => "Last; for a well pet you may leave this out",
    };

    public static string SheetTitle(string name) => $"{name}: check sheet";

    public static string SheetBack(string name) => $"{name}: questions, lumps, counting, and when to phone";

    public static string SheetNormal(string range) => $"reference {range}";

    public static string SheetUsual(string range, bool byVet) => byVet ? $"vet's range {range}" : $"usual {range}";

    public static string SheetIn(int seconds) => $"in {seconds} s";

    public static string SheetRuler(bool us, int barMm) => $"Ruler in {(us ? "inches" : "mm")}. The black bar must measure {(us ? "4 inches" : $"{barMm} mm")}. If it does not, do not use this sheet to measure: print it again at 100 % (actual size).";

    public static string SheetRulerTitle(bool us, int rulerMm) => $"A ruler of {(us ? "6 inches" : $"{rulerMm} mm")}, and a bar to check the print by";

    public static string SheetThingsTitle(IEnumerable<string> things) => $"Circles as large as: {string.Join(", ", things)}";

    public static string SheetSources(IEnumerable<string> sources) => $"Sources: {string.Join("; ", sources)}.";

    /// <summary>What stands behind the field of a measure.</summary>
    public static string SheetUnitOf(string word, ShownUnits units) => word switch
    {
        "hr" => "beats in 15 s",
        "rr" => "breaths in 30 s",
        "temp" => units.NameOf("Cel"),
        "crt" => "seconds",
        "weight" => units.NameOf("kg"),
        "glucose" => units.NameOf("mmol/L"),
        "bcs" => "of 9",
        "mcs" => "of 3",
        _ => "",
    };
}
