using HealthNotes.Grammar.Items;

namespace HealthNotes.Record.Readings;

/// <summary>A per-minute rate from a count, with what one beat or breath more or less would make of it.</summary>
/// <param name="PerMinute">The rate.</param>
/// <param name="Low">The rate had one fewer been counted.</param>
/// <param name="High">The rate had one more been counted.</param>
public readonly record struct CountRate(decimal PerMinute, decimal Low, decimal High)
{
    /// <summary>
    /// The rate of a count over a time: 18 in 15 s is 72 a minute, and between 68 and 76 when one was missed or counted
    /// twice. Null for a time of nothing.
    /// </summary>
    public static CountRate? Of(CountOverTime count)
    {
        decimal seconds = count.Time * count.Unit.Factor;
        if (seconds <= 0)
        {
            return null;
        }

        return new CountRate(count.Count * 60 / seconds, Math.Max(0, count.Count - 1) * 60 / seconds, (count.Count + 1) * 60 / seconds);
    }
}
