using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Record.Ranges;

/// <summary>What a reading is looked up by.</summary>
/// <param name="What">The vital's word.</param>
/// <param name="Species">dog or cat.</param>
/// <param name="Stage">The life stage's key.</param>
/// <param name="Size">The size class, or null when it is not known.</param>
/// <param name="State">The comparable state.</param>
/// <param name="Place">Where it was taken, or null.</param>
public sealed record ReadingKey(string What, Species Species, string Stage, string? Size, string State, string? Place);

/// <summary>The left part of a row: which readings it is for. <c>any</c> matches everything.</summary>
public sealed record Selector(string What, string Species, string[] Stages, string[] Sizes, string[] States, string[] Places)
{
    /// <summary>How many cells are filled in; the fullest matching selector is used.</summary>
    public int Fullness => new[] { Stages, Sizes, States, Places }.Count(cell => cell is not ["any"]);

    /// <summary>Reads the selector cells of a row.</summary>
    public static Selector Of(TsvRow row) =>
        new(row["what"], row["species"], row.Several("stage"), row.Several("size"), row.Several("state"), row.Several("place"));

    /// <summary>What rows are grouped by: the vital, and the animal as the tables name it.</summary>
    public static (string What, string Animal) Animal(ReadingKey key) => (key.What, key.Species == Grammar.Vocabulary.Species.Cat ? "cat" : "dog");

    /// <summary>Of the rows that are for a reading those with the fullest selector, in order.</summary>
    public static List<T> Fullest<T>(IEnumerable<T> rows, Func<T, Selector> selector, ReadingKey key)
    {
        var best = new List<T>();
        foreach (T row in rows)
        {
            int better = selector(row).Matches(key) ? best.Count == 0 ? 1 : selector(row).Fullness.CompareTo(selector(best[0]).Fullness) : -1;
            if (better > 0)
            {
                best.Clear();
            }

            if (better >= 0)
            {
                best.Add(row);
            }
        }

        return best;
    }

    /// <summary>True when the row is for this reading.</summary>
    public bool Matches(ReadingKey key) => (What, Species) == Animal(key)
        && Allows(Stages, key.Stage) && Allows(Sizes, key.Size) && Allows(States, key.State) && Allows(Places, key.Place);

    private static bool Allows(string[] cell, string? wanted) => cell is ["any"] || (wanted is not null && Array.IndexOf(cell, wanted) >= 0);
}
