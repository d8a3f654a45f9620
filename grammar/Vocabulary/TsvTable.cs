using System.Reflection;

namespace HealthNotes.Grammar.Vocabulary;

/// <summary>
/// A table embedded in an assembly: tab-separated, one row a line, a header line with the column names,
/// <c>#</c> comments above it, <c>-</c> for an empty cell and <c>|</c> between several values in one cell.
/// </summary>
public sealed class TsvTable
{
    private readonly Dictionary<string, int> columns;

    private TsvTable(string name, Dictionary<string, int> columns, IReadOnlyList<TsvRow> rows)
    {
        Name = name;
        this.columns = columns;
        Rows = rows;
    }

    /// <summary>The table's file name, used in messages.</summary>
    public string Name { get; }

    /// <summary>The rows in file order.</summary>
    public IReadOnlyList<TsvRow> Rows { get; }

    /// <summary>The column names in file order.</summary>
    public IEnumerable<string> Columns => columns.Keys;

    /// <summary>Reads the table embedded in <paramref name="assembly"/> under <paramref name="name"/>.</summary>
    /// <exception cref="InvalidDataException">The table is missing, or a row has another number of cells than the header.</exception>
    public static TsvTable Load(Assembly assembly, string name)
    {
        using Stream stream = assembly.GetManifestResourceStream(name)
            ?? throw new InvalidDataException($"the table {name} is not embedded");
        using var reader = new StreamReader(stream);
        return Parse(name, reader.ReadToEnd());
    }

    /// <summary>Reads a table from text; <paramref name="name"/> is used in messages.</summary>
    /// <exception cref="InvalidDataException">A row has another number of cells than the header.</exception>
    public static TsvTable Parse(string name, string text)
    {
        var columns = new Dictionary<string, int>();
        var rows = new List<TsvRow>();
        TsvTable table = new(name, columns, rows);
        int number = 0;
        foreach ((string line, _) in Text.LineSplitter.Split(text))
        {
            number++;
            if (line.Length == 0 || (columns.Count == 0 && line[0] == '#'))
            {
                continue;
            }

            string[] cells = line.Split('\t');
            if (columns.Count == 0)
            {
                for (int i = 0; i < cells.Length; i++)
                {
                    columns.Add(cells[i], i);
                }
            }
            else if (cells.Length != columns.Count)
            {
                throw new InvalidDataException($"{name} line {number}: {cells.Length} cells where the header has {columns.Count}");
            }
            else
            {
                rows.Add(new TsvRow(table, number, cells));
            }
        }

        return table;
    }

    internal int ColumnOf(string column) => columns.TryGetValue(column, out int index)
        ? index
        : throw new InvalidDataException($"{Name} has no column {column}");
}
