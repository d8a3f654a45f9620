using System.Collections.Immutable;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;

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
