using System.Globalization;
using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>
/// Observations before the first entry get the head of an entry, dated today, above them: all of them, since one head
/// is what they lack. Where facts stand below them, the observations move below the facts first, so that no fact ends up
/// in the entry.
/// </summary>
internal static class MisplacedObservation
{
    public static IEnumerable<ActionOffer> Of(Document document, NoteFinding finding)
    {
        int end = document.Note.Entries.Length > 0 ? document.Note.Entries[0].Line : document.Syntax.Lines.Length;
        List<int> observations = [.. Enumerable.Range(0, end).Where(line => document.Syntax.Lines[line].Item is { } item && !FactRules.MayOpen(item.Word, isRules: false))];
        if (!observations.Contains(finding.Line))
        {
            yield break;
        }

        string kind = observations.Exists(line => EntryLines.IsLookedAt(document.Syntax.Lines[line].Item!.Word)) ? "check" : "log";
        string head = $"{document.Today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)} {kind}";
        bool factsBelow = Enumerable.Range(observations[0], end - observations[0]).Any(line => LineAt.WordOf(document.Syntax.Lines[line])?.Kind == WordKind.Fact);
        DocumentEdit[] edits = factsBelow ? [.. Moved(document, observations, head, end)] : [WholeLines.InsertAbove(document, observations[0], [head])];
        string title = observations.Count == 1 ? $"Put this line in an entry of today, `{head}`" : $"Put these {observations.Count} lines in an entry of today, `{head}`";
        yield return new ActionOffer("add-entry-head", title, ActionKind.QuickFix, [.. edits], true,
            [.. document.Analysis.Findings.TakeWhile(f => f.Line < end).Where(f => f.Rule == ProblemRules.Misplaced && observations.Contains(f.Line)).Select(NoteFix.Fixed)]);
    }

    private static IEnumerable<DocumentEdit> Moved(Document document, List<int> observations, string head, int end)
    {
        IEnumerable<string> lines = observations.SelectMany(line => WholeLines.Reindented(document, line, 2)).Prepend(head);
        int last = end - 1;
        while (last > observations[^1] && document.Syntax.Lines[last].Kind == LineKind.Blank)
        {
            last--;
        }

        foreach ((int from, int to) in Stretches(document, observations))
        {
            if (to != last)
            {
                yield return WholeLines.Remove(document, from, to);
            }
            else
            {
                // the last stretch stays where the entry starts: taking it away and putting it in would touch
                string ending = WholeLines.EndingNear(document, to);
                LineSyntax line = document.Syntax.Lines[to];
                yield return new DocumentEdit(new PlaceRange(new Place(from, 0), new Place(to, line.Text.Length)), string.Join(ending, lines));
                yield break;
            }
        }

        yield return WholeLines.InsertBelow(document, last, lines.Prepend(""));
    }

    /// <summary>The lines of the observations, those that follow one another as one stretch.</summary>
    private static IEnumerable<(int From, int To)> Stretches(Document document, List<int> observations)
    {
        (int From, int To)? open = null;
        foreach (int line in observations)
        {
            int last = WholeLines.LastOf(document, line);
            if (open is { } before && before.To + 1 == line)
            {
                open = (before.From, last);
                continue;
            }

            if (open is { } done)
            {
                yield return done;
            }

            open = (line, last);
        }

        if (open is { } final)
        {
            yield return final;
        }
    }
}
