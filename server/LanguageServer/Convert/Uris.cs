namespace HealthNotes.LanguageServer.Convert;

/// <summary>Between the names of documents and paths on disk.</summary>
internal static class Uris
{
    /// <summary>The path that a name stands for, or null when it is not a file (an unsaved document, a remote one).</summary>
    public static string? PathOf(string? uri)
    {
        if (!Uri.TryCreate(uri, UriKind.Absolute, out Uri? parsed) || !parsed.IsFile)
        {
            return null;
        }

        string path = parsed.LocalPath;
        return path.Length > 2 && path[0] == '/' && char.IsAsciiLetter(path[1]) && path[2] == ':' ? path[1..] : path;
    }

    /// <summary>The name of a file. A percent sign in a path is one, and no escape of a name.</summary>
    public static string Of(string path)
    {
        string full = Path.GetFullPath(path).Replace("%", "%25", StringComparison.Ordinal).Replace("#", "%23", StringComparison.Ordinal).Replace("?", "%3F", StringComparison.Ordinal);
        return new Uri(full.StartsWith('/') ? "file://" + full : full).AbsoluteUri;
    }
}
