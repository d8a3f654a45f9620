using System.Collections.Immutable;
using HealthNotes.Record.Courses;

namespace HealthNotes.Record.Lumps;

/// <summary>The longest diameters of all targets added up, on a day when each is known.</summary>
/// <param name="Day">The day.</param>
/// <param name="Line">The line of the last size in it.</param>
/// <param name="Millimetres">The sum; a target that is gone counts as nothing.</param>
public sealed record TargetSum(DateOnly Day, int Line, decimal Millimetres)
{
    /// <summary>
    /// The sums in order. Sizes not further apart than <c>target-days</c> make one. Empty where no sum can be made: too many
    /// targets, one taken away by a vet, or one too small at the start to be measured well.
    /// </summary>
    /// <param name="targets">The targets.</param>
    /// <param name="from">The day on which they were named.</param>
    public static ImmutableArray<TargetSum> Of(ImmutableArray<LumpLife> targets, DateOnly from)
    {
        var numbers = LumpNumbers.Default;
        int apart = (int)numbers["target-days"];
        if (targets.IsEmpty || targets.Length > numbers["targets-most"] || targets.Any(life => life.EndWord == "removed"))
        {
            return [];
        }

        ImmutableArray<TargetSum>.Builder sums = ImmutableArray.CreateBuilder<TargetSum>();
        var known = new (int Day, decimal Millimetres)?[targets.Length];
        foreach (IGrouping<DateOnly, (Noted Noted, int Target, decimal? Millimetres)> day in Sizes(targets).Where(size => size.Noted.Day.DayNumber >= from.DayNumber - apart).GroupBy(size => size.Noted.Day).OrderBy(day => day.Key))
        {
            foreach ((Noted noted, int target, decimal? millimetres) in day)
            {
                known[target] = millimetres is { } number ? (noted.Day.DayNumber, number) : null;
            }

            if (Array.TrueForAll(known, size => size is { } one && (one.Millimetres == 0 || day.Key.DayNumber - one.Day <= apart)))
            {
                if (sums.Count == 0 && !Array.TrueForAll(known, size => size!.Value.Millimetres >= numbers["target-mm"]))
                {
                    return [];
                }

                sums.Add(new TargetSum(day.Key, day.Max(size => size.Noted.Line), known.Sum(size => size!.Value.Millimetres)));
            }
        }

        return sums.DrainToImmutable();
    }

    /// <summary>Measured sizes, one a day for each target, and nothing once it is gone; a bound or a thing gives no number.</summary>
    private static IEnumerable<(Noted Noted, int Target, decimal? Millimetres)> Sizes(ImmutableArray<LumpLife> targets) =>
        targets.SelectMany((life, index) => life.SizeOfEachDay
            .Where(size => !(size.Day >= life.Ended?.Day))
            .Select(size => (size.Noted, index, size.IsMeasured ? size.Typical : null))
            .Concat(life.Ended is { } ended ? [(ended, index, (decimal?)0)] : Array.Empty<(Noted, int, decimal?)>()));
}
