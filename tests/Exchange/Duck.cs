using DuckDB.NET.Data;

namespace HealthNotes.Exchange.Tests;

/// <summary>A query engine of its own, which reads what was exported as any other would.</summary>
internal sealed class Duck : IDisposable
{
    private readonly DuckDBConnection connection = new("DataSource=:memory:");

    /// <param name="folder">Where the relative paths of a query start.</param>
    public Duck(string folder)
    {
        connection.Open();
        Rows($"SET file_search_path = '{folder}'");
    }

    public List<object?[]> Rows(string sql)
    {
        using DuckDBCommand command = connection.CreateCommand();
        command.CommandText = sql;
        using DuckDBDataReader reader = command.ExecuteReader();
        List<object?[]> rows = [];
        while (reader.Read())
        {
            rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(column => reader.IsDBNull(column) ? null : reader.GetValue(column))]);
        }

        return rows;
    }

    public object? One(string sql) => Rows(sql)[0][0];

    public void Dispose() => connection.Dispose();
}
