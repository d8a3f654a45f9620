using System.Globalization;
using System.IO.Compression;
using HealthNotes.Export.Tables;
using HealthNotes.Export.Writers;
using Parquet;
using Parquet.Schema;

namespace HealthNotes.Cli.Export;

/// <summary>
/// Parquet, a folder a table and below it one a year (<c>year=2026</c>), as query engines read them. Rows are kept until a row group is
/// full; together no more than <see cref="MostRows"/> are kept, so that memory does not grow with the number of notes.
/// </summary>
/// <param name="tables">The tables.</param>
/// <param name="lastYear">A day after this year is most likely a slip: its row goes where those without a day go.</param>
/// <param name="open">Opens a file.</param>
internal sealed class ParquetSink(IReadOnlyList<ExportTable> tables, int lastYear, Func<string, Stream> open) : RowSink
{
    private const int FirstYear = 1980;
    private const int GroupRows = 20_000;
    private const int MostRows = 100_000;

    /// <summary>The name that Hive, and all that read its folders, give to a part without a value.</summary>
    private const string NoYear = "__HIVE_DEFAULT_PARTITION__";

    private static readonly ParquetOptions Options = new() { CompressionMethod = CompressionMethod.Zstd, CompressionLevel = CompressionLevel.Fastest };
    private readonly SortedDictionary<string, Part> parts = new(StringComparer.Ordinal);
    private int kept;

    public override object Prepare(ExportTable table, IReadOnlyList<object?[]> rows) => rows;

    public override void Take(ExportTable table, object prepared)
    {
        foreach (object?[] row in (IReadOnlyList<object?[]>)prepared)
        {
            string folder = FolderOf(table, row);
            if (!parts.TryGetValue(folder, out Part? part))
            {
                parts.Add(folder, part = NewPart(table, folder));
            }

            part.Rows.Add(row);
            kept++;
            if (part.Rows.Count >= GroupRows || kept >= MostRows)
            {
                Part fullest = part.Rows.Count >= GroupRows ? part : parts.Values.MaxBy(one => one.Rows.Count)!;
                kept -= fullest.Rows.Count;
                fullest.WriteGroup();
            }
        }
    }

    /// <summary>A table without a row has a file all the same: a query finds its columns.</summary>
    public override void Dispose()
    {
        foreach (ExportTable table in tables.Where(table => !parts.Keys.Any(folder => folder.StartsWith(table.Name + "/", StringComparison.Ordinal))))
        {
            string folder = table.DateColumn < 0 ? $"{table.Name}/" : $"{table.Name}/year={NoYear}/";
            parts.Add(folder, NewPart(table, folder));
        }

        foreach (Part part in parts.Values)
        {
            part.Dispose();
        }
    }

    private Part NewPart(ExportTable table, string folder) => new(table, () => open(folder + "part-0.parquet"));

    private string FolderOf(ExportTable table, object?[] row) => table.DateColumn < 0 ? $"{table.Name}/"
        : $"{table.Name}/year={(row[table.DateColumn] is DateOnly { Year: var year } && year >= FirstYear && year <= lastYear ? year.ToString(CultureInfo.InvariantCulture) : NoYear)}/";

    /// <summary>One file. It is opened with its first row group.</summary>
    private sealed class Part(ExportTable table, Func<Stream> open) : IDisposable
    {
        private readonly DataField[] fields = [.. table.Columns.Select(Field)];
        private Stream? file;
        private ParquetWriter? writer;

        public List<object?[]> Rows { get; } = [];

        public void WriteGroup()
        {
            file ??= open();
            writer ??= Wait(ParquetWriter.CreateAsync(new ParquetSchema(fields), file, Options));
            using ParquetRowGroupWriter group = writer.CreateRowGroup();
            for (int place = 0; place < fields.Length; place++)
            {
                Write(group, place);
            }

            Rows.Clear();
        }

        public void Dispose()
        {
            if (Rows.Count > 0 || writer is null)
            {
                WriteGroup();
            }

            writer!.DisposeAsync().AsTask().GetAwaiter().GetResult();
            file!.Dispose();
        }

        private static DataField Field(Column column) => column.Type switch
        {
            ColumnType.Integer => new DataField<int?>(column.Name),
            ColumnType.Number => new DataField<double?>(column.Name),
            ColumnType.YesNo => new DataField<bool?>(column.Name),
            ColumnType.Date => new DataField<DateOnly?>(column.Name),
            _ => new DataField<string?>(column.Name, nullable: true),
        };

        private void Write(ParquetRowGroupWriter group, int place)
        {
            DataField field = fields[place];
            Task written = table.Columns[place].Type switch
            {
                ColumnType.Integer => group.WriteAsync<int>(field, Values(place, value => (int?)value)),
                ColumnType.Number => group.WriteAsync<double>(field, Values(place, value => value is decimal number ? (double?)RowText.Rounded(number) : null)),
                ColumnType.YesNo => group.WriteAsync<bool>(field, Values(place, value => (bool?)value)),
                ColumnType.Date => group.WriteAsync<DateOnly>(field, Values(place, value => (DateOnly?)value)),
                _ => group.WriteAsync(field, Values(place, value => (string?)value)),
            };
            written.GetAwaiter().GetResult();
        }

        private T[] Values<T>(int place, Func<object?, T> of)
        {
            var values = new T[Rows.Count];
            for (int index = 0; index < values.Length; index++)
            {
                values[index] = of(Rows[index][place]);
            }

            return values;
        }

        private static T Wait<T>(Task<T> task) => task.GetAwaiter().GetResult();
    }
}
