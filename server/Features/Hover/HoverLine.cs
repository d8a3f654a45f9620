using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Readings;

namespace HealthNotes.Features.Hover;

/// <summary>The line that the pointer rests on, in its document.</summary>
/// <param name="Document">The document.</param>
/// <param name="Index">The index of the line.</param>
/// <param name="Token">The token under the pointer.</param>
/// <param name="Us">Whether the reader is shown US units.</param>
internal sealed record HoverLine(Document Document, int Index, Token Token, bool Us)
{
    /// <summary>The line.</summary>
    public LineSyntax Line => Document.Syntax.Lines[Index];

    /// <summary>What it means, where several things stand in it the one under the pointer; null while it is half typed.</summary>
    public NoteItem? Item => Line.Items.FirstOrDefault(Names) ?? Line.Items.LastOrDefault(item => item.Head.Span.Start <= Token.Span.Start) ?? Line.Item;

    /// <summary>The word it starts with, also while it is half typed.</summary>
    public LineWord? Word => Item?.Word ?? LineAt.WordOf(Line);

    /// <summary>The characters under the pointer.</summary>
    public string Text => Token.Span.In(Line.Text).ToString();

    /// <summary>Its entry; null in the opening.</summary>
    public Entry? Entry => Document.Note.EntryAt(Index);

    /// <summary>The day of its entry; the day of reading in the opening.</summary>
    public DateOnly Day => Entry?.Head.Date ?? Document.Today;

    /// <summary>The value of the line; null where it has none.</summary>
    public NoteReading? Reading => Document.Record.ReadingsAt(Index).FirstOrDefault();

    /// <summary>What was noted of the same thing before the line, the latest first.</summary>
    public IEnumerable<Noted> Before => Item is { } item && CourseKey.Of(item, Reading) is { } key && Entry?.Head is { Date: { } day } head
        ? Document.Record.Of(key).Before(day, item.Head.Time ?? head.Time, Index) : [];

    /// <summary>True when a span holds what is under the pointer.</summary>
    public bool IsIn(TextSpan span) => span.Start <= Token.Span.Start && Token.Span.End <= span.End;

    private bool Names(NoteItem item) => (item.Site is { } site && IsIn(site.Span)) || (item.Tag is { } tag && IsIn(tag.Span)) || (item.Value is { } value && IsIn(value.Span))
        || item.Words.Concat(item.Absent).Any(sign => IsIn(sign.Span));
}
