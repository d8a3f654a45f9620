using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Readings;

namespace HealthNotes.Record.Lumps;

/// <summary>One size of a lump, a wound or a node: a span that its longest diameter lies in, never more exact than it was written.</summary>
/// <param name="Noted">The line it stands in.</param>
/// <param name="Written">As written.</param>
/// <param name="Typical">The longest diameter in mm, for showing; null where only a bound was written.</param>
/// <param name="Low">The least that what was written can mean, in mm.</param>
/// <param name="High">The most; null without an upper end (<c>&gt;20mm</c>).</param>
/// <param name="HandLow">The least it may really be, by the error of the hand that measured.</param>
/// <param name="HandHigh">The most it may really be; null without an upper end.</param>
/// <param name="Diameters">All diameters in mm as written, where they were measured; empty for a thing or a bound.</param>
public sealed record LumpSize(
    Noted Noted,
    string Written,
    decimal? Typical,
    decimal Low,
    decimal? High,
    decimal HandLow,
    decimal? HandHigh,
    ImmutableArray<decimal> Diameters)
{
    /// <summary>The day it was measured.</summary>
    public DateOnly Day => Noted.Day;

    /// <summary>True for a size that was measured, not compared with a thing.</summary>
    public bool IsMeasured { get; init; }

    /// <summary>True for exactly one number: not about, not a thing, not a bound.</summary>
    public bool IsPoint => Low == High;

    /// <summary>The volume; null where no diameter was measured.</summary>
    public LumpVolume? Volume => Diameters.IsEmpty ? null : LumpVolume.Of(Diameters);

    /// <summary>The size a line states; null when it states none that can be right.</summary>
    public static LumpSize? Of(Noted noted)
    {
        if (noted.Reading is not { Value.Unit: "mm" } reading || noted.Item?.Value is not { } size)
        {
            return null;
        }

        decimal number = reading.Value.Number;
        ImmutableArray<decimal> diameters = size is Diameters measured ? [.. measured.Lengths.Select(UnitConversion.ToCanonical)] : [number];
        var numbers = LumpNumbers.Default;
        decimal error = Math.Max(numbers["hand-mm"], number * numbers["hand-percent"] / 100);
        decimal about = number * numbers["about-percent"] / 100;
        return (reading.Value.Bound, reading.Value.Low, reading.Value.High) switch
        {
            (_, { } low, { } high) => new(noted, reading.Written, number, low, high, low, high, []),
            (Bound.Below, _, _) => new(noted, reading.Written, null, 0, number, 0, number + error, []) { IsMeasured = true },
            (Bound.Above, _, _) => new(noted, reading.Written, null, number, null, Math.Max(0, number - error), null, []) { IsMeasured = true },
            (Bound.About, _, _) => new(noted, reading.Written, number, number - about, number + about, Math.Max(0, number - about - error), number + about + error, diameters) { IsMeasured = true },
            _ => new(noted, reading.Written, number, number, number, Math.Max(0, number - error), number + error, diameters) { IsMeasured = true },
        };
    }
}
