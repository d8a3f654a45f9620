using System.Globalization;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Analysis.Danger;

/// <summary>What a line may say: <c>gums pale</c>, <c>vomit</c> (any that counts), <c>temp &gt;=40</c> in the canonical unit.</summary>
/// <param name="Part">The line's word.</param>
/// <param name="Sign">The describing word; null where any line that counts will do, or a limit is meant.</param>
/// <param name="Limit">The limit; null where a sign is meant.</param>
/// <param name="Above">True for a value at the limit or above, false for one below it.</param>
public sealed record SignPattern(string Part, string? Sign, decimal? Limit, bool Above)
{
    /// <summary>Reads a pattern of a table.</summary>
    public static SignPattern Of(string text)
    {
        string[] words = text.Split(' ', 2);
        string rest = words is [_, var behind] ? behind : "";
        bool above = rest.StartsWith(">=", StringComparison.Ordinal);
        return above || rest.StartsWith('<')
            ? new SignPattern(words[0], null, decimal.Parse(rest.AsSpan(above ? 2 : 1), CultureInfo.InvariantCulture), above)
            : new SignPattern(words[0], rest.Length == 0 ? null : rest, null, false);
    }

    /// <summary>True when the line says it.</summary>
    public bool Matches(Noted line) => line.Item is { } item and not NotSeen && item.Word.Word == Part
        && (Limit is { } limit ? line.Reading is { } reading && (Above ? reading.Value.Number >= limit : reading.Value.Number < limit)
            : Sign is not null ? item.Words.Any(word => word.Word.Word == Sign)
            : CareWords.Counts(line));
}
