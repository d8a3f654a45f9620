using HealthNotes.Grammar.Items;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Export.Tables;

/// <summary>One value of one line: a reading of the record, or one of the two numbers of a blood pressure.</summary>
internal sealed record MeasuredValue(string What, ReadValue Value, string? Written, NoteReading? Reading)
{
    private const string Pressure = "mmHg";

    /// <summary>All values that can be right, in the order of their lines.</summary>
    public static IEnumerable<Row<MeasuredValue>> In(ExportedNote note) =>
        from entry in note.Analysis.Record.Entries
        from row in entry.Readings.Select(reading => new Row<MeasuredValue>(reading.Line, entry.Entry.Head, reading.Time, new(reading.What, reading.Value, reading.Written, reading)))
            .Concat(entry.Entry.Items.SelectMany(item => Pressures(item.Value).Select(value => new Row<MeasuredValue>(item.Line, entry.Entry.Head, item.Value.Head.Time ?? entry.Entry.Head.Time, value))))
        select row;

    /// <summary>The reference range of the value; null where none applies.</summary>
    public NormalRange? Normal(ExportedNote note) => Reading is null ? null : note.Analysis.Record.NormalFor(Reading);

    /// <summary>The clinic's limit that held on the day of the value; of several the strictest.</summary>
    public decimal? Limit(ExportedNote note, bool above) => Reading is not { Day: { } day } ? null
        : note.Analysis.Record.Facts.LimitsOn(LimitKey.For(Reading), day).Where(line => line.IsAbove == above).Select(line => (decimal?)line.Limit)
            .Aggregate((decimal?)null, (strictest, limit) => strictest is null || (above ? limit < strictest : limit > strictest) ? limit : strictest);

    private static IEnumerable<MeasuredValue> Pressures(NoteItem item)
    {
        if (item.Value is Pressure value)
        {
            string written = value.Diastolic is { } second ? $"{value.Systolic:0.##}/{second:0.##}" : $"{value.Systolic:0.##}";
            yield return new("bp-systolic", new ReadValue(value.Systolic, Pressure, null, null, value.Bound), written, null);
            if (value.Diastolic is { } low)
            {
                yield return new("bp-diastolic", new ReadValue(low, Pressure, null, null, value.Bound), written, null);
            }
        }
    }
}
