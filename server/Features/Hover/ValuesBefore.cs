using HealthNotes.Analysis.Rules;
using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Readings;

namespace HealthNotes.Features.Hover;

/// <summary>This pet's own earlier values of the same kind.</summary>
internal static class ValuesBefore
{
    private const int Most = 5;

    /// <summary>The earlier values with their days, and how far the present one is from the last of them; empty when there are none.</summary>
    public static string Of(HoverLine at, NoteReading reading)
    {
        NoteReading[] before = [.. Before(at, reading)];
        if (before.Length == 0)
        {
            return reading.Comparable is null ? "Not compared with others: it was not taken at rest." : "No earlier value to compare with.";
        }

        string list = string.Join(" · ", before.Reverse().Select(earlier => $"{DayWords.Iso(earlier.Day!.Value)} {Show(earlier.Value, at.Us)}"));
        return $"**Before:** {list}. {Change(reading, before[0], at.Us)}";
    }

    /// <summary>How far a reading is from the one before; empty when there is none.</summary>
    public static string Change(HoverLine at, NoteReading reading) =>
        Before(at, reading).FirstOrDefault() is { } last ? Change(reading, last, at.Us) : "";

    /// <summary>The last values before a reading on the same scale, latest first.</summary>
    private static IEnumerable<NoteReading> Before(HoverLine at, NoteReading reading) =>
        at.Before.Select(line => line.Reading).OfType<NoteReading>().Where(other => other.Value.Unit == reading.Value.Unit).Take(Most);

    /// <summary>A value with its bound.</summary>
    public static string Show(ReadValue value, bool us) =>
        value.Bound switch { Bound.Below => "below ", Bound.Above => "above ", Bound.About => "about ", _ => "" } + Wording.Show(value.Number, value.Unit, us);

    private static string Change(NoteReading now, NoteReading last, bool us)
    {
        if (now.Value.Bound is Bound.Below or Bound.Above || last.Value.Bound is Bound.Below or Bound.Above)
        {
            return "";
        }

        decimal change = now.Value.Number - last.Value.Number;
        string since = $"the last ({DayWords.Iso(last.Day!.Value)})";
        if (change == 0)
        {
            return $"The same as {since}.";
        }

        bool relative = now.What is "weight" or "lump" or "node" or "wound" && last.Value.Number > 0;
        string percent = relative ? $", {Wording.Round(Math.Abs(change) * 100 / last.Value.Number, 1)}%" : "";
        string about = now.Value.Bound == Bound.About || last.Value.Bound == Bound.About ? "About " : "";
        string text = $"{about}{ShownIn.Difference(Math.Abs(change), now.Value.Unit, us)}{percent} {(change > 0 ? "more" : "less")} than {since}.";
        return now.Value is { Low: { } low, High: { } high, Unit: "/min" } && low <= last.Value.Number && last.Value.Number <= high
            ? text + " One count more or less explains as much."
            : text;
    }
}
