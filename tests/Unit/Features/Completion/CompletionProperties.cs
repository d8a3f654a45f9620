using CsCheck;
using HealthNotes.Features.Completion;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Tests.Grammar.Properties;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Completion;

/// <summary>What holds of every list, wherever it is asked for.</summary>
public class CompletionProperties
{
    [Fact]
    public void At_every_place_of_every_note_a_list_is_sound() => Gen.Select(Soup.Note, Gen.Int[0, 20], Gen.Int[0, 80]).ForAll((text, line, character) =>
    {
        var document = Document.Open("file:///a.hnote", 1, text, Cursor.Today);
        IsSound(document, document.Clamp(new Place(line % document.Syntax.Lines.Length, character)));
    }, iter: Effort.Times(1_500));

    private static void IsSound(Document document, Place place)
    {
        CompletionList list = CompletionFeature.At(document, place, FeatureSettings.Default);
        string line = document.Syntax.Lines[place.Line].Text;
        Assert.True(list.Items.Length <= CompletionList.MostItems);
        Assert.Equal(list.Items.Select(item => item.SortKey).Order(StringComparer.Ordinal), list.Items.Select(item => item.SortKey));
        Assert.True(list.Items.Count(item => item.Preselect) <= 1);
        foreach (CompletionItem item in list.Items)
        {
            PlaceRange range = item.Edit.Range;
            Assert.Equal((place.Line, place.Line), (range.Start.Line, range.End.Line));
            Assert.True(0 <= range.Start.Character && range.Start <= place && place <= range.End && range.End.Character <= line.Length);
            Assert.StartsWith(line[range.Start.Character..place.Character], item.FilterText, StringComparison.OrdinalIgnoreCase);
            Assert.True(item.Key is null || CompletionFeature.Resolve(item.Key) is { Length: > 0 }, item.Key);
            Assert.True(item.Kind == CompletionKind.Lines || !item.Edit.NewText.Contains('\n'));
            Assert.Equal(item.Kind == CompletionKind.Lines, item.Snippet is not null);
        }
    }

    private static readonly string[] Behind =
        ["", " 1", " 12", " L-flank", " L", " 5mg", " 18/15s", " 38.6C", " pink", " ear", " like", " every", " in", " on", " rr", " benazepril", " 2026-10-04", " @lower", " b"];

    private static readonly Gen<LineWord> Word = Gen.OneOf([.. NoteVocabulary.Default.LineWords.Terms]);

    /// <summary>What is offered can be read: taking it brings no problem that was not there before, but for what is still missing.</summary>
    [Fact]
    public void What_is_offered_reads() => Gen.Select(Gen.OneOf("dog", "cat"), Word, Gen.OneOf(Behind), Gen.OneOf("", " ")).ForAll((species, word, behind, end) =>
    {
        const int line = 7;
        string before = word.Kind == WordKind.Fact && word.Word != "med"
            ? "\n\n\n\n\n\n\n"
            : $"species {species}\nmed benazepril 5mg every 24h\n2026-10-01 check\n  lump L-flank @lower 12mm\n  tooth 104 tartar\n  food dry salmon biscuits 60g\n2026-10-04 visit\n";
        Document document = Cursor.Note($"{before}  {word.Word}{behind}{end}");
        Problem[] known = Problems(document);
        foreach (CompletionItem item in CompletionFeature.At(document, new Place(line, int.MaxValue), FeatureSettings.Default).Items)
        {
            // a joining word, and a side before its place, wait for what comes next
            if (item.Kind != CompletionKind.Joining && !item.Edit.NewText.EndsWith('-'))
            {
                Document taken = document.Edit(item.Edit, 2);
                string[] fresh = [.. Problems(taken).Where(problem => problem.Rule != ProblemRules.Missing && !known.Any(k => k.Rule == problem.Rule)).Select(problem => problem.Message)];
                Assert.True(fresh.Length == 0, $"{taken.Syntax.Lines[line].Text}: {string.Join("; ", fresh)}");
            }
        }

        static Problem[] Problems(Document document) => [.. document.Note.Problems.Where(problem => problem.Line == line).Select(problem => problem.Problem)];
    }, iter: Effort.Times(1_500));
}
