using System.Text;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using CsCheck;
using HealthNotes.Rendering;
using HealthNotes.Rendering.Pages;
using HealthNotes.Rendering.Photos;
using HealthNotes.Tests.Support;
using MetadataExtractor;
using MetadataExtractor.Formats.Exif;
using SkiaSharp;

namespace HealthNotes.Tests.Rendering.Photos;

/// <summary>Photos on the page: upright, small, and silent about where and with what they were taken.</summary>
public class PhotoTests
{
    private const string Note = "pet A\nspecies dog\n2026-10-04 check\n  photo ear.jpg the left ear\n";

    /// <summary>Where nothing can decode, a picture is shown as it is only where it is small and carries nothing beside its pixels.</summary>
    [Fact]
    public void Without_a_decoder_only_a_picture_that_was_drawn_before_is_shown()
    {
        byte[] Plain(int width, int height) => PhotoFiles.Encoded(new SKBitmap(width, height), SKEncodedImageFormat.Jpeg);
        ShrunkPhoto? photo = PhotoShrinker.DrawnBefore(Plain(400, 300)).Photo;
        Assert.Equal((400, 300), (photo?.Width, photo?.Height));
        byte[][] refused = [PhotoFiles.Jpeg(1), Plain(1200, 300), PhotoFiles.Encoded(new SKBitmap(4, 3), SKEncodedImageFormat.Png), [], [0xFF, 0xD8], Plain(400, 300)[..30]];
        Assert.All(refused, file => Assert.NotNull(PhotoShrinker.DrawnBefore(file).Problem));
    }

