using HealthNotes.Features.Documents;
using HealthNotes.Features.Links;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>3.17, Workspace Features, WillRenameFiles Request.</summary>
internal static class FileRenameHandler
{
    /// <summary>Files and folders of every name: a picture can be in any folder, and a note can move away from it.</summary>
    public static ServerCapabilities Declare(ServerCapabilities can) => can with
    {
        Workspace = can.Workspace with { FileOperations = new FileOperationOptions(new FileOperationRegistrationOptions([new FileOperationFilter(new FileOperationPattern("**/*"))])) },
    };

    /// <summary>The <c>photo</c> lines follow their pictures. A line whose picture would leave the note's folder stays as it is.</summary>
    /// <param name="workspace">The open notes.</param>
    /// <param name="parameters">What gets another name.</param>
    /// <param name="others">The notes of the folders that are not open.</param>
    /// <param name="token">Ends the request.</param>
    public static WorkspaceEdit? Follow(Workspace workspace, RenameFilesParams parameters, IEnumerable<Document> others, CancellationToken token)
    {
        (string From, string To)[] moves = [.. from file in parameters.Files
                                               let old = Uris.PathOf(file.OldUri)
                                               let now = Uris.PathOf(file.NewUri)
                                               where old is not null && now is not null
                                               select (old.TrimEnd('/'), now.TrimEnd('/'))];
        if (moves.Length == 0)
        {
            return null;
        }

        var edits = new List<NoteEdits>();
        foreach ((Document document, int? version) in workspace.Open.Values.Where(note => !note.IsLost).Select(note => (note.Document, (int?)note.Document.Version)).Concat(others.Select(note => (note, (int?)null))))
        {
            token.ThrowIfCancellationRequested();
            if (Uris.PathOf(document.Uri) is { } note && Path.GetDirectoryName(note) is { } folder && Path.GetDirectoryName(After(note, moves)) is { } folderAfter)
            {
                edits.Add(new NoteEdits(document, version, LinkFeature.Renamed(document, path => Inside(folderAfter, After(Path.GetFullPath(Path.Combine(folder, path)), moves)))));
            }
        }

        return edits.Exists(one => !one.Edits.IsEmpty) ? Edits.InWorkspace(edits.Where(one => !one.Edits.IsEmpty), workspace.Client) : null;
    }

    private static string After(string path, (string From, string To)[] moves) =>
        moves.FirstOrDefault(move => path == move.From || path.StartsWith(move.From + '/', StringComparison.Ordinal)) is { From: { } from, To: { } to } ? to + path[from.Length..] : path;

    /// <summary>The path from the folder; null where it leads out of it.</summary>
    private static string? Inside(string folder, string path) =>
        Path.GetRelativePath(folder, path).Replace('\\', '/') is var relative && relative != ".." && !relative.StartsWith("../", StringComparison.Ordinal) && !Path.IsPathRooted(relative) ? relative : null;
}
