using System.Collections.Immutable;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>3.17, Lifecycle Messages, Initialize Request.</summary>
internal static class InitializeHandler
{
    /// <summary>The workspace as the client describes it; whatever it leaves out is not there.</summary>
    public static Workspace Apply(Workspace workspace, InitializeParams parameters) => workspace with
    {
        Client = ClientProfile.Of(parameters.Capabilities),
        Settings = ClientSettings.Of(parameters.InitializationOptions, workspace.Settings),
        Folders = FoldersOf(parameters),
    };

    /// <summary>What the server can do for this client.</summary>
    public static InitializeResult Answer(ClientProfile client, string version) => new(
        new ServerCapabilities(Positions.NameOf(client.Encoding), new TextDocumentSyncOptions(OpenClose: true, TextDocumentSyncKind.Incremental, new SaveOptions(IncludeText: false)))
        {
            DiagnosticProvider = client.PullsDiagnostics ? new DiagnosticOptions(Findings.Source, InterFileDependencies: false, WorkspaceDiagnostics: false) : null,
        },
        new ServerInfo("hnote", version));

    private static ImmutableArray<string> FoldersOf(InitializeParams parameters)
    {
        IEnumerable<string?> folders = parameters.WorkspaceFolders is { } several ? several.Select(folder => Uris.PathOf(folder.Uri))
            : [parameters.RootUri is { } uri ? Uris.PathOf(uri) : parameters.RootPath];
        return [.. folders.OfType<string>().Distinct()];
    }
}
