using HealthNotes.Features.Documents;
using HealthNotes.Features.Symbols;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>3.17, Language Features, Document Symbols, Folding Range and Selection Range Requests; Workspace Features, Workspace Symbols Request.</summary>
internal static class SymbolHandler
{
    /// <summary>The outline: a tree, or a list for clients without one.</summary>
    public static DocumentSymbol[] Outline(Workspace workspace, TextDocumentParams parameters, CancellationToken token)
    {
        if (workspace.Find(parameters.TextDocument.Uri) is not { } document)
        {
            return [];
        }

        IEnumerable<OutlineSymbol> symbols = SymbolFeature.Outline(document);
        PositionEncoding encoding = workspace.Client.Encoding;
        return workspace.Client.SymbolTree
            ? [.. symbols.Select(symbol => Symbols.Tree(document, symbol, encoding))]
            : [.. symbols.SelectMany(symbol => Symbols.List(document, symbol, null, encoding))];
    }

    /// <summary>What goes by such a name in the open notes and in <paramref name="others"/>, those of the folders that are not open.</summary>
    public static SymbolInformation[] Find(Workspace workspace, WorkspaceSymbolParams parameters, IEnumerable<Document> others, CancellationToken token)
    {
        var documents = new Dictionary<string, Document>();
        foreach (Document document in workspace.Open.Values.Where(note => !note.IsLost).Select(note => note.Document).Concat(others))
        {
            token.ThrowIfCancellationRequested();
            documents[document.Uri] = document;
        }

        return [.. SymbolFeature.InWorkspace(documents.Values, parameters.Query ?? "").Select(found => new SymbolInformation(
            found.Name,
            Symbols.KindOf(found.Sort),
            new Location(found.Uri, Positions.Of(documents[found.Uri], found.Range, workspace.Client.Encoding)),
            found.Container))];
    }

    /// <summary>What can be folded; no more than the client wants.</summary>
    public static FoldingRange[] Folding(Workspace workspace, TextDocumentParams parameters, CancellationToken token) =>
        workspace.Find(parameters.TextDocument.Uri) is { } document
            ? [.. FoldingFeature.In(document).Take(workspace.Client.FoldingLimit).Select(folded =>
                new FoldingRange(folded.FirstLine, folded.LastLine) { Kind = folded.IsComment ? FoldingRangeKind.Comment : FoldingRangeKind.Region })]
            : [];

    /// <summary>What a selection grows by, at each of the positions.</summary>
    public static SelectionRange[] Selections(Workspace workspace, SelectionRangeParams parameters, CancellationToken token) =>
        workspace.Find(parameters.TextDocument.Uri) is { } document
            ? [.. parameters.Positions.Select(position => Symbols.Selection(document, position, SelectionFeature.Around(document, Places.Of(document, position, workspace.Client.Encoding)), workspace.Client.Encoding))]
            : [];
}
