using HealthNotes.Features.Completion;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Completion;

/// <summary>How many keys a log takes when offers are used as a quick writer uses them: the arrow down to an offer, and Tab to take it.</summary>
public class KeystrokeTests
{
    private const int Lines = 40;

    /// <summary>An offer further down is not seen at speed.</summary>
    private const int InSight = 5;

    [Fact]
    public void Forty_lines_of_a_log_take_few_keys()
    {
        // in plain words, as offers write them
        string sample = File.ReadAllText(Repository.PathOf("samples/juniper-after-surgery.hnote"));
        string[] all = NoteFormatter.Format(NoteSyntax.Parse(sample)).ReplaceLineEndings("\n").TrimEnd('\n').Split('\n');
        int first = all.Length - Lines;
        Document note = Document.Open("file:///notes/typed.hnote", 1, string.Join('\n', all[..first]) + "\n", Cursor.Today);
        int letters = 0;
        int keys = 0;
        foreach (string line in all[first..])
        {
            string text = line.Trim();
            letters += text.Length + 1;
            keys += KeysFor(note, text) + 1;
            note = note.Edit(DocumentEdit.Insert(int.MaxValue, int.MaxValue, $"{(text.StartsWith("20", StringComparison.Ordinal) ? "" : "  ")}{text}\n"), 1);
        }

        Assert.True(keys <= Goal, $"{keys} keys for {letters} letters; the goal is {Goal}");
    }

    private const int Goal = 550;

    /// <summary>The fewest keys, from the end of the line back: a letter, or an offer in sight that writes what comes next.</summary>
    private static int KeysFor(Document note, string line)
    {
        string indent = line.StartsWith("20", StringComparison.Ordinal) ? "" : "  ";
        int at = note.Syntax.Lines.Length - 1;
        int[] cost = new int[line.Length + 1];
        for (int typed = line.Length - 1; typed >= 0; typed--)
        {
            string before = indent + line[..typed];
            Document half = note.Edit(DocumentEdit.Insert(at, 0, before), 1);
            cost[typed] = cost[typed + 1] + 1;
            CompletionItem[] offers = [.. CompletionFeature.At(half, new Place(at, before.Length), FeatureSettings.Default).Items.OrderBy(item => item.SortKey, StringComparer.Ordinal).Take(InSight)];
            for (int down = 0; down < offers.Length; down++)
            {
                string after = before[..offers[down].Edit.Range.Start.Character] + offers[down].Edit.NewText;
                if (after.Length > before.Length && (indent + line).StartsWith(after, StringComparison.Ordinal))
                {
                    cost[typed] = Math.Min(cost[typed], cost[after.Length - indent.Length] + 1 + down);
                }
            }
        }

        return cost[0];
    }
}
