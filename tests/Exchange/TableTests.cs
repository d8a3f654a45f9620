using ParquetSharp;

namespace HealthNotes.Exchange.Tests;

/// <summary>The three forms of the export hold the same rows, for engines that know nothing of this project.</summary>
public sealed class TableTests(TableTests.Exported exported) : IClassFixture<TableTests.Exported>
{
    private static readonly string Samples = Path.Combine(Hnote.Top, "samples");

    public static TheoryData<string> Tables => ["pets", "entries", "readings", "signs", "lumps", "orders", "doses", "care", "labs", "acts", "facts", "due", "findings", "texts"];

    [Theory]
    [MemberData(nameof(Tables))]
    public void Every_row_is_the_same_in_each_format(string table)
    {
        using var duck = new Duck(exported.Folder);
        // all as text: each reader guesses its own types for a column without a value
        string columns = string.Join(", ", duck.Rows($"DESCRIBE SELECT * FROM read_parquet('parquet/{table}/**/*.parquet', hive_partitioning = false)").Select(row =>
            (string)row[1]! == "DOUBLE" ? $"round(CAST(\"{row[0]}\" AS DOUBLE), 5) AS \"{row[0]}\"" : $"CAST(\"{row[0]}\" AS VARCHAR) AS \"{row[0]}\""));
        string[] formats =
        [
            $"SELECT {columns} FROM read_parquet('parquet/{table}/**/*.parquet', hive_partitioning = false)",
            $"SELECT {columns} FROM read_json('ndjson/{table}.ndjson', format = 'newline_delimited', columns = {{{string.Join(", ", duck.Rows($"DESCRIBE SELECT * FROM read_parquet('parquet/{table}/**/*.parquet', hive_partitioning = false)").Select(row => $"'{row[0]}': '{row[1]}'"))}}})",
            $"SELECT {columns} FROM read_csv('csv/{table}.csv', header = true, all_varchar = true)",
        ];
        long expected = (long)duck.One($"SELECT count(*) FROM ({formats[0]})")!;
        Assert.All(formats[1..], format =>
        {
            Assert.Equal(expected, duck.One($"SELECT count(*) FROM ({format})"));
            Assert.Empty(duck.Rows($"({format}) EXCEPT ALL ({formats[0]})"));
        });
        Assert.Equal(table is not ("labs" or "texts"), expected > 0);
    }

    /// <summary>The second reader is Apache's own, in C++.</summary>
    [Theory]
    [MemberData(nameof(Tables))]
    public void Another_engine_reads_the_same_Parquet(string table)
    {
        using var duck = new Duck(exported.Folder);
        long rows = 0;
        foreach (string file in Directory.EnumerateFiles(Path.Combine(exported.Folder, "parquet", table), "*.parquet", SearchOption.AllDirectories))
        {
            using var reader = new ParquetFileReader(file);
            rows += reader.FileMetaData.NumRows;
            for (int group = 0; group < reader.FileMetaData.NumRowGroups; group++)
            {
                using RowGroupReader part = reader.RowGroup(group);
                using LogicalColumnReader<string?> pets = part.Column(0).LogicalReader<string?>();
                Assert.All(pets.ReadAll((int)part.MetaData.NumRows), Assert.NotNull);
            }
        }

        Assert.Equal(duck.One($"SELECT count(*) FROM read_parquet('parquet/{table}/**/*.parquet', hive_partitioning = true)"), rows);
    }

    [Fact]
    public void A_value_is_found_under_its_file_and_line()
    {
        using var duck = new Duck(exported.Folder);
        object?[] row = Assert.Single(duck.Rows("SELECT line, written, value, unit FROM read_parquet('parquet/readings/**/*.parquet', hive_partitioning = true) WHERE file = 'marlow.hnote' AND what = 'weight' AND date = DATE '2022-11-19'"));
        string line = File.ReadLines(Path.Combine(Samples, "marlow.hnote")).ElementAt((int)row[0]! - 1);
        Assert.Contains((string)row[1]!, line, StringComparison.Ordinal);
        Assert.Equal(("82.9-56.0kg", 26.9, "kg"), ((string)row[1]!, Math.Round((double)row[2]!, 6), (string)row[3]!));
    }

    /// <summary>The samples, in every format.</summary>
    public sealed class Exported : IDisposable
    {
        private readonly Workspace work = new();

        public Exported() => Assert.All(["ndjson", "csv", "parquet"], format =>
        {
            Outcome outcome = Hnote.Run("export", Samples, "--format", format, "--out", work.PathOf(format), "--today", Hnote.Today);
            Assert.Equal((0, ""), (outcome.Code, outcome.Errors));
        });

        public string Folder => work.Folder;

        public void Dispose() => work.Dispose();
    }
}
