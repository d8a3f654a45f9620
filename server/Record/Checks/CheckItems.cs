using System.Collections.Immutable;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Data;
using HealthNotes.Record.Pet;

namespace HealthNotes.Record.Checks;

/// <summary>What a full check holds, head to tail, by the table <c>check-items.tsv</c>.</summary>
public static class CheckItems
{
    private static readonly Lazy<ImmutableArray<Row>> Rows = new(Read);

    /// <summary>What a full check holds, head to tail.</summary>
    /// <param name="onInsulin">Whether the notes say that the pet gets insulin or has diabetes: only then blood glucose is asked.</param>
    public static ImmutableArray<CheckItem> For(bool onInsulin) =>
        [.. Rows.Value.Where(row => row.Item.Stage != CheckStage.Asked && (onInsulin || !row.OnInsulinOnly)).Select(row => row.Item)];

    /// <summary>What is asked of the days before; a check is full without it.</summary>
    public static ImmutableArray<CheckItem> Asked => [.. Rows.Value.Where(row => row.Item.Stage == CheckStage.Asked).Select(row => row.Item)];

    /// <summary>What a full check of this pet holds, head to tail.</summary>
    public static ImmutableArray<CheckItem> For(PetProfile pet) => For(pet.OnInsulin);

    private static ImmutableArray<Row> Read() =>
        [.. ClinicalData.Rows("check-items.tsv").Select(row => new Row(
            new CheckItem(
                NoteVocabulary.Default.LineWords.Find(row["word"]) ?? throw new InvalidDataException($"check-items.tsv line {row.Line}: {row["word"]} starts no line"),
                row["site"] is { Length: > 0 } site ? site : null,
                Enum.Parse<CheckStage>(row["stage"], ignoreCase: true),
                row["source"]),
            row["when"] == "insulin"))];

    private sealed record Row(CheckItem Item, bool OnInsulinOnly);
}
