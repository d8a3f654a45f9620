using CsCheck;
using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Tests.Grammar.Properties;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Actions;

/// <summary>What holds for the actions of any text at all.</summary>
public class ActionProperties
{
    private static readonly Gen<Document> Documents = Soup.Note.Select(text => Document.Open("file:///a.hnote", 1, text, Cursor.Today));

    private static readonly Gen<Document> Notes = Gen.Select(
        Gen.OneOf("pet Marlow\nspecies dog\n", "species cat\n", "gums pink\n", ""),
        Gen.OneOf("2026-10-01 check\n  lump L-flank 12mm\n  lump chin # the lower one\n", "2026-11-25 check\n", ""),
        Soup.PlainNote,
        (opening, entry, rest) => Document.Open("file:///a.hnote", 1, opening + entry + rest, Cursor.Today));

    private static readonly Gen<Document> Any = Gen.OneOf(Documents, Notes);

    [Fact]
    public void Nothing_throws_at_any_place() => Any.ForAll(document =>
    {
        for (int line = 0; line < document.Syntax.Lines.Length; line++)
        {
            for (int character = 0; character <= document.Syntax.Lines[line].Text.Length; character++)
            {
                _ = ActionFeature.In(document, PlaceRange.At(line, character), FeatureSettings.Default);
            }
        }
    }, iter: Effort.Times(15));

    [Fact]
    public void Every_offer_applies_cleanly_and_makes_nothing_worse() => Any.ForAll(document =>
    {
        foreach (ActionOffer offer in Everything(document))
        {
            IReadOnlyList<DocumentEdit> edits = offer.Key is { } key ? ActionFeature.Resolve(document, key) : offer.Edits;
            Assert.True(edits.Count > 0, offer.Title);
            AssertClean(document, edits, offer.Title);
            string text = Cursor.Apply(document, edits);
            Document after = Document.Open("file:///a.hnote", 2, text, Cursor.Today);
            bool mayUncover = offer.Fixes.Any(f => f.Rule == ProblemRules.UnknownLine) || offer.Id is "say-species" or "nearest-word" or "corrected-line" or "add-entry-head";
            Assert.True(mayUncover || Errors(after) <= Errors(document), $"{offer.Id} {offer.Title}\n{document.Syntax.Print()}\n---\n{text}\n{string.Join("\n", after.Analysis.Findings.Where(f => f.Level == FindingLevel.Error).Select(f => $"{f.Line}: {f.Message}").Except(document.Analysis.Findings.Select(f => $"{f.Line}: {f.Message}")))}");
        }
    }, iter: Effort.Times(80));

    [Fact]
    public void Fix_all_does_nothing_the_second_time() => Any.ForAll(document =>
    {
        var edits = ActionFeature.FixAll(document);
        AssertClean(document, edits, "fix all");
        Document after = Document.Open("file:///a.hnote", 2, Cursor.Apply(document, edits), Cursor.Today);
        Assert.Equal(after.Syntax.Lines.Length, document.Syntax.Lines.Length);
        Assert.Empty(ActionFeature.FixAll(after));
    }, iter: Effort.Times(200));

    /// <summary>Characters that are not blank go only where something was flagged.</summary>
    [Fact]
    public void Fix_all_takes_away_nothing_but_what_it_replaces() => Any.ForAll(document =>
    {
        foreach (DocumentEdit edit in ActionFeature.FixAll(document))
        {
            Assert.Equal(edit.Range.Start.Line, edit.Range.End.Line);
            NoteFinding[] errors = [.. document.Analysis.Findings.Where(f => f.Level == FindingLevel.Error && f.Line == edit.Range.Start.Line)];
            string line = document.Syntax.Lines[edit.Range.Start.Line].Text;
            int start = errors.Min(f => f.Span.Start);
            int end = errors.Max(f => f.Span.End);
            int from = edit.Range.Start.Character;
            int to = edit.Range.End.Character;
            // "rest rest": which of the two goes makes no difference, nor does which of the blanks beside it
            while (edit.NewText.Length == 0 && to > end && from > 0 && line[from - 1] == line[to - 1])
            {
                from--;
                to--;
            }

            while (edit.NewText.Length == 0 && to < end && line[from] == line[to])
            {
                from++;
                to++;
            }

            string told = $"{line}\n{edit.Range.Start.Character}..{edit.Range.End.Character} becomes `{edit.NewText}`, flagged {start}..{end}";
            // a line takes several rounds: a later one may replace a word that the first did not look at, though never one that is known
            Assert.True(to <= Math.Max(end, from) || !line[end..to].Split([' ', '\t', ','], StringSplitOptions.RemoveEmptyEntries).All(NoteVocabulary.Default.Knows), told);
            Assert.True(from >= start || line[from..start].All(c => char.IsWhiteSpace(c) || c is ',' or ';'), told);
        }
    }, iter: Effort.Times(200));

    [Fact]
    public void A_check_for_today_is_added_to_any_note() => Any.ForAll(document =>
    {
        CheckEdit check = CheckEdits.AddCheckForToday(document);
        if (check.Edit is not { } edit)
        {
            return;
        }

        AssertClean(document, [edit], "check");
        string before = document.Syntax.Print();
        string text = Cursor.Apply(document, [edit]);
        Assert.StartsWith(before, text);
        Document after = Document.Open("file:///a.hnote", 2, text, Cursor.Today);
        Assert.Equal(check.Cursor, after.Clamp(check.Cursor));
        Assert.Equal(Errors(document), Errors(after));
        Assert.Equal(document.Note.Entries.Length + 1, after.Note.Entries.Length);
    }, iter: Effort.Times(80));

    private static IEnumerable<ActionOffer> Everything(Document document)
    {
        for (int line = 0; line < document.Syntax.Lines.Length; line++)
        {
            int length = document.Syntax.Lines[line].Text.Length;
            foreach (int character in (int[])[0, length / 2, length])
            {
                foreach (ActionOffer offer in ActionFeature.In(document, PlaceRange.At(line, character), FeatureSettings.Default))
                {
                    yield return offer;
                }
            }
        }

        foreach (ActionOffer offer in ActionFeature.In(document, new PlaceRange(new Place(0, 0), new Place(int.MaxValue, int.MaxValue)), FeatureSettings.Default))
        {
            yield return offer;
        }
    }

    private static void AssertClean(Document document, IReadOnlyList<DocumentEdit> edits, string what)
    {
        DocumentEdit[] sorted = [.. edits.OrderBy(edit => edit.Range.Start)];
        for (int index = 0; index < sorted.Length; index++)
        {
            PlaceRange range = sorted[index].Range;
            Assert.Equal(range.Start, document.Clamp(range.Start));
            Assert.Equal(range.End, document.Clamp(range.End));
            Assert.True(range.Start <= range.End, what);
            Assert.True(index == 0 || sorted[index - 1].Range.End <= range.Start, $"{what}: edits overlap");
            Assert.True(index == 0 || sorted[index - 1].Range.Start != range.Start, $"{what}: two edits at one place");
        }
    }

    private static int Errors(Document document) => document.Analysis.Findings.Count(f => f.Level == FindingLevel.Error);
}
