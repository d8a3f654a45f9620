using System.Numerics;
using HealthNotes.Record.Checks;

namespace HealthNotes.Features.Lenses;

/// <summary>How far a check got, in words.</summary>
internal static class CheckProgress
{
    /// <summary>In words: <c>9 of 16 looked at, 1 skipped, next: gums</c>.</summary>
    public static string Title(CheckCoverage coverage, CheckCoverage.Seen seen, bool withNext)
    {
        (ulong looked, ulong skipped, ulong missing) = coverage.Tell(seen);
        string left = skipped == 0 ? "" : $", {BitOperations.PopCount(skipped)} skipped";
        string next = withNext && missing != 0 ? $", next: {coverage.Items[BitOperations.TrailingZeroCount(missing)].Word.Word}" : "";
        return $"{BitOperations.PopCount(looked)} of {coverage.Items.Length} looked at{left}{next}";
    }
}
