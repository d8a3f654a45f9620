using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Lumps;

namespace HealthNotes.Tests.Analysis.Lumps;

public class LumpDataTests
{
    /// <summary>Figures read in the publications that their rows name.</summary>
    [Theory]
    [InlineData("sample-mm", 10, "Ettinger, WSAVA Congress Proceedings 2017")]
    [InlineData("sample-days", 30, "Ettinger, WSAVA Congress Proceedings 2017")]
    [InlineData("growth-percent", 20, "cRECIST v1.0")]
    [InlineData("partial-percent", 30, "cRECIST v1.0")]
    [InlineData("progress-percent", 20, "cRECIST v1.0")]
    [InlineData("node-mm", 10, "University of Guelph, VETM3430 open text")]
    [InlineData("target-mm", 10, "VCOG response criteria, FAQ")]
    public void Numbers_are_those_of_their_sources(string key, int value, string source)
    {
        Assert.Equal(value, LumpNumbers.Default[key]);
        Assert.StartsWith(source, LumpNumbers.Default.SourceOf(key), StringComparison.Ordinal);
    }

    [Fact]
    public void Keys_are_said_once_and_notes_are_short()
    {
        IReadOnlyList<TsvRow> rows = TsvTable.Load(typeof(LumpNumbers).Assembly, "lumps.tsv").Rows;
        Assert.Equal(rows.Count, rows.Select(row => row["key"]).Distinct().Count());
        Assert.All(rows, row => Assert.InRange(row["note"].Length, 1, 120));
    }
}
