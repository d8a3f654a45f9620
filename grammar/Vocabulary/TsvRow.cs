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

    /// <summary>The values of a cell that holds several, parted by <c>|</c>: <c>(all else|the rest) (|is )fine</c> stands for four.</summary>
    public string[] Several(string column) => this[column] is not { Length: > 0 } cell ? [] : cell.Contains('(') ? [.. Alternatives(cell).SelectMany(Expanded)] : cell.Split('|');

    private static IEnumerable<string> Expanded(string text)
    {
        int open = text.IndexOf('(');
        if (open < 0)
        {
            return [text];
        }

        int close = open;
        for (int depth = 0; depth > 0 || close == open; close++)
        {
            depth += text[close] is '(' ? 1 : text[close] is ')' ? -1 : 0;
        }

        return from choice in Alternatives(text[(open + 1)..(close - 1)])
               from middle in Expanded(choice)
               from end in Expanded(text[close..])
               select text[..open] + middle + end;
    }

    private static IEnumerable<string> Alternatives(string text)
    {
        int depth = 0;
        int start = 0;
        for (int at = 0; at < text.Length; at++)
        {
            depth += text[at] is '(' ? 1 : text[at] is ')' ? -1 : 0;
            if (depth == 0 && text[at] == '|')
            {
                yield return text[start..at];
                start = at + 1;
            }
        }

        yield return text[start..];
    }

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
