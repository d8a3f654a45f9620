using System.Collections.Immutable;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Data;

namespace HealthNotes.Analysis.Problems;

/// <summary>A row of <c>problems.tsv</c>: where the findings about a word are told.</summary>
/// <param name="What">The word.</param>
/// <param name="System">The body system.</param>
/// <param name="Title">What it is called.</param>
/// <param name="Order">Its place among problems that are equally strong.</param>
/// <param name="Apart">True where each course is a problem of its own.</param>
public sealed record ProblemTopic(string What, string System, string Title, int Order, bool Apart)
{
    /// <summary>All rows, in file order.</summary>
    public static ImmutableArray<ProblemTopic> All { get; } = [.. ClinicalData.Rows("problems.tsv").Select(Read)];

    /// <summary>The row of a word; that of <c>other</c> where none names it.</summary>
    public static ProblemTopic For(string word) => All.FirstOrDefault(row => row.What == word) ?? All.First(row => row.What == "other");

    /// <summary>Where a word stands in the table: words of one system are shown in this order.</summary>
    public static int PlaceOf(string word) => All.IndexOf(For(word));

    private static ProblemTopic Read(TsvRow row) => new(row["what"], row["system"], row["title"], (int)row.Number("order")!, row["apart"] == "yes");
}
