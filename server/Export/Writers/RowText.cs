using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using HealthNotes.Export.Tables;

namespace HealthNotes.Export.Writers;

/// <summary>Writes the rows of a note as lines of text: NDJSON (one JSON object a line), or CSV as in RFC 4180.</summary>
public static class RowText
{
    private const int Decimals = 6;
    private static readonly SearchValues<char> Quoted = SearchValues.Create(",\"\r\n");
    private static readonly JsonWriterOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, SkipValidation = true };

    /// <summary>One object a row; every column is there, null where the row lacks it.</summary>
    public static byte[] Ndjson(ExportTable table, IEnumerable<object?[]> rows)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(rows);
        var text = new ArrayBufferWriter<byte>();
        using var json = new Utf8JsonWriter(text, Plain);
        foreach (object?[] row in rows)
        {
            json.WriteStartObject();
            for (int place = 0; place < row.Length; place++)
            {
                json.WritePropertyName(table.Columns[place].Name);
                Write(json, row[place]);
            }

            json.WriteEndObject();
            json.Flush();
            json.Reset();
            text.Write("\n"u8);
        }

        return text.WrittenSpan.ToArray();
    }

    /// <summary>One record a row, without the header; a value that is not there is empty.</summary>
    public static byte[] Csv(IEnumerable<object?[]> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var text = new StringBuilder();
        foreach (object?[] row in rows)
        {
            Append(text, row.Select(Shown));
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    /// <summary>The header of a CSV file.</summary>
    public static byte[] CsvHeader(ExportTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        var text = new StringBuilder();
        Append(text, table.Columns.Select(column => column.Name));
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    /// <summary>Six decimals at most, and no needless zeros: 40, not 40.000000.</summary>
    public static decimal Rounded(decimal number) => Math.Round(number, Decimals, MidpointRounding.AwayFromZero) / 1.0000000000000000000000000000m;

    private static void Append(StringBuilder text, IEnumerable<string> values)
    {
        bool first = true;
        foreach (string value in values)
        {
            text.Append(first ? "" : ",").Append(value.AsSpan().ContainsAny(Quoted) ? $"\"{value.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : value);
            first = false;
        }

        text.Append("\r\n");
    }

    private static string Shown(object? value) => value switch
    {
        null => "",
        bool yes => yes ? "true" : "false",
        decimal number => Rounded(number).ToString(CultureInfo.InvariantCulture),
        DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString() ?? "",
    };

    private static void Write(Utf8JsonWriter json, object? value)
    {
        switch (value)
        {
            case null:
                json.WriteNullValue();
                break;
            case bool yes:
                json.WriteBooleanValue(yes);
                break;
            case int number:
                json.WriteNumberValue(number);
                break;
            case decimal number:
                json.WriteNumberValue(Rounded(number));
                break;
            default:
                json.WriteStringValue(Shown(value));
                break;
        }
    }
}
