using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Ranges;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>Holds one reading against the lines of the table.</summary>
/// <param name="Line">The line that was crossed.</param>
/// <param name="Level">The level that follows.</param>
/// <param name="Waiting">True when the line takes more readings in a row than there are yet, so that the next lower level holds.</param>
/// <param name="Earlier">The earlier readings it rests on as well.</param>
internal sealed record LineCrossing(LevelLine Line, FindingLevel Level, bool Waiting, IReadOnlyList<NoteReading> Earlier)
{
    /// <summary>How long ago a reading may be to count as the one before: two monthly checks in a row still belong together (common practice, no source).</summary>
    private const int DaysApartAtMost = 62;

    /// <summary>The strongest crossing of <paramref name="reading"/>, or null. The readings before it are asked for only where a line takes several in a row.</summary>
    public static LineCrossing? Strongest(NoteReading reading, IEnumerable<LevelLine> lines, PetRecord at)
    {
        LineCrossing? strongest = null;
        foreach (LevelLine line in lines)
        {
            if (!Crosses(reading.Value.OnScaleOfNine(), line))
            {
                continue;
            }

            IReadOnlyList<NoteReading> run = line.Repeat < 2 ? []
                : [.. Before(reading, at, line.Repeat - 1)
                    .TakeWhile(before => reading.Day!.Value.DayNumber - before.Day!.Value.DayNumber <= DaysApartAtMost && Crosses(before.Value.OnScaleOfNine(), line))];
            bool waiting = run.Count < line.Repeat - 1;
            FindingLevel level = waiting ? line.Level - 1 : line.Level;
            var crossing = new LineCrossing(line, level, waiting, run);
            if (strongest is null || level > strongest.Level || (level == strongest.Level && strongest.Waiting && !waiting))
            {
                strongest = crossing;
            }
        }

        return strongest;
    }

    /// <summary>Up to so many readings that a reading is compared with, the latest before it first.</summary>
    public static IEnumerable<NoteReading> Before(NoteReading reading, PetRecord at, int count) => CourseKey.Of(reading) is not { } key ? []
        : at.Before(key, reading.Day, reading.Time, reading.Line, count).Select(before => before.Reading!);

    /// <summary>True when the value is past the line. A bound counts only where all it can mean is past the line.</summary>
    public static bool Crosses(ReadValue value, LevelLine line) =>
        value.Unit == line.Unit && Crosses(value, line.Above, line.Value, line.Inclusive);

    /// <summary>True when the value is past <paramref name="limit"/> on that side.</summary>
    public static bool Crosses(ReadValue value, bool above, decimal limit, bool inclusive) => value.Bound switch
    {
        Bound.Above => above && value.Number >= limit,
        Bound.Below => !above && value.Number <= limit,
        _ when inclusive => above ? value.Number >= limit : value.Number <= limit,
        _ => above ? value.Number > limit : value.Number < limit,
    };
}
