using System.Buffers.Binary;
using System.Text;
using SkiaSharp;

namespace HealthNotes.Tests.Rendering.Photos;

/// <summary>Files as a telephone's camera writes them, made on the spot.</summary>
internal static class PhotoFiles
{
    /// <summary>The corners of the upright picture: top left, top right, bottom left, bottom right.</summary>
    public static readonly SKColor[] Corners = [SKColors.Red, SKColors.Lime, SKColors.Blue, SKColors.Yellow];

    /// <summary>Words that stand in the file's own fields, and must not reach a page.</summary>
    public static readonly string[] Secrets = ["Secret Camera Works", "Model 9000 Deluxe", "2026:11:21 07:08:09"];

    /// <summary>A JPEG whose pixels are stored the way an orientation tag says, with camera, time and place in its Exif block.</summary>
    /// <param name="orientation">1 to 8, tag 0x0112 of Exif 2.32 (CIPA DC-008): which visual side the first row and the first column are.</param>
    /// <param name="width">Of the upright picture.</param>
    /// <param name="height">Of the upright picture.</param>
    public static byte[] Jpeg(int orientation = 1, int width = 600, int height = 400) => WithExif(Encoded(Stored(orientation, width, height), SKEncodedImageFormat.Jpeg), orientation);

    public static byte[] Encoded(SKBitmap bitmap, SKEncodedImageFormat format)
    {
        using (bitmap)
        {
            using SKData data = bitmap.Encode(format, 90)!;
            return data.ToArray();
        }
    }

    /// <summary>The specification names the visual side of row 0 and column 0; from that each stored pixel follows.</summary>
    private static SKBitmap Stored(int orientation, int width, int height)
    {
        (string row, string column) = orientation switch
        {
            1 => ("top", "left"),
            2 => ("top", "right"),
            3 => ("bottom", "right"),
            4 => ("bottom", "left"),
            5 => ("left", "top"),
            6 => ("right", "top"),
            7 => ("right", "bottom"),
            _ => ("left", "bottom"),
        };
        bool turned = row is "left" or "right";
        var stored = new SKBitmap(new SKImageInfo(turned ? height : width, turned ? width : height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        for (int y = 0; y < stored.Height; y++)
        {
            for (int x = 0; x < stored.Width; x++)
            {
                // how far the pixel lies from the first row's side and from the first column's side
                int fromLeft = turned ? (row == "left" ? y : width - 1 - y) : column == "left" ? x : width - 1 - x;
                int fromTop = turned ? (column == "top" ? x : height - 1 - x) : row == "top" ? y : height - 1 - y;
                stored.SetPixel(x, y, Corners[(fromTop * 2 < height ? 0 : 2) + (fromLeft * 2 < width ? 0 : 1)]);
            }
        }

        return stored;
    }

    /// <summary>Puts an Exif block behind the start of the file: make, model, orientation, time, and a place.</summary>
    private static byte[] WithExif(byte[] jpeg, int orientation)
    {
        byte[] make = Ascii(Secrets[0]);
        byte[] model = Ascii(Secrets[1]);
        byte[] time = Ascii(Secrets[2]);
        const int Entries = 5;
        int data = 8 + 2 + (12 * Entries) + 4;
        var tiff = new List<byte>(Encoding.ASCII.GetBytes("MM\0*"));
        Add32(tiff, 8);
        Add16(tiff, Entries);
        Entry(tiff, 0x010F, 2, make.Length, data);
        Entry(tiff, 0x0110, 2, model.Length, data + make.Length);
        Add16(tiff, 0x0112);
        Add16(tiff, 3);
        Add32(tiff, 1);
        Add16(tiff, orientation);
        Add16(tiff, 0);
        Entry(tiff, 0x0132, 2, time.Length, data + make.Length + model.Length);
        int gps = data + make.Length + model.Length + time.Length;
        Entry(tiff, 0x8825, 4, 1, gps);
        Add32(tiff, 0);
        tiff.AddRange([.. make, .. model, .. time]);
        Add16(tiff, 2);
        Add16(tiff, 1);
        Add16(tiff, 2);
        Add32(tiff, 2);
        tiff.AddRange("N\0\0\0"u8);
        Entry(tiff, 2, 5, 3, gps + 2 + (12 * 2) + 4);
        Add32(tiff, 0);
        foreach (int part in new[] { 51, 1, 28, 1, 38, 1 })
        {
            Add32(tiff, part);
        }

        byte[] block = [.. "Exif\0\0"u8, .. tiff];
        var marker = new List<byte> { 0xFF, 0xE1 };
        Add16(marker, block.Length + 2);
        return [.. jpeg[..2], .. marker, .. block, .. jpeg[2..]];
    }

    private static void Entry(List<byte> to, int tag, int type, int count, int value)
    {
        Add16(to, tag);
        Add16(to, type);
        Add32(to, count);
        Add32(to, value);
    }

    private static void Add16(List<byte> to, int value)
    {
        Span<byte> bytes = stackalloc byte[2];
        BinaryPrimitives.WriteUInt16BigEndian(bytes, (ushort)value);
        to.AddRange(bytes);
    }

    private static void Add32(List<byte> to, int value)
    {
        Span<byte> bytes = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(bytes, value);
        to.AddRange(bytes);
    }

    private static byte[] Ascii(string text) => [.. Encoding.ASCII.GetBytes(text), 0];
}
