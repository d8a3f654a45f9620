using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>
/// A bare rate that is low or cannot be: it may be a count whose time was left out. Each usual counting time that makes
/// it a rate within the pet's normal range is offered. None is ever preferred: a slow heart is real, and may be urgent.
/// </summary>
internal static class CountTimeFix
{
    private static readonly int[] CountingSeconds = [15, 30, 10, 6];

    public static IEnumerable<LineFix> Of(LineAt at, NoteFinding finding)
    {
        if (at.Line.Item is not Reading { Word.Word: "hr" or "rr", Value: PerMinute { Bound: Bound.Exact } rate }
            || Range(at, rate) is not { } range || rate.Number >= range.Low)
        {
            yield break;
        }

        foreach (int seconds in CountingSeconds)
        {
            decimal perMinute = rate.Number * 60 / seconds;
            if ((range.Low is null || perMinute >= range.Low) && (range.High is null || perMinute <= range.High))
            {
                string text = $"{rate.Number}/{seconds}s";
                yield return new LineFix("count-time", $"If it was counted in {seconds} seconds: write `{text}`", rate.Span, text);
            }
        }
    }

    /// <summary>The pet's normal range; where it is not known, what a living pet can have.</summary>
    private static NormalRange? Range(LineAt at, PerMinute rate)
    {
        NoteReading? reading = at.Document.Record.ReadingsAt(at.Index).FirstOrDefault(r => r.Span == rate.Span);
        return (reading is null ? null : at.Document.Record.NormalFor(reading)) ?? ClinicalTables.Default.Plausible.GetValueOrDefault(at.Word!.Word);
    }
}
