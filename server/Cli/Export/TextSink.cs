using HealthNotes.Export.Tables;
using HealthNotes.Export.Writers;

namespace HealthNotes.Cli.Export;

/// <summary>One NDJSON or CSV file a table.</summary>
/// <param name="tables">The tables.</param>
/// <param name="csv">True for CSV.</param>
/// <param name="open">Opens the file of a table.</param>
internal sealed class TextSink(IReadOnlyList<ExportTable> tables, bool csv, Func<ExportTable, Stream> open) : RowSink
{
    private readonly Dictionary<ExportTable, Stream> files = tables.ToDictionary(table => table, table =>
    {
        Stream file = open(table);
        file.Write(csv ? RowText.CsvHeader(table) : []);
        return file;
    });

    public override object Prepare(ExportTable table, IReadOnlyList<object?[]> rows) => csv ? RowText.Csv(rows) : RowText.Ndjson(table, rows);

    public override void Take(ExportTable table, object prepared) => files[table].Write((byte[])prepared);

    public override void Dispose()
    {
        foreach (Stream file in files.Values)
        {
            file.Dispose();
        }
    }
}
