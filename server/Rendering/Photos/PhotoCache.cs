using System.Security.Cryptography;

namespace HealthNotes.Rendering.Photos;

/// <summary>
/// The pictures of the pages made last, small, by what their files hold: a page that is made anew with each key decodes none of them
/// again. Bounded; safe for several threads.
/// </summary>
public sealed class PhotoCache
{
    /// <summary>Two pages full of pictures.</summary>
    private const long MostBytes = 16_000_000;

    private const int MostPhotos = 200;
    private readonly Lock gate = new();
    private readonly LinkedList<(string Key, ShrunkPhoto? Photo, string? Problem)> latest = [];
    private long bytes;

    /// <summary>How many pictures were made small, and not found here.</summary>
    internal int Made { get; private set; }

    internal (ShrunkPhoto? Photo, string? Problem) Shrink(byte[] file)
    {
        string key = Convert.ToHexString(SHA256.HashData(file));
        lock (gate)
        {
            for (var node = latest.First; node is not null; node = node.Next)
            {
                if (node.Value.Key == key)
                {
                    latest.Remove(node);
                    latest.AddFirst(node);
                    return (node.Value.Photo, node.Value.Problem);
                }
            }
        }

        (ShrunkPhoto? photo, string? problem) = PhotoShrinker.Shrink(file);
        lock (gate)
        {
            Made++;
            latest.AddFirst((key, photo, problem));
            bytes += photo?.Jpeg.Length ?? 0;
            while (latest.Count > 1 && (bytes > MostBytes || latest.Count > MostPhotos))
            {
                bytes -= latest.Last!.Value.Photo?.Jpeg.Length ?? 0;
                latest.RemoveLast();
            }
        }

        return (photo, problem);
    }
}
