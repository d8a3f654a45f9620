using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Data;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Rules;

/// <summary>The rows of <c>known-signs.tsv</c>: the signs that come with a condition, an operation or a night of fireworks.</summary>
internal static class KnownSigns
{
    private const string Fact = "fact";
    private const string Beside = "beside";
    private const string After = "after";

    private static readonly Lazy<ImmutableArray<KnownSign>> Rows = new(() => [.. ClinicalData.Rows("known-signs.tsv")
        .Select(row => new KnownSign(row.Several("condition"), row["said"], row.Several("part"), row.Several("signs"), (int)(row.Number("days") ?? 0)))]);

    /// <summary>The names of the conditions that the sign comes with.</summary>
    public static IEnumerable<string> ConditionsOf(NoteItem item, DescribingWord sign) => ConditionsOf(item, sign.Word);

    /// <summary>The same for a sign by its word.</summary>
    public static IEnumerable<string> ConditionsOf(NoteItem item, string sign) => Phrases(item, sign, Fact, Beside);

    /// <summary>What was done a few days before that brings the sign (<c>vaccine</c>): the line and its word; null when nothing was.</summary>
    public static Noted? DoneBefore(PetRecord at, DateOnly day, NoteItem item, DescribingWord sign) => Rows.Value
        .Where(row => row.Said == After && IsOf(row, item, sign.Word))
        .SelectMany(row => row.Phrases.SelectMany(word => at.All(word)).SelectMany(course => course.Between(day.Plus(-row.Days), day).ToArray()))
        .MaxBy(done => done.Line);

    /// <summary>The words of the same entry that explain the sign (<c>on heat</c>, <c>fireworks</c>); null when none do.</summary>
    public static string? ExplainedIn(Entry entry, NoteItem item, DescribingWord sign)
    {
        string[] phrases = [.. Phrases(item, sign.Word, Beside).Select(TextWord.Plain)];
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

    private static IEnumerable<string> Phrases(NoteItem item, string sign, params string[] said) =>
        Rows.Value.Where(row => said.Contains(row.Said) && IsOf(row, item, sign)).SelectMany(row => row.Phrases);

    private static bool IsOf(KnownSign row, NoteItem item, string sign) => row.Parts.Contains(item.Word.Word) && (row.Signs is ["any"] || row.Signs.Contains(sign));

    private sealed record KnownSign(string[] Phrases, string Said, string[] Parts, string[] Signs, int Days);
}
