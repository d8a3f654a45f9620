using System.Collections.Immutable;
using System.Reflection;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Checks;

/// <summary>What a full check holds, head to tail, by the table <c>check-items.tsv</c>.</summary>
public static class CheckItems
{
    private static readonly Lazy<ImmutableArray<Row>> Rows = new(Read);

    /// <summary>What a full check of such a pet holds, in order. Blood glucose is asked only of a pet on insulin.</summary>
    /// <param name="species">The animal; rows for one species are left out when it is not known.</param>
    /// <param name="male">True for a male; null when it is not said.</param>
    /// <param name="onInsulin">Whether the notes say that it gets insulin or has diabetes.</param>
    public static ImmutableArray<CheckItem> For(Species species, bool? male, bool onInsulin = false) =>
        [.. Rows.Value.Where(row => row.IsFor(species, male, onInsulin)).Select(row => row.Item)];

    /// <summary>What a full check of the pet of this note holds, in order.</summary>
    public static ImmutableArray<CheckItem> For(Document document) =>
        For(document.Analysis.Pet.Species, document.Analysis.Pet.Male, document.Analysis.Pet.OnInsulin);

    /// <summary>
    /// What a check does not name, in any of the check entries of its day, head to tail. What was skipped is named, and so
    /// is what stands half typed. <c>else ok</c> speaks for the parts, never for a measurement.
    /// </summary>
    public static ImmutableArray<CheckItem> Missing(Document document, Entry check)
    {
        bool restOk = false;
        var named = new HashSet<string>();
        foreach (Entry entry in document.Note.Entries)
        {
            if (entry.Line != check.Line && !(check.Head.Date is { } day && entry.Head.Date == day && entry.Head.Kind == "check"))
            {
                continue;
            }

            foreach (Placed<NoteItem> item in entry.Items)
            {
                restOk |= item.Value is RestOk;
                named.Add(EntryLines.Subject(item.Value).Word);
            }

            foreach (int line in entry.NotUnderstood)
            {
                named.Add(LineAt.WordOf(document.Syntax.Lines[line])?.Word ?? "");
            }
        }

        return [.. For(document).Where(item => !named.Contains(item.Word.Word) && !(restOk && !item.IsMeasured))];
    }

    private static ImmutableArray<Row> Read() =>
        [.. TsvTable.Load(Assembly.GetExecutingAssembly(), "check-items.tsv").Rows.Select(row => new Row(
            new CheckItem(
                NoteVocabulary.Default.LineWords.Find(row["word"]) ?? throw new InvalidDataException($"check-items.tsv line {row.Line}: {row["word"]} starts no line"),
                row["site"] is { Length: > 0 } site ? site : null,
                row["source"]),
            row["species"],
            row["sex"],
            row["when"]))];

    private sealed record Row(CheckItem Item, string Species, string Sex, string When)
    {
        public bool IsFor(Species species, bool? male, bool onInsulin) =>
            (Species == "both" || Species == (species switch { Grammar.Vocabulary.Species.Dog => "dog", Grammar.Vocabulary.Species.Cat => "cat", _ => "" }))
            && (Sex.Length == 0 || male is null || male == (Sex == "male"))
            && (When.Length == 0 || onInsulin);
    }
}
