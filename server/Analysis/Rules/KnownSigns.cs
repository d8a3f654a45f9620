using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Data;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Rules;

/// <summary>The rows of <c>known-signs.tsv</c>: the signs that come with a condition, an operation or a night of fireworks.</summary>
internal static class KnownSigns
{
    private static readonly Lazy<ImmutableArray<(string[] Phrases, bool Here, string[] Parts, string[] Signs)>> Rows = new(() =>
        [.. ClinicalData.Rows("known-signs.tsv").Select(row => (row.Several("condition"), row["said"] == "beside", row.Several("part"), row.Several("signs")))]);

    /// <summary>The names of the conditions that the sign comes with.</summary>
    public static IEnumerable<string> ConditionsOf(NoteItem item, DescribingWord sign) => Phrases(item, sign, here: false);

    /// <summary>The words of the same entry that explain the sign (<c>on heat</c>, <c>fireworks</c>); null when none do.</summary>
    public static string? ExplainedIn(Entry entry, NoteItem item, DescribingWord sign)
    {
        string[] phrases = [.. Phrases(item, sign, here: true).Select(TextWord.Plain)];
        foreach (Placed<NoteItem> placed in phrases.Length == 0 ? [] : entry.Items)
        {
            foreach (string words in placed.Value.Words.Select(word => word.Word.Word).Append(placed.Value.Note?.Text ?? ""))
            {
                if (words.Length > 0 && TextWord.Plain(words) is var text && Array.Exists(phrases, phrase => text.Contains(phrase, StringComparison.Ordinal)))
                {
                    return words.Replace('-', ' ');
                }
            }
        }

        return null;
    }

    private static IEnumerable<string> Phrases(NoteItem item, DescribingWord sign, bool here) => Rows.Value
        .Where(row => (!here || row.Here) && row.Parts.Contains(item.Word.Word) && (row.Signs is ["any"] || row.Signs.Contains(sign.Word)))
        .SelectMany(row => row.Phrases);
}
