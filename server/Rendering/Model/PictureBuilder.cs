using HealthNotes.Grammar.Items;
using HealthNotes.Rendering.Photos;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>The pictures of the current period: shrunk into the page where they can be had, else by name.</summary>
internal static class PictureBuilder
{
    public static Shown<Picture> Build(PageContext context)
    {
        Shown<CurrentItem> shown = Shown<CurrentItem>.Last([.. context.Items.Where(item => item.Item is Photo)], PageLimits.ListItems);
        long room = PageLimits.PictureBytes;
        var pictures = new List<Picture>();

        // the latest first: when the room runs out, the oldest are only named
        foreach (CurrentItem item in shown.Items.Reverse())
        {
            var photo = (Photo)item.Item;
            (ShrunkPhoto? small, string? problem) = Read(context.Options, photo.File.Text);
            if (small is not null && (room -= small.Jpeg.Length) < 0)
            {
                (small, problem) = (null, PageWords.NoRoomForPicture);
            }

            pictures.Add(new Picture(item.Entry.Day, NoteText.Field(photo.File.Text), photo.Caption is null ? "" : NoteText.Field(photo.Caption.Text), small, problem));
        }

        pictures.Reverse();
        return new Shown<Picture>(pictures, shown.LeftOut);
    }

    private static (ShrunkPhoto? Photo, string? Problem) Read(PageOptions options, string name)
    {
        options.Stop.ThrowIfCancellationRequested();
        PhotoBytes? file = options.Photos?.Invoke(name);
        return file?.Bytes is not { } bytes ? (null, file?.Problem) : options.Cache?.Shrink(bytes) ?? PhotoShrinker.Shrink(bytes);
    }
}
