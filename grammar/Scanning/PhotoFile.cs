namespace HealthNotes.Grammar.Scanning;

/// <summary>Finds where a picture's file name ends: names may hold blanks, and a caption may follow.</summary>
internal static class PhotoFile
{
    private static readonly string[] Endings = [".jpg", ".jpeg", ".png", ".webp", ".heic", ".gif", ".tif", ".tiff", ".bmp", ".mp4", ".mov", ".pdf"];

    /// <summary>True for a name that ends like a picture's.</summary>
    public static bool IsPicture(string name) => Endings.Any(ending => name.EndsWith(ending, StringComparison.OrdinalIgnoreCase));

    /// <summary>The length of the name: up to the first word that ends like a picture, or the first word.</summary>
    public static int Length(string text)
    {
        int first = -1;
        for (int i = 0; i <= text.Length; i++)
        {
            if (i < text.Length && !Scanners.IsBlank(text[i]))
            {
                continue;
            }

            first = first < 0 ? i : first;
            if (Endings.Any(ending => text.AsSpan(0, i).EndsWith(ending, StringComparison.OrdinalIgnoreCase)))
            {
                return i;
            }
        }

        return first;
    }
}
