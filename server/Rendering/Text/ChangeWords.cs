using System.Globalization;
using HealthNotes.Analysis.Changes;

namespace HealthNotes.Rendering.Text;

/// <content>The words of what changed.</content>
internal static partial class PageWords
{
    /// <summary>A smaller share is not told.</summary>
    private const decimal LeastPercent = 0.5m;

    public const string Then = "Then";
    public const string Now = "Now";
    public const string Change = "Change";
    public const string NotBefore = "not measured";
    public const string ChangesCaption = "Values measured since, each beside the last one before";
    public const string NothingChanged = "Nothing was written since that differs. That says nothing about what was not looked at.";

    public static string ChangesSince(DateOnly since, SinceWhat from) => from switch
    {
        SinceWhat.Visit => $"What changed since the last visit, {Iso(since)}",
        SinceWhat.FirstEntry => $"What changed since the first entry, {Iso(since)} (no visit is written down)",
        _ => $"What changed since {Iso(since)}",
    };

    public static string ValueOn(string value, DateOnly? day) => day is { } on ? $"{value} ({Iso(on)})" : value;

    public static string ChangedBy(decimal difference, string shown, decimal? percent, bool mayBeNone)
    {
        string share = percent is { } part && Math.Abs(part) >= LeastPercent ? $" ({Signed(part, Math.Round(Math.Abs(part), 0).ToString("0", CultureInfo.InvariantCulture))} %)" : "";
        return difference == 0 ? "the same" : $"{Signed(difference, shown)}{share}{(mayBeNone ? "; within the error of measuring" : "")}";
    }

    public static string PlaceNew(string name, DateOnly first, string size, DateOnly? measured) =>
        $"New: {name}, first noted {Iso(first)}{(size.Length == 0 ? "" : measured == first ? $", {size}" : $", {size} on {Iso(measured)}")}.";

    public static string PlaceGone(string name, string word, DateOnly day) => $"{name}: written as {word} on {Iso(day)}.";

    public static string PlaceMeasured(string name, string size, DateOnly day) => $"{name}: {size} on {Iso(day)}, not measured before.";

    public static string SignNew(string part, string word, DateOnly first, DateOnly last) =>
        $"New: {part}, {word}, noted {Iso(first)}{(first == last ? "" : $", last {Iso(last)}")}.";

    public static string SignGone(string part, string word, DateOnly last, DateOnly look) => $"No longer noted: {part}, {word} (last {Iso(last)}, looked at {Iso(look)}).";

    public static string MedicineBegun(string plan, DateOnly day) => $"Medicine begun {Iso(day)}: {plan}.";

    public static string MedicineChanged(string plan, string before, DateOnly day) => $"Medicine changed {Iso(day)}: {plan}; before: {before}.";

    public static string MedicineEnded(string medicine, DateOnly day) => $"Medicine ended {Iso(day)}: {medicine}.";

    public static string Happened(EventCount count)
    {
        string what = count.Word switch
        {
            "seizure" => "Seizures",
            "vomit" => "Vomited",
            "stool" => "Loose stools",
            "cough" => "Coughed",
            "sneeze" => "Sneezed",
            _ => "Doses written as missed",
        };
        return $"{what}: {Times(count.Times)}{(count.Days == count.Times ? "" : $", on {(count.Days == 1 ? "one day" : $"{count.Days:N0} days")}")}, last {Iso(count.Last)}.";
    }

    /// <summary>A minus sign of its own width, and a plus where it rose.</summary>
    private static string Signed(decimal difference, string size) => (difference < 0 ? "\u2212" : "+") + size;
}
