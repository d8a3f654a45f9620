using System.Globalization;

namespace HealthNotes.Grammar.Vocabulary;

/// <summary>One row of a <see cref="TsvTable"/>; cells are asked for by column name.</summary>
public sealed class TsvRow(TsvTable table, int line, string[] cells)
{
    /// <summary>The row's line in its file, from 1.</summary>
    public int Line => line;

    /// <summary>The cell under <paramref name="column"/>; an empty cell is an empty string.</summary>
    public string this[string column]
    {
        get
        {
            string cell = cells[table.ColumnOf(column)];
            return cell == "-" ? "" : cell;
        }
    }

    /// <summary>The values of a cell that holds several.</summary>
    public string[] Several(string column) => this[column] is { Length: > 0 } cell ? cell.Split('|') : [];

    /// <summary>The cell as a number, or null when it is empty.</summary>
    /// <exception cref="InvalidDataException">The cell is not a number.</exception>
    public decimal? Number(string column)
    {
        string cell = this[column];
        return cell.Length == 0 ? null
            : decimal.TryParse(cell, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal number) ? number
            : throw new InvalidDataException($"{table.Name} line {line}: {column} is {cell}, not a number");
    }
}
