using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Data;

namespace HealthNotes.Analysis.Problems;

/// <summary>A sentence in which the clinic tells a result: of a visit, or of a day on which results came (<c>done blood results</c>). By <c>result-words.tsv</c>.</summary>
/// <param name="Day">The day.</param>
/// <param name="Sentence">The sentence as written.</param>
public sealed record ClinicResults(DateOnly Day, string Sentence)
{
    private const string Sent = "sent";

    private static readonly ImmutableArray<string> Words = [.. ClinicalData.Rows("result-words.tsv").Select(row => row["word"])];

    /// <summary>The results of some days, in the order of their days.</summary>
    public static IEnumerable<ClinicResults> Of(PetRecord record, DateOnly from, DateOnly to) =>
        from entry in record.Entries
        where entry.Day >= @from && entry.Day <= to && (entry.Entry.Head.Kind == "visit" || entry.Entry.Items.Any(item => item.Value is TextTask { Word.Word: "done" } done && IsResult(done.Text.Text)))
        from text in entry.Entry.Texts
        from sentence in ClinicWords.Sentences(text.Markdown)
        where IsResult(sentence)
        select new ClinicResults(entry.Day!.Value, sentence);

    /// <summary>What was only sent away is not a result yet.</summary>
    private static bool IsResult(string text) => ClinicWords.WordsOf(text) is var words && !words.Contains(Sent) && words.Any(word => Words.Any(beginning => word.StartsWith(beginning, StringComparison.Ordinal)));
}
