using HealthNotes.Features.Completion;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Completion;

/// <summary>
/// How many keys forty lines of a technician's log take. The writer knows the line to come, takes an offer with Tab where it leads
/// to that line, goes down to it by a key a row, and types what is not offered. The list opens as an editor opens it: behind a
/// letter that was typed, behind a trigger character, and after an offer that waits for more; elsewhere by one key more.
/// </summary>
public class KeysTests
{
    private const int Lines = 40;
    private const int RowsInSight = 10;
    private const string Opens = " -@0123456789";

    [Theory]
    [InlineData(true, 445)]
    [InlineData(false, 545)]
    public void A_log_takes_half_the_keys(bool asItHappens, int most)
    {
        string[] all = File.ReadAllText(Repository.PathOf("samples/juniper-after-surgery.hnote")).ReplaceLineEndings("\n").Split('\n');
        int first = Array.FindIndex(all, line => line.StartsWith("2026-09-17", StringComparison.Ordinal));
        string text = string.Join('\n', all[..first]) + "\n";
        DateOnly today = default;
        int plain = 0;
        int taken = 0;
        List<string> told = [];
        foreach (string line in all[first..].Where(line => line.Length > 0).Take(Lines))
        {
            string written = line.Trim();
            LineSyntax read = NoteSyntax.Parse(written).Lines[0];
            today = read.EntryHead?.Date ?? today;
            TimeOnly? now = asItHappens ? read.Item?.Head.Time : null;
            string canonical = NoteFormatter.Format(NoteSyntax.Parse(text + line)).TrimEnd('\n').Split('\n')[^1].Trim();
            (int keys, string how) = new[] { written, canonical }.Distinct().Select(target => Least(text, target, today, now)).MinBy(way => way.Keys);
            plain += written.Length + 1;
            taken += keys + 1;
            told.Add($"{written.Length,3} {keys,3}  {how}");
            text += line + "\n";
        }

        Assert.True(taken <= most && plain > 950, $"{taken} of {plain} keys\n{string.Join("\n", told)}");
    }

    /// <summary>The least keys from an empty line to <paramref name="target"/>; how many of them stand for what.</summary>
    private static (int Keys, string How) Least(string above, string target, DateOnly today, TimeOnly? now)
    {
        string indent = char.IsAsciiDigit(target[0]) && NoteSyntax.Parse(target).Lines[0].Kind == LineKind.EntryHead ? "" : "  ";
        Document before = Document.Open("file:///notes/typed.hnote", 1, above + indent, today);
        int line = before.Syntax.Lines.Length - 1;
        (int Keys, string How)[,] best = new (int, string)[target.Length + 1, 2];
        for (int at = 1; at <= target.Length; at++)
        {
            best[at, 0] = best[at, 1] = (int.MaxValue, "");
        }

        best[0, 0] = (int.MaxValue, "");
        best[0, 1] = (0, "");
        for (int at = 0; at < target.Length; at++)
        {
            Document document = before.Edit(DocumentEdit.Insert(line, indent.Length, target[..at]), 2);
            CompletionItem[] items = [.. CompletionFeature.At(document, new Place(line, indent.Length + at), FeatureSettings.Default, new Surroundings(now, () => [])).Items.Take(RowsInSight)];
            for (int taken = 0; taken < 2; taken++)
            {
                (int keys, string how) = best[at, taken];
                if (keys == int.MaxValue)
                {
                    continue;
                }

                Better(best, at + 1, 0, (keys + 1, how + target[at]));
                // behind a time or a word that waits for its number the extension opens the list again
                bool open = taken == 1 ? at > 0 && target[at - 1] == ' ' : (char.IsLetter(target[at - 1]) || Opens.Contains(target[at - 1], StringComparison.Ordinal));
                for (int row = 0; row < items.Length; row++)
                {
                    string then = document.Edit(items[row].Edit, 3).Syntax.Lines[line].Text[indent.Length..];
                    if (then.Length > at && target.StartsWith(then, StringComparison.Ordinal))
                    {
                        Better(best, then.Length, 1, (keys + row + (open ? 1 : 2), $"{how}{(open ? "" : "^")}[{then[at..]}|{row + 1}]"));
                    }
                }
            }
        }

        return best[target.Length, 0].Keys <= best[target.Length, 1].Keys ? best[target.Length, 0] : best[target.Length, 1];
    }

    private static void Better((int Keys, string How)[,] best, int at, int taken, (int Keys, string How) way)
    {
        if (way.Keys < best[at, taken].Keys)
        {
            best[at, taken] = way;
        }
    }
}
