namespace HealthNotes.LanguageServer.Protocol;

/// <summary>3.18, Workspace Features, Text Document Content Request, TextDocumentContentOptions.</summary>
internal sealed record TextDocumentContentOptions(string[] Schemes);

/// <summary>3.18, Workspace Features, Text Document Content Request.</summary>
internal sealed record TextDocumentContentParams(string Uri);

/// <summary>3.18, Workspace Features, Text Document Content Request, TextDocumentContentResult.</summary>
internal sealed record TextDocumentContentResult(string Text);

/// <summary>The names of the texts that only the server has. Names are a contract: links and editors hold them.</summary>
internal static class ContentUris
{
    /// <summary>What they start with.</summary>
    public const string Scheme = "hnote";

    /// <summary>The help page of a rule.</summary>
    public const string Rules = "/rules/";

    /// <summary>The visit page of an open note, whose own name follows behind <c>?</c>.</summary>
    public const string Page = "/page.md";

    /// <summary>What every one of them ends with: an editor knows the language by it.</summary>
    public const string Ending = ".md";

    /// <summary>The help page of a rule.</summary>
    public static string OfRule(string rule) => $"{Scheme}:{Rules}{rule}{Ending}";
}
