using System.Collections.Frozen;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Danger;

/// <summary>Words of a note that no rule has read.</summary>
/// <param name="Line">The index of their line.</param>
/// <param name="Span">Where they stand in it.</param>
/// <param name="Text">The words.</param>
/// <param name="Place">Where they stand.</param>
/// <param name="IsName">True for the name of a food or a medicine.</param>
internal sealed record UnreadText(int Line, TextSpan Span, string Text, TextPlace Place, bool IsName = false)
{
    /// <summary>Lines that tell of the past, of what is to come, or ask.</summary>
    private static readonly WordKind[] NotNow = [WordKind.Fact, WordKind.Task];

    private static readonly FrozenSet<string> Conditions = SmallWords.Of("conditions");

    /// <summary>All of an entry: remarks and names in lines that were read, lines that were not, free text.</summary>
    public static IEnumerable<UnreadText> In(PetRecord at, PetEntry entry)
    {
        foreach ((int line, NoteItem item) in entry.Entry.Items)
        {
            bool isDone = item.Word.Word == "done";
            if (NotNow.Contains(item.Word.Kind) && !isDone)
            {
                foreach (UnreadText tail in Tail(line, item, at.Note.Syntax.Lines[line].Text))
                {
                    yield return tail;
                }

                continue;
            }

            if (item.Note is { } note)
            {
                yield return new UnreadText(line, note.Span, note.Span.In(at.Note.Syntax.Lines[line].Text).ToString(), item.Word.Word is "ate" or "food" ? TextPlace.Eaten : TextPlace.Line);
            }

            if (item.Name is { } name && item is not (LabResult or DoseEvent { Word.Word: not "gave" } or Photo))
            {
                yield return new UnreadText(line, name.Span, name.Span.In(at.Note.Syntax.Lines[line].Text).ToString(), item.Word.Word == "food" ? TextPlace.Eaten : TextPlace.Line, IsName: !isDone);
            }
        }

        foreach (UnreadText line in NotUnderstood(entry.Entry.NotUnderstood, at.Note.Syntax.Lines))
        {
            yield return line;
        }

        foreach (FreeTextBlock block in entry.Entry.Texts)
        {
            for (int index = block.Line; index < at.Note.Syntax.Lines.Length && at.Note.Syntax.Lines[index].Kind == LineKind.FreeText; index++)
            {
                yield return Of(index, at.Note.Syntax.Lines[index], TextPlace.Free);
            }
        }
    }

    /// <summary>
    /// What stands behind a fact or a task and may tell of today: <c>recheck ear L in 2w, had a seizure</c>. A condition
    /// (<c>sooner if he collapses</c>) and what something is for are not; nor are known conditions. A question is searched as a whole.
    /// </summary>
    private static IEnumerable<UnreadText> Tail(int line, NoteItem item, string text)
    {
        if (item.Word.Word is "known" or "usual" or "call-if" or "phone-now-if" or "include" or "alias" or "override-urgent" or "expect" or "accept" || (item.Note ?? item.Name ?? (item as TextTask)?.Text ?? (item as TextFact)?.Text) is not { } words)
        {
            yield break;
        }

        bool asked = item.Word.Word == "ask";
        int start = words.Span.Start;
        bool first = item.Note is null && !asked;
        foreach (string piece in words.Span.In(text).ToString().Split(asked ? '\n' : ','))
        {
            string[] said = piece.Trim().ToLowerInvariant().Split(' ');
            if (!first && piece.Trim().Length > 0 && (asked || !Conditions.Contains(said[0])))
            {
                yield return new UnreadText(line, new TextSpan(start, piece.Length), piece, asked ? TextPlace.Asked : TextPlace.Tail);
            }

            first = false;
            start += piece.Length + 1;
        }
    }

    /// <summary>Lines that were not understood, but for those that are plainly facts or questions.</summary>
    public static IEnumerable<UnreadText> NotUnderstood(IEnumerable<int> lines, IReadOnlyList<LineSyntax> all) =>
        from line in lines
        let text = Of(line, all[line], TextPlace.Line)
        where TextWord.Split(text.Text) is not [{ Text: var first }, ..] || NoteVocabulary.Default.LineWords.Find(first) is not { } word || !NotNow.Contains(word.Kind)
        select text;

    private static UnreadText Of(int index, LineSyntax line, TextPlace place)
    {
        int end = line.Marks is [.., { Kind: TokenKind.Comment } comment] ? comment.Span.Start : line.Text.Length;
        return new UnreadText(index, TextSpan.Between(line.Indent, end), line.Text[line.Indent..end], place);
    }
}
