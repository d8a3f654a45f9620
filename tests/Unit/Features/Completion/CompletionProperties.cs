using CsCheck;
using HealthNotes.Features.Completion;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Formatting;
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

    /// <summary>A line of a word in its own entry or opening, with what stands behind the word.</summary>
    private static Document Begun(string species, LineWord word, string behind, string kind) => Cursor.Note((word.Kind == WordKind.Fact && word.Word != "med"
        ? "\n\n\n\n\n\n\n"
        : $"species {species}\nmed benazepril 5mg every 24h\n2026-10-01 log\n  lump L-flank @lower 12mm\n  tooth 104 tartar\n  food dry salmon biscuits 60g\n2026-10-04 {kind}\n  ") + word.Word + behind);

    /// <summary>Taking an offer brings nothing that <c>format</c> would change, where what was typed before is as it would be.</summary>
    [Fact]
    public void What_is_offered_stays_as_it_is_under_format() => Gen.Select(Gen.OneOf("dog", "cat"), Word, Gen.OneOf([.. Behind, .. Behind.Select(words => words + " ")]), Gen.OneOf("visit", "log")).ForAll((species, word, behind, kind) =>
    {
        Document document = Begun(species, word, behind, kind);
        if (Formatted(document).TrimEnd() == document.Syntax.Lines[Line].Text.TrimEnd())
        {
            StaysUnderFormat(document);
        }
    }, iter: Effort.Times(1_500));

    [Theory]
    [InlineData("log")]
    [InlineData("check")]
    [InlineData("visit")]
    public void What_starts_a_line_stays_as_it_is_under_format(string kind)
    {
        foreach (char letter in " abcdefghijklmnopqrstuvwxyz0129")
        {
            StaysUnderFormat(Cursor.Note($"species cat\nmed benazepril 5mg every 24h\n2026-10-03 log\n  07:00 SRR 18\n  07:30 BM 1x soft\n  08:00 T 38.2C\n2026-10-04 {kind}\n  {letter}".TrimEnd(' ') + (letter == ' ' ? "  " : "")));
        }
    }

    private static void StaysUnderFormat(Document document)
    {
        foreach (CompletionItem item in CompletionFeature.At(document, new Place(Line, int.MaxValue), FeatureSettings.Default, new Surroundings(new(7, 20), () => ["ear.jpg"])).Items.Where(item => item.Kind != CompletionKind.Lines))
        {
            Document taken = document.Edit(item.Edit, 2);
            // the other words and the order are the writer's
            string formatted = Formatted(taken);
            string[] lost = [.. Words(taken.Syntax.Lines[Line].Text).Except(Words(document.Syntax.Lines[Line].Text)).Except(Words(formatted))];
            Assert.True(lost.Length == 0, $"{taken.Syntax.Lines[Line].Text}: {formatted}");
        }
    }

    private static string[] Words(string line) => line.Split(' ', StringSplitOptions.RemoveEmptyEntries);

    private static string Formatted(Document document)
    {
        int entry = document.Note.EntryAt(Line)?.Line ?? 0;
        return NoteFormatter.FormatLines(document.Syntax, entry).ElementAt(Line - entry);
    }

    private const int Line = 7;

    /// <summary>What is offered can be read: taking it brings no problem that was not there before, but for what is still missing.</summary>
    [Fact]
    public void What_is_offered_reads() => Gen.Select(Gen.OneOf("dog", "cat"), Word, Gen.OneOf(Behind), Gen.OneOf("", " ")).ForAll((species, word, behind, end) =>
    {
        Document document = Begun(species, word, behind + end, "visit");
        Problem[] known = Problems(document);
        foreach (CompletionItem item in CompletionFeature.At(document, new Place(Line, int.MaxValue), FeatureSettings.Default).Items)
        {
            // a joining word, and a side before its place, wait for what comes next
            if (item.Kind != CompletionKind.Joining && !item.Edit.NewText.EndsWith('-'))
            {
                Document taken = document.Edit(item.Edit, 2);
                string[] fresh = [.. Problems(taken).Where(problem => problem.Rule != ProblemRules.Missing && !known.Any(k => k.Rule == problem.Rule)).Select(problem => problem.Message)];
                Assert.True(fresh.Length == 0, $"{taken.Syntax.Lines[Line].Text}: {string.Join("; ", fresh)}");
            }
        }

        static Problem[] Problems(Document document) => [.. document.Note.Problems.Where(problem => problem.Line == Line).Select(problem => problem.Problem)];
    }, iter: Effort.Times(1_500));
}
