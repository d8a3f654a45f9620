using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>What to say a slot expects, in an owner's words with an example.</summary>
internal static class SlotHints
{
    public static string For(SlotKind kind, string word) => kind switch
    {
        SlotKind.Text => word == "pet" ? "a name, such as pet Marlow" : $"words after {word}",
        SlotKind.Species => "dog or cat",
        SlotKind.Sex => "male or female, then maybe neutered or entire",
        SlotKind.Birth => "a date such as 2017-03-08, 2017-03, 2017 or ~2017",
        SlotKind.Units => "metric or us",
        SlotKind.Vital => "a vital, such as rr",
        SlotKind.Range => "a range such as 16-24",
        SlotKind.Limit => "a line to cross, such as >32",
        SlotKind.Medicine => "the medicine's name",
        SlotKind.Rate => "a count such as 18/15s, or a rate such as 72",
        SlotKind.Temperature => "a temperature such as 38.6C or 101.5F",
        SlotKind.Mass => "a weight such as 21.4kg, 47lb 3oz or 83.2-55.9kg",
        SlotKind.Seconds => "seconds, such as 1.5s",
        SlotKind.Score when word == "mcs" => "normal, mild, moderate or severe, or a score such as 3/3",
        SlotKind.Score => "a score such as 5/9",
        SlotKind.Glucose => "glucose such as 8.2mmol/L or 148mg/dL",
        SlotKind.Site => "a place, such as L-flank",
        SlotKind.Words => "ok, or a word for what you saw",
        SlotKind.Item => "what it is about, such as ear",
        SlotKind.Topic => "what falls due",
        SlotKind.Rule => "the name of a finding, such as lump-sample",
        SlotKind.File => "a file name, such as left-ear.jpg",
        SlotKind.Ok => "ok",
        SlotKind.Schedule => word switch
        {
            "home-check" => "how often, such as every 30d",
            "accept" => "until when, such as until 2027-03-01",
            "recheck" or "due" => "when, such as in 2w or 2026-11-01",
            _ => "times, such as every 12h",
        },
        SlotKind.Volume => "a volume such as 900ml",
        SlotKind.Portion => "a part of a meal, such as 3/4, half or all",
        SlotKind.Size => "a size such as 12mm or like pea",
        SlotKind.Amount => "an amount such as 5mg or 1/2 tablet",
        SlotKind.Times => "a number of times, such as 2x",
        SlotKind.Duration => "how long, such as 3min",
        SlotKind.Distance => "how far, such as 2km",
        _ => "more",
    };

    /// <summary>The units a bare number may have lacked, the likeliest first; empty where numbers have none.</summary>
    public static string UnitsOf(SlotKind kind, string word) => kind switch
    {
        SlotKind.Temperature => "C, F",
        SlotKind.Mass => "kg, g, lb",
        SlotKind.Glucose => "mmol/L, mg/dL",
        SlotKind.Size => "mm, cm, in",
        SlotKind.Amount => word == "food" ? "g, oz, can" : "mg, ml, tablet",
        SlotKind.Volume => "ml, l, cup",
        SlotKind.Duration => "min, s, h",
        SlotKind.Distance => "km, mi",
        _ => "",
    };
}
