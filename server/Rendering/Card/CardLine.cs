using System.Reflection;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Rendering.Card;

/// <summary>One example on the card.</summary>
/// <param name="Group">Where it stands: <c>day</c>, <c>check</c> or <c>say</c>.</param>
/// <param name="Text">The line of a note.</param>
/// <param name="Meaning">What it says, in plain words.</param>
/// <param name="IsShort">True when it is among the most used lines, which <c>hnote new</c> prints.</param>
public sealed record CardLine(string Group, string Text, string Meaning, bool IsShort)
{
    /// <summary>All of them, in the order of the card.</summary>
    public static IReadOnlyList<CardLine> All { get; } =
        [.. TsvTable.Load(Assembly.GetExecutingAssembly(), "card.tsv").Rows.Select(row => new CardLine(row["group"], row["line"], row["meaning"], row["short"] == "yes"))];
}
