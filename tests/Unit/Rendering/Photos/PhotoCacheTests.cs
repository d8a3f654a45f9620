using HealthNotes.Rendering;
using HealthNotes.Rendering.Pages;
using HealthNotes.Rendering.Photos;

namespace HealthNotes.Tests.Rendering.Photos;

/// <summary>A page that is made anew with each key decodes no picture twice, and stops when the next is asked for.</summary>
public class PhotoCacheTests
{
    private const string Note = "pet Marlow\nspecies dog\n2026-11-20 check\n  photo a.jpg\n  photo b.jpg\n";

    [Fact]
    public void A_picture_is_made_small_once_for_what_it_holds()
    {
        var cache = new PhotoCache();
        Dictionary<string, byte[]> files = new() { ["a.jpg"] = PhotoFiles.Jpeg(1), ["b.jpg"] = PhotoFiles.Jpeg(6) };
        PageOptions options = PageOptions.Default with { Cache = cache, Photos = name => new PhotoBytes(files[name], null) };
        string first = VisitPage.Html(Pages.Analyse(Note), options);
        Assert.Equal(first, VisitPage.Html(Pages.Analyse(Note), options));
        Assert.Equal(first, VisitPage.Html(Pages.Analyse(Note), options with { Cache = null }));
        Assert.Equal(2, cache.Made);
        files["a.jpg"] = PhotoFiles.Jpeg(3);
        Assert.NotEqual(first, VisitPage.Html(Pages.Analyse(Note), options));
        Assert.Equal(3, cache.Made);
    }

    [Fact]
    public void It_keeps_no_more_than_two_pages_of_pictures()
    {
        var cache = new PhotoCache();
        byte[][] files = [.. Enumerable.Range(10, 260).Select(width => PhotoFiles.Jpeg(1, width, 10))];
        Array.ForEach(files, file => cache.Shrink(file));
        cache.Shrink(files[^1]);
        Assert.Equal(260, cache.Made);
        cache.Shrink(files[0]);
        Assert.Equal(261, cache.Made);
    }

    [Fact]
    public void The_work_on_pictures_stops_when_it_is_told_to()
    {
        using var stop = new CancellationTokenSource();
        int read = 0;
        PageOptions options = PageOptions.Default with
        {
            Stop = stop.Token,
            Photos = _ =>
            {
                read++;
                stop.Cancel();
                return new PhotoBytes(PhotoFiles.Jpeg(1), null);
            },
        };
        Assert.Throws<OperationCanceledException>(() => VisitPage.Html(Pages.Analyse(Note), options));
        Assert.Equal(1, read);
    }
}
