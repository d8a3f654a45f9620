namespace HealthNotes.Grammar.Notes;

/// <summary>Where a picture's name leads to.</summary>
/// <param name="Relative">The path from the note's folder; null when the name leads elsewhere.</param>
/// <param name="Refusal">Why it is not followed.</param>
public sealed record PhotoPath(string? Relative, string? Refusal)
{
    /// <summary>Reads a name as written. Only files in the note's folder, or in folders below it, are followed.</summary>
    public static PhotoPath Of(string written)
    {
        string path = written.Replace('\\', '/');
        if (path.Any(char.IsControl))
        {
            return Refused(written, "has a character that no file name can have");
        }

        if (path.StartsWith('/') || path.StartsWith('~') || path.Contains(':', StringComparison.Ordinal))
        {
            return Refused(written, "is an address of its own, not a file beside the note; it is not followed");
        }

        var parts = new List<string>();
        foreach (string part in path.Split('/', StringSplitOptions.RemoveEmptyEntries))
        {
            if (part == "..")
            {
                if (parts.Count == 0)
                {
                    return Refused(written, "leads out of the note's folder; it is not followed");
                }

                parts.RemoveAt(parts.Count - 1);
            }
            else if (part != ".")
            {
                parts.Add(part);
            }
        }

        return parts.Count == 0 ? Refused(written, "isn't a file name") : new PhotoPath(string.Join('/', parts), null);
    }

    private static PhotoPath Refused(string written, string why) => new(null, $"photo {written} {why}");
}
