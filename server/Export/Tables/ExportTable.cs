using System.Collections.Immutable;

namespace HealthNotes.Export.Tables;

/// <summary>A table of the export: rows of one kind from all notes.</summary>
public abstract class ExportTable(string name, string about, ImmutableArray<Column> columns)
{
    /// <summary>Its name, and that of its file.</summary>
    public string Name => name;

    /// <summary>What a row is.</summary>
    public string About => about;

    /// <summary>Its columns, in order.</summary>
    public ImmutableArray<Column> Columns => columns;

    /// <summary>The place of the column whose year parts the rows; -1 for a table that has none.</summary>
    public int DateColumn { get; } = columns.Select((column, place) => column.Name == "date" ? place : -1).Max();

    /// <summary>The rows of a note in the order of its lines; each has one value a column.</summary>
    public abstract IEnumerable<object?[]> Rows(ExportedNote note);
}

/// <inheritdoc cref="ExportTable"/>
internal sealed class ExportTable<TRow>(string name, string about, Func<ExportedNote, IEnumerable<TRow>> rows, ImmutableArray<Column<TRow>> columns)
    : ExportTable(name, about, [.. columns])
{
    public override IEnumerable<object?[]> Rows(ExportedNote note)
    {
        foreach (TRow row in rows(note))
        {
            object?[] values = new object?[columns.Length];
            for (int place = 0; place < values.Length; place++)
            {
                values[place] = note.Shown(columns[place], columns[place].Value(note, row));
            }

            yield return values;
        }
    }
}
