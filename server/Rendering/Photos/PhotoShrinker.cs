using System.Buffers.Binary;
using SkiaSharp;

namespace HealthNotes.Rendering.Photos;

/// <summary>
/// Makes a small upright picture from a photo's file. The pixels are drawn on a new canvas and written anew, so that nothing
/// else of the file survives: not where or when it was taken, not the camera, no thumbnail, no colour profile.
/// </summary>
internal static class PhotoShrinker
{
    /// <summary>The longest side on a page, in pixels: sharp on a screen, and at 300 dots an inch 85 mm on paper.</summary>
    public const int LongestSide = 1000;

    /// <summary>More pixels than this are not decoded at all, whatever the file says of itself.</summary>
    private const long MostPixels = 120_000_000;

    /// <summary>For kinds of file that can only be decoded whole: so much memory (4 bytes a pixel) is taken at most.</summary>
    private const long MostPixelsAtOnce = 60_000_000;

    private const int Quality = 78;

    private static readonly SKEncodedImageFormat[] Photos = [SKEncodedImageFormat.Jpeg, SKEncodedImageFormat.Png, SKEncodedImageFormat.Webp, SKEncodedImageFormat.Gif, SKEncodedImageFormat.Bmp];

    /// <summary>The small picture; null with the reason when the file isn't a picture, or too large to be shown.</summary>
    public static (ShrunkPhoto? Photo, string? Problem) Shrink(byte[] file) => OperatingSystem.IsBrowser() ? DrawnBefore(file) : Decoded(file);

    /// <summary>
    /// In a browser there is no decoder: its canvas drew the picture anew, small and upright, before it was kept. A file that was not
    /// written so is refused: one with a block for a program's own data (APP1 to APP15) may say where it was taken.
    /// </summary>
    internal static (ShrunkPhoto? Photo, string? Problem) DrawnBefore(ReadOnlySpan<byte> file)
    {
        const string Problem = "it is not a picture that was made small here";
        if (!file.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8]))
        {
            return (null, Problem);
        }

        for (int at = 2; at + 9 < file.Length && file[at] == 0xFF; at += 2 + BinaryPrimitives.ReadUInt16BigEndian(file[(at + 2)..]))
        {
            int height = BinaryPrimitives.ReadUInt16BigEndian(file[(at + 5)..]);
            int width = BinaryPrimitives.ReadUInt16BigEndian(file[(at + 7)..]);
            switch (file[at + 1])
            {
                case >= 0xC0 and <= 0xC2:
                    return Math.Max(width, height) <= LongestSide ? (new ShrunkPhoto(file.ToArray(), width, height), null) : (null, Problem);
                case >= 0xE1 and <= 0xEF or 0xFE or 0xDA:
                    return (null, Problem);
            }
        }

        return (null, Problem);
    }

    private static (ShrunkPhoto? Photo, string? Problem) Decoded(byte[] file)
    {
        using var data = SKData.CreateCopy(file);
        using SKCodec? codec = SKCodec.Create(data);
        if (codec is null || !Photos.Contains(codec.EncodedFormat))
        {
            return (null, "it is not a picture that can be shown (JPEG, PNG, WebP, GIF, BMP)");
        }

        SKImageInfo whole = codec.Info;
        if ((long)whole.Width * whole.Height > MostPixels || whole.Width <= 0 || whole.Height <= 0)
        {
            return (null, "the picture is too large");
        }

        SKSizeI size = codec.GetScaledDimensions(Math.Min(1, 2f * LongestSide / Math.Max(whole.Width, whole.Height)));
        if ((long)size.Width * size.Height > MostPixelsAtOnce)
        {
            return (null, "the picture is too large");
        }

        using var srgb = SKColorSpace.CreateSrgb();
        using var decoded = new SKBitmap(new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888, SKAlphaType.Premul, srgb));
        // a file that ends early still shows what it has
        if (codec.GetPixels(decoded.Info, decoded.GetPixels()) is not (SKCodecResult.Success or SKCodecResult.IncompleteInput))
        {
            return (null, "the file is damaged");
        }

        return (Drawn(decoded, codec.EncodedOrigin), null);
    }

    private static ShrunkPhoto Drawn(SKBitmap decoded, SKEncodedOrigin origin)
    {
        float scale = Math.Min(1, (float)LongestSide / Math.Max(decoded.Width, decoded.Height));
        int width = Math.Max(1, (int)Math.Round(decoded.Width * scale));
        int height = Math.Max(1, (int)Math.Round(decoded.Height * scale));
        bool turned = origin is SKEncodedOrigin.LeftTop or SKEncodedOrigin.RightTop or SKEncodedOrigin.RightBottom or SKEncodedOrigin.LeftBottom;
        (int w, int h) = turned ? (height, width) : (width, height);
        // the values are those of sRGB already; without a colour space the encoder adds no profile
        using var canvasBitmap = new SKBitmap(new SKImageInfo(w, h, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using (var canvas = new SKCanvas(canvasBitmap))
        {
            canvas.Clear(SKColors.White);
            SKMatrix upright = Upright(origin, width, height);
            canvas.SetMatrix(in upright);
            using var image = SKImage.FromBitmap(decoded);
            canvas.DrawImage(image, new SKRect(0, 0, width, height), new SKSamplingOptions(SKCubicResampler.Mitchell));
        }

        using SKPixmap pixels = canvasBitmap.PeekPixels() ?? throw new InvalidOperationException("the canvas has no pixels");
        using SKData jpeg = pixels.Encode(new SKJpegEncoderOptions(Quality, SKJpegEncoderDownsample.Downsample420, SKJpegEncoderAlphaOption.Ignore))
            ?? throw new InvalidOperationException("the canvas was not encoded");
        return new ShrunkPhoto(jpeg.ToArray(), w, h);
    }

    /// <summary>The matrix that turns a picture of so many pixels upright, by its orientation tag (Exif 2.32, tag 0x0112).</summary>
    private static SKMatrix Upright(SKEncodedOrigin origin, int w, int h) => origin switch
    {
        SKEncodedOrigin.TopRight => new SKMatrix(-1, 0, w, 0, 1, 0, 0, 0, 1),
        SKEncodedOrigin.BottomRight => new SKMatrix(-1, 0, w, 0, -1, h, 0, 0, 1),
        SKEncodedOrigin.BottomLeft => new SKMatrix(1, 0, 0, 0, -1, h, 0, 0, 1),
        SKEncodedOrigin.LeftTop => new SKMatrix(0, 1, 0, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightTop => new SKMatrix(0, -1, h, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightBottom => new SKMatrix(0, -1, h, -1, 0, w, 0, 0, 1),
        SKEncodedOrigin.LeftBottom => new SKMatrix(0, 1, 0, -1, 0, w, 0, 0, 1),
        _ => SKMatrix.Identity,
    };
}
