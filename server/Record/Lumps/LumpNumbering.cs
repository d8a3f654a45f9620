using System.Collections.Immutable;

namespace HealthNotes.Record.Lumps;

/// <summary>The numbers by which lumps, wounds, sore places and measured nodes are named on map, table, chart and sheet. A place that never reacted to a touch does not count. A number is given when something is first noted, and never changes.</summary>
public static class LumpNumbering
{
    private static readonly string[] Words = ["lump", "wound", "pain-site", "node"];

    /// <summary>Every life with its number, from 1; those that ended keep theirs.</summary>
    public static ImmutableArray<(int Number, LumpLife Life)> Of(PetRecord record) =>
        [.. Words.SelectMany(word => record.All(word)).SelectMany(course => LumpLife.AllOf(course)).Where(life => life.Key.Word switch { "node" => !life.Sizes.IsEmpty, "pain-site" => !life.Lines.All(line => LumpWords.Has(line.Item, LumpWords.NoReaction)), _ => true })
            .OrderBy(life => life.First.Day).ThenBy(life => life.First.Line).Select((life, index) => (index + 1, life))];
}
