using HealthNotes.Rendering.Model;

namespace HealthNotes.Rendering.Text;

/// <content>The words of the check sheet.</content>
internal static partial class PageWords
{
    public const string SheetKnown = "Known:";
    public const string SheetDay = "Day and time";
    public const string SheetBy = "Looked at by";
    public const string SheetClinic = "Clinic:";
    public const string SheetLead = "Look and feel from head to tail, about once a month, when your pet is calm. Tick ok, or write what you saw. What you did not look at: leave it empty. Stop if it struggles.";
    public const string SheetListCaption = "Head to tail. In small letters under each part: the word its line starts with in the notes.";
    public const string SheetHow = "How";
    public const string SheetRange = "Usual here; normal";
    public const string SheetLast = "Last";
    public const string SheetToday = "Today";
    public const string SheetPlaces = "Lumps and wounds to measure again";
    public const string SheetPlacesCaption = "Numbers as on the map. Mark what is new on the map and give it the next number.";
    public const string SheetNewPlace = "new";
    public const string SheetThings = "True size, when the bar above measures right: hold beside a lump that you cannot measure. Things of one kind differ in size.";
    public const string SheetScaleRegion = "Ruler and sizes";
    public const string SheetCounting = "Counted in 15 seconds, and what it makes in a minute. In the notes write what you counted: 18/15s";
    public const string SheetCount = "15 s";
    public const string SheetPerMinute = "1 min";
    public const string SheetPhoneNow = "Phone now";
    public const string SheetTypingLead = "Typing it up:";
    public const string SheetTyping = "this adds an entry to the notes with the same parts in the same order, ready to be filled in:";

    public static string SheetTitle(string name) => $"{name}: check sheet";

    public static string SheetBack(string name) => $"{name}: lumps, sizes, counting, and when to phone";

    public static string SheetNormal(string range) => $"normal {range}";

    public static string SheetUsual(string range, bool byVet) => byVet ? $"usual {range} (vet)" : $"usual {range}";

    public static string SheetRuler(int bar) => $"Ruler in mm. Check the print first: the black bar must measure {bar} mm. If it does not, print again at 100 % (actual size), and do not measure with this sheet.";

    public static string SheetRulerTitle(int length) => $"A ruler of {length} mm, and a bar to check the print by";

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
