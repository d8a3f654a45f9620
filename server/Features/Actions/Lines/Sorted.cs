using System.Collections.Immutable;

namespace HealthNotes.Features.Actions.Lines;

/// <summary>Looks things up that stand in the order of their lines.</summary>
internal static class Sorted
{
    /// <summary>Those from line <paramref name="first"/> to line <paramref name="last"/>; costs no more than what it finds.</summary>
    public static IEnumerable<T> Between<T>(ImmutableArray<T> inLineOrder, Func<T, int> lineOf, int first, int last)
    {
        int low = 0;
        int high = inLineOrder.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = lineOf(inLineOrder[middle]) < first ? (middle + 1, high) : (low, middle);
        }

        for (int index = low; index < inLineOrder.Length && lineOf(inLineOrder[index]) <= last; index++)
        {
            yield return inLineOrder[index];
        }
    }
}
