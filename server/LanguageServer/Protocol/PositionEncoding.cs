namespace HealthNotes.LanguageServer.Protocol;

/// <summary>In which units a client counts characters.</summary>
internal enum PositionEncoding
{
    Utf16,
    Utf8,
    Utf32,
}

/// <summary>How the two sides agree on one.</summary>
internal static class PositionEncodings
{
    /// <summary>The encoding to use: our own where the client has it, since it costs nothing.</summary>
    public static PositionEncoding Negotiate(string[]? offered)
    {
        if (offered is null || offered.Length == 0 || offered.Contains("utf-16"))
        {
            return PositionEncoding.Utf16;
        }

        return offered.Contains("utf-8") ? PositionEncoding.Utf8 : offered.Contains("utf-32") ? PositionEncoding.Utf32 : PositionEncoding.Utf16;
    }

    /// <summary>The protocol's name of an encoding.</summary>
    public static string NameOf(PositionEncoding encoding) => encoding switch
    {
        PositionEncoding.Utf8 => "utf-8",
        PositionEncoding.Utf32 => "utf-32",
        _ => "utf-16",
    };
}
