using System.Numerics;
using HealthNotes.Record.Checks;

namespace HealthNotes.Features.Lenses;

/// <summary>How far a check got, in words.</summary>
internal static class CheckProgress
{
    /// <summary>In words: <c>9 of 16 looked at, 1 skipped, next: gums</c>; next is what waits in the check, else what it does not name.</summary>
    public static string Title(CheckCoverage coverage, CheckCoverage.Seen seen, bool withNext, string? waiting)
    {
        (ulong looked, ulong skipped, ulong missing) = coverage.Tell(seen);
        string left = skipped == 0 ? "" : $", {BitOperations.PopCount(skipped)} skipped";
        string? part = waiting ?? (missing != 0 ? coverage.Items[BitOperations.TrailingZeroCount(missing)].Word.Word : null);
        string next = withNext && part is not null ? $", next: {part}" : "";
        return $"{BitOperations.PopCount(looked)} of {coverage.Items.Length} looked at{left}{next}";
    }
}
