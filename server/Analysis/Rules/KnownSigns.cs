using System.Collections.Immutable;
using HealthNotes.Analysis.Danger;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Data;

namespace HealthNotes.Analysis.Rules;

/// <summary>The rows of <c>known-signs.tsv</c>: the signs that come with a condition, an operation or a night of fireworks.</summary>
internal static class KnownSigns
{
    private static readonly Lazy<ImmutableArray<(string[] Phrases, bool Here, string[] Parts, string[] Signs)>> Rows = new(() =>
        [.. ClinicalData.Rows("known-signs.tsv").Select(row => (row.Several("condition"), row["said"] == "beside", row.Several("part"), row.Several("signs")))]);

    /// <summary>True when the fact names a condition that the sign comes with.</summary>
    public static bool Explain(string fact, NoteItem item, DescribingWord sign) => Row(fact, item, sign, here: false);

    /// <summary>The words of the same entry that explain the sign (<c>on heat</c>, <c>fireworks</c>); null when none do.</summary>
    public static string? ExplainedIn(Entry entry, NoteItem item, DescribingWord sign)
    {
        foreach (Placed<NoteItem> placed in entry.Items)
        {
            foreach (string words in placed.Value.Words.Select(word => word.Word.Word).Append(placed.Value.Note?.Text ?? ""))
            {
                if (words.Length > 0 && Row(words, item, sign, here: true))
                {
                    return words.Replace('-', ' ');
                }
            }
        }

        return null;
    }

    /// <summary>True when a text has the words, one behind the other; a hyphen is a blank.</summary>
    public static bool Says(string text, string words) => Plain(text).Contains(Plain(words), StringComparison.Ordinal);

    private static bool Row(string text, NoteItem item, DescribingWord sign, bool here) => Rows.Value.Any(row =>
        (here ? row.Here : true) && row.Parts.Contains(item.Word.Word) && (row.Signs is ["any"] || row.Signs.Contains(sign.Word)) && row.Phrases.Any(phrase => Says(text, phrase)));

    private static string Plain(string text) => $" {string.Join(' ', SearchedText.Split(text).Select(word => word.Text))} ";
}
