using CsCheck;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Symbols;
using HealthNotes.Tests.Grammar.Properties;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Symbols;

public class FoldingTests
{
    [Fact]
    public void Opening_entries_comments_and_free_text_fold()
    {
        Document note = Cursor.Note("# one\n# two\n\npet Marlow\nspecies dog\n\n2026-10-04 check\n  gums pink\n  > a\n  > b\n  # x\n  # y\n\n\n2026-10-05 log\n2026-10-06 log\n  > alone\n");
        FoldedLines[] expected = [new(0, 1, true), new(3, 4, false), new(6, 11, false), new(8, 9, false), new(10, 11, true), new(15, 16, false)];
        Assert.Equal(expected, FoldingFeature.In(note).AsEnumerable());
    }

    [Theory]
    [InlineData("")]
    [InlineData("pet A")]
    [InlineData("# a\n\n# b\n")]
    [InlineData("2026-10-04 check\n\n\n")]
    public void One_line_does_not_fold(string text) => Assert.Empty(FoldingFeature.In(Cursor.Note(text)));

    [Fact]
    public void Folds_are_in_the_document_and_nested() => Soup.Note.ForAll(text =>
    {
        Document note = Document.Open("file:///a.hnote", 1, text, Cursor.Today);
        var open = new Stack<FoldedLines>();
        foreach (FoldedLines fold in FoldingFeature.In(note))
        {
            Assert.InRange(fold.LastLine, fold.FirstLine + 1, note.Syntax.Lines.Length - 1);
            while (open.Count > 0 && open.Peek().LastLine < fold.FirstLine)
            {
                open.Pop();
            }

            Assert.True(open.Count == 0 || (open.Peek().FirstLine < fold.FirstLine && fold.LastLine <= open.Peek().LastLine) || (open.Peek().FirstLine == fold.FirstLine && !open.Peek().IsComment));
            open.Push(fold);
        }
    }, iter: Effort.Times(500));
}
