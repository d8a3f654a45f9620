using HealthNotes.Features.Tokens;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>3.17, Language Features, Semantic Tokens.</summary>
internal sealed class TokenHandler(TokenCache cache)
{
    /// <summary>The kinds of token there are.</summary>
    public static SemanticTokensOptions Options { get; } =
        new(new SemanticTokensLegend([.. TokenLegend.Types], [.. TokenLegend.Modifiers]), Range: true, new SemanticTokensFullOptions(Delta: true));

    /// <summary>All tokens.</summary>
    public SemanticTokens? Full(Workspace workspace, TextDocumentParams parameters, CancellationToken token)
    {
        if (workspace.Find(parameters.TextDocument.Uri) is not { } document)
        {
            return null;
        }

        int[] data = Tokens.Encode(document, TokenFeature.Full(document), workspace.Client.Encoding);
        return new SemanticTokens(cache.Keep(document.Uri, data), data);
    }

    /// <summary>What has changed since the tokens that the client has; all of them when it has none that we know.</summary>
    public SemanticTokens? Delta(Workspace workspace, SemanticTokensDeltaParams parameters, CancellationToken token)
    {
        if (workspace.Find(parameters.TextDocument.Uri) is not { } document)
        {
            return null;
        }

        int[] data = Tokens.Encode(document, TokenFeature.Full(document), workspace.Client.Encoding);
        int[]? before = cache.Find(document.Uri, parameters.PreviousResultId);
        string id = cache.Keep(document.Uri, data);
        return before is null ? new SemanticTokens(id, data)
            : TokenDelta.Between(before, data) is { } edit ? new SemanticTokens(id, Edits: [new SemanticTokensEdit(edit.Start, edit.DeleteCount, [.. edit.Data])])
            : new SemanticTokens(id, Edits: []);
    }

    /// <summary>Those of some lines.</summary>
    public static SemanticTokens? InRange(Workspace workspace, SemanticTokensRangeParams parameters, CancellationToken token) =>
        workspace.Find(parameters.TextDocument.Uri) is { } document
            ? new SemanticTokens(null, Tokens.Encode(document, TokenFeature.InRange(document, Places.Of(document, parameters.Range, workspace.Client.Encoding)), workspace.Client.Encoding))
            : null;
}
