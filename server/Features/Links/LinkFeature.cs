using System.Collections.Immutable;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Features.Links;

/// <summary>The files that photo lines name.</summary>
public static class LinkFeature
{
    /// <summary>The links of a note, in line order. A name that leads out of the note's folder is none.</summary>
    /// <param name="document">The note.</param>
    /// <param name="exists">Whether a file stands at a path from the note's folder.</param>
    public static ImmutableArray<NoteLink> In(Document document, Func<string, bool> exists) =>
    [
        .. from photo in Photos(document)
           let path = PhotoPath.Of(photo.Value.File.Text).Relative
           where path is not null
           select new NoteLink(PlaceRange.Of(photo.Line, photo.Value.File.Span), path, !exists(path)),
    ];

    /// <summary>The photo lines whose file is not there or cannot be looked for, in line order.</summary>
    /// <param name="document">The note.</param>
    /// <param name="exists">Whether a file stands at a path from the note's folder.</param>
    public static ImmutableArray<MissingPhoto> Missing(Document document, Func<string, bool> exists) =>
    [
        .. from photo in Photos(document)
           let path = PhotoPath.Of(photo.Value.File.Text)
           let message = path.Relative is { } relative ? exists(relative) ? null : $"photo {photo.Value.File.Text} is not beside the note" : path.Refusal
           where message is not null
           select new MissingPhoto(photo.Line, photo.Value.File.Span, message),
    ];

    /// <summary>The edits by which photo lines follow their pictures. A name that such a line cannot hold is not written.</summary>
    /// <param name="document">The note.</param>
    /// <param name="after">The new path, from the note's folder, of the picture that has a path; null where it is outside.</param>
    public static ImmutableArray<DocumentEdit> Renamed(Document document, Func<string, string?> after) =>
    [
        .. from photo in Photos(document)
           let path = PhotoPath.Of(photo.Value.File.Text).Relative
           where path is not null
           let renamed = after(path)
           where renamed is not null && renamed != path && Holds(document.Syntax.Lines[photo.Line].Text, photo.Value.File.Span, renamed)
           select new DocumentEdit(PlaceRange.Of(photo.Line, photo.Value.File.Span), renamed),
    ];

    private static bool Holds(string line, TextSpan span, string name) =>
        NoteSyntax.Parse($"\n{line[..span.Start]}{name}{line[span.End..]}").Lines[1].Items is [Photo { File: var file }] && file.Text == name && PhotoPath.Of(name).Relative == name;

    private static IEnumerable<(int Line, Photo Value)> Photos(Document document)
    {
        foreach (Placed<NoteItem> fact in document.Note.Opening.Facts)
        {
            if (fact.Value is Photo photo)
            {
                yield return (fact.Line, photo);
            }
        }

        foreach (Entry entry in document.Note.Entries)
        {
            foreach (Placed<NoteItem> item in entry.Items)
            {
                if (item.Value is Photo photo)
                {
                    yield return (item.Line, photo);
                }
            }
        }
    }
}
