using System.Collections.Frozen;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Data;

namespace HealthNotes.Record.Checks;

/// <summary>How a reading is taken safely: a row of <c>how-to-take.tsv</c>.</summary>
/// <param name="Steps">What to do, in one to three short sentences.</param>
/// <param name="Touch">True where the pet is handled.</param>
/// <param name="Caution">What to beware of; null where nothing but the usual applies.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record HowToTake(string Steps, bool Touch, string? Caution, string Source)
{
    private static readonly Lazy<FrozenDictionary<string, HowToTake>> Table = new(() =>
        ClinicalData.Rows("how-to-take.tsv").ToFrozenDictionary(
            row => row["word"],
            row => new HowToTake(row["steps"], row["touch"] == "yes", row["caution"] is { Length: > 0 } caution ? caution : null, row["source"])));

    /// <summary>A first sentence that is shorter than this says too little alone.</summary>
    private const int LeastInShort = 50;

    /// <summary>The first sentence, or the first two: what fits on a line or two of a check sheet.</summary>
    public string InShort
    {
        get
        {
            int end = Steps.IndexOf(". ", StringComparison.Ordinal);
            int second = end >= 0 && end < LeastInShort ? Steps.IndexOf(". ", end + 2, StringComparison.Ordinal) : end;
            return end < 0 || second < 0 ? Steps : Steps[..(second + 1)];
        }
    }

    /// <summary>The first sentence.</summary>
    public string FirstSentence => Steps.IndexOf(". ", StringComparison.Ordinal) is >= 0 and var end ? Steps[..(end + 1)] : Steps;

    /// <summary>The row of a word, in the words for a species; null where there is none.</summary>
    public static HowToTake? Of(string word, Species species = Species.Unknown) => Table.Value.GetValueOrDefault(word) is { } row
        ? row with { Steps = ClinicalData.ForSpecies(row.Steps, species), Caution = row.Caution is { } caution && ClinicalData.ForSpecies(caution, species) is { Length: > 0 } said ? said : null }
        : null;
}
