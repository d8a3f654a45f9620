using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Checks;

/// <summary>A line of a check that waits behind its <c>#</c>, or stands bare: a part's word, and nothing that was seen yet.</summary>
/// <param name="Line">The index of the line.</param>
/// <param name="Text">The line without indent and <c>#</c>.</param>
/// <param name="Read">The same, read.</param>
/// <param name="Word">Its word.</param>
/// <param name="Bare">True where the <c>#</c> was taken away.</param>
internal sealed record WaitingLine(int Line, string Text, LineSyntax Read, LineWord Word, bool Bare)
{
    private const int MostWords = 4;

    /// <summary>The line, where it waits; null where it does not.</summary>
    public static WaitingLine? At(Document document, int line)
    {
        LineSyntax syntax = document.Syntax.Lines[line];
        bool bare = syntax.Kind != LineKind.Comment;
        string text = bare ? syntax.Text.Trim() : syntax.Text.TrimStart().TrimStart('#').Trim();
        if (text.Split(' ').Length > MostWords || text.EndsWith('.') || (bare && syntax.Problems.IsEmpty))
        {
            return null;
        }

        // a line that makes sense by itself does not wait
        LineSyntax read = bare ? syntax : NoteSyntax.Parse("\n" + text).Lines[1];
        return LineAt.WordOf(read) is { } word && read.Item is null or { Value: null, Words.IsEmpty: true, Ok: false } && Starts(read, word) && EntryLines.IsLookedAt(word)
            ? new WaitingLine(line, text, read, word, bare)
            : null;
    }

    /// <summary>The waiting lines of an entry, in order.</summary>
    public static IEnumerable<WaitingLine> In(Document document, Entry entry)
    {
        for (int line = entry.Line + 1, last = EntryLines.LastOf(document, entry); line <= last; line++)
        {
            if (At(document, line) is { } waiting)
            {
                yield return waiting;
            }
        }
    }

    private static bool Starts(LineSyntax read, LineWord word) => read.Marks is [{ Kind: TokenKind.LineWord } first, ..] && read.Text[..first.Span.Start].Trim().Length == 0
        && ReferenceEquals(NoteVocabulary.Default.Starting(first.Span.In(read.Text)), word);
}