    [Fact]
    public void A_photo_says_nothing_of_place_time_or_camera()
    {
        byte[] file = PhotoFiles.Jpeg(6);

        // the test's own file does say it: read with a library that is not part of the product
        IReadOnlyList<MetadataExtractor.Directory> before = ImageMetadataReader.ReadMetadata(new MemoryStream(file));
        Assert.NotEmpty(before.OfType<GpsDirectory>());
        Assert.Equal(PhotoFiles.Secrets[0], before.OfType<ExifIfd0Directory>().Single().GetDescription(ExifDirectoryBase.TagMake));

        IHtmlDocument page = Page(file);
        byte[] shown = Shown(page);
        IReadOnlyList<MetadataExtractor.Directory> after = ImageMetadataReader.ReadMetadata(new MemoryStream(shown));
        Assert.Empty(after.OfType<ExifDirectoryBase>());
        Assert.Equal(["File Type", "Huffman", "JFIF", "JPEG"], after.Select(part => part.Name).Order(StringComparer.Ordinal));
        string bytes = Encoding.Latin1.GetString(shown) + page.DocumentElement.OuterHtml;
        Assert.DoesNotContain(PhotoFiles.Secrets, secret => bytes.Contains(secret, StringComparison.Ordinal));
        Assert.DoesNotContain("Exif", bytes, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void Every_orientation_is_turned_upright(int orientation)
    {
        using SKBitmap shown = SKBitmap.Decode(Shown(Page(PhotoFiles.Jpeg(orientation))));
        Assert.Equal((600, 400), (shown.Width, shown.Height));
        (int, int)[] places = [(30, 30), (570, 30), (30, 370), (570, 370)];
        foreach (((int x, int y), SKColor colour) in places.Zip(PhotoFiles.Corners))
        {
            SKColor there = shown.GetPixel(x, y);
            Assert.True(Distance(there, colour) < 60, $"orientation {orientation}: {there} at {x}, {y} where {colour} belongs");
        }
    }

    [Fact]
    public void A_photo_of_fifty_megapixels_is_shrunk()
    {
        using var large = new SKBitmap(new SKImageInfo(8660, 5774, SKColorType.Gray8, SKAlphaType.Opaque));
        large.Erase(SKColors.Gray);
        byte[] file = PhotoFiles.Encoded(large.Copy(), SKEncodedImageFormat.Jpeg);
        IElement img = Page(file).QuerySelector("img")!;
        Assert.Equal(("1000", "667"), (img.GetAttribute("width"), img.GetAttribute("height")));
        Assert.InRange(img.GetAttribute("src")!.Length, 1_000, 400_000);
    }

    [Fact]
    public void A_picture_that_claims_to_be_vast_is_not_decoded()
    {
        byte[] png = PhotoFiles.Encoded(new SKBitmap(8, 8), SKEncodedImageFormat.Png);
        "\0\x01\0\0\0\x01\0\0"u8.CopyTo(png.AsSpan(16));
        Assert.Contains("ear.jpg, the left ear (not shown: ", Section(Page(png)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'><script>alert(1)</script></svg>")]
    [InlineData("<!doctype html><script>alert(1)</script>")]
    [InlineData("GIF89a")]
    [InlineData("")]
    [InlineData("%PDF-1.7")]
    public void What_only_poses_as_a_photo_is_named_and_not_shown(string content)
    {
        IHtmlDocument page = Page(Encoding.UTF8.GetBytes(content));
        Assert.Empty(page.QuerySelectorAll("img, svg script, script"));
        Assert.Contains("ear.jpg, the left ear (not shown: it is not a picture that can be shown (JPEG, PNG, WebP, GIF, BMP))", Section(page), StringComparison.Ordinal);
        Assert.DoesNotContain("alert(1)", page.DocumentElement.OuterHtml, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_ends_early_or_is_damaged_never_breaks_the_page()
    {
        byte[] whole = PhotoFiles.Jpeg();
        Gen.Select(Gen.Int[0, whole.Length], Gen.Int[0, whole.Length - 1].Array[0, 6], Gen.Byte).ForAll(
            (length, places, value) =>
            {
                byte[] file = [.. whole];
                foreach (int place in places)
                {
                    file[place] = value;
                }

                Assert.Single(Page(file[..length]).QuerySelectorAll("section.pictures"));
            },
            iter: 60);
    }

    [Fact]
    public void Other_kinds_of_picture_are_shown_on_white()
    {
        foreach (SKEncodedImageFormat format in new[] { SKEncodedImageFormat.Png, SKEncodedImageFormat.Webp })
        {
            using SKBitmap shown = SKBitmap.Decode(Shown(Page(PhotoFiles.Encoded(new SKBitmap(40, 30), format))));
            Assert.Equal((40, 30), (shown.Width, shown.Height));
            Assert.True(Distance(shown.GetPixel(20, 15), SKColors.White) < 10);
        }
    }

    [Fact]
    public void Pictures_are_named_where_no_file_is_asked_for_and_when_the_page_is_full()
    {
        Assert.Empty(Pages.Document(Note).QuerySelectorAll("img"));
        string many = "pet A\n2026-10-04 check\n" + string.Concat(Enumerable.Range(1, 40).Select(n => $"  photo p{n}.jpg\n"));
        byte[] noise = Noise();
        IHtmlDocument page = Pages.With(many, PageOptions.Default with { Photos = _ => new PhotoBytes(noise, null) });
        Assert.InRange(page.QuerySelectorAll("img").Length, 2, 29);
        Assert.Contains("not shown: the page holds enough pictures", Section(page), StringComparison.Ordinal);
        Assert.Contains("10 more are in the notes.", Section(page), StringComparison.Ordinal);
        Assert.InRange(page.DocumentElement.OuterHtml.Length, 1_000_000, 9_000_000);
    }

    [Fact]
    public void A_picture_has_words_for_those_who_cannot_see_it()
    {
        IElement img = Page(PhotoFiles.Jpeg()).QuerySelector("img")!;
        Assert.Equal("Photo of 2026-10-04: the left ear", img.GetAttribute("alt"));
        Assert.Contains("ear.jpg", VisitPage.Markdown(Pages.Analyse(Note), PageOptions.Default with { Photos = _ => new PhotoBytes(PhotoFiles.Jpeg(), null) }), StringComparison.Ordinal);
    }

    private static IHtmlDocument Page(byte[] file) => Pages.With(Note, PageOptions.Default with { Photos = _ => new PhotoBytes(file, null) });

    private static string Section(IHtmlDocument page) => page.Section("pictures");

    private static byte[] Shown(IHtmlDocument page)
    {
        string source = page.QuerySelector("section.pictures img")!.GetAttribute("src")!;
        const string Start = "data:image/jpeg;base64,";
        Assert.StartsWith(Start, source, StringComparison.Ordinal);
        return Convert.FromBase64String(source[Start.Length..]);
    }

    /// <summary>A picture that no encoder can make small.</summary>
    private static byte[] Noise()
    {
        var random = new Random(7);
        var bitmap = new SKBitmap(1000, 750);
        for (int y = 0; y < bitmap.Height; y++)
        {
            for (int x = 0; x < bitmap.Width; x++)
            {
                bitmap.SetPixel(x, y, new SKColor((byte)random.Next(256), (byte)random.Next(256), (byte)random.Next(256)));
            }
        }

        return PhotoFiles.Encoded(bitmap, SKEncodedImageFormat.Jpeg);
    }

    private static int Distance(SKColor one, SKColor other) => Math.Max(Math.Abs(one.Red - other.Red), Math.Max(Math.Abs(one.Green - other.Green), Math.Abs(one.Blue - other.Blue)));
}
