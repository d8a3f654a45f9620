using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Data;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Ranges;

namespace HealthNotes.Analysis.Danger;

/// <summary>What kind of danger a phrase names.</summary>
internal enum DangerKind
{
    /// <summary>A food: asking about it does not mean that it was eaten.</summary>
    Food,

    /// <summary>A poison, or a medicine that is not the pet's.</summary>
    Poison,

    /// <summary>A thing that is a danger only when it was eaten.</summary>
    Object,

    /// <summary>A medicine, which is a danger where it was eaten and not given.</summary>
    Medicine,

    /// <summary>Something seen, or that happened.</summary>
    Sign,
}

/// <summary>A row of <c>danger-words.tsv</c>.</summary>
/// <param name="Phrases">Its wordings, each word by word.</param>
/// <param name="Kind">What it names.</param>
/// <param name="Level">The level it raises.</param>
/// <param name="Species">The animal it is for; null for both.</param>
/// <param name="What">What it means, as a sentence without its full stop.</param>
/// <param name="ReadAs">The words by which a line that was read says the same.</param>
/// <param name="Source">The publication.</param>
internal sealed record DangerWord(
    ImmutableArray<string[]> Phrases, DangerKind Kind, FindingLevel Level, Species? Species, string What, ImmutableArray<string> ReadAs, string Source)
{
    /// <summary>The painkiller made for people that the row is for, or null: a dose of one has a rule of its own.</summary>
    public HumanPainkiller? Painkiller { get; private init; }

    /// <summary>Words that explain it where they stand in the same line.</summary>
    public ImmutableArray<string[]> Unless { get; private init; } = [];

    /// <summary>Words that explain it where they stand in the same entry.</summary>
    public ImmutableArray<string[]> UnlessNear { get; private init; } = [];

    /// <summary>True when a plan line does not make it safe: a painkiller that is never safe, a poison for this animal alone.</summary>
    public bool IsNeverSafe(Species species) => Painkiller?.IsNeverSafe(species) ?? (Kind == DangerKind.Poison && Species is not null);

    private static readonly Lazy<ImmutableArray<DangerWord>> Rows = new(Read);
    private static readonly Lazy<ILookup<string, (string[] Phrase, DangerWord Row)>> FirstWords = new(() =>
        Rows.Value.SelectMany(row => row.Phrases.Select(phrase => (phrase, row))).ToLookup(pair => pair.phrase[0], pair => (pair.phrase, pair.row)));

    /// <summary>All rows; painkillers made for people are among them.</summary>
    public static ImmutableArray<DangerWord> All => Rows.Value;

    /// <summary>The phrases that start with a word.</summary>
    public static IEnumerable<(string[] Phrase, DangerWord Row)> StartingWith(string word) => FirstWords.Value[word];

    private static ImmutableArray<DangerWord> Read() =>
    [
        .. Table("danger-words.tsv").Select(row => new DangerWord(
            [.. row.Several("phrase").Select(Words)], Enum.Parse<DangerKind>(row["kind"], ignoreCase: true), Enum.Parse<FindingLevel>(row["level"], ignoreCase: true),
            row["species"] == "both" ? null : Enum.Parse<Species>(row["species"], ignoreCase: true), row["what"], [.. row.Several("read-as")], row["source"])
        {
            Unless = [.. row.Several("unless").Select(Words)],
            UnlessNear = [.. row.Several("unless-near").Select(Words)],
        }),
        new DangerWord([.. NoteVocabulary.Default.Medicines.Spellings.Select(Words).Where(phrase => phrase.Length > 0)], DangerKind.Medicine, FindingLevel.Urgent, null,
            "A medicine that was eaten and not given may be too much of it", [], "Pet Poison Helpline, room-by-room list of hazards"),
        .. ClinicalTables.Default.HumanPainkillers.Select(painkiller => new DangerWord(
            [.. painkiller.Synonyms.Append(painkiller.Name).Select(Words)], DangerKind.Poison, FindingLevel.Urgent, null, "Painkillers made for people can poison pets", ["human-medicine"], painkiller.Source) { Painkiller = painkiller }),
    ];

    private static string[] Words(string phrase) => [.. TextWord.Split(phrase).Select(word => word.Text)];

    private static IReadOnlyList<TsvRow> Table(string name) => ClinicalData.Rows(name);
}
