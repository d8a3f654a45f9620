using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Handlers;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.Rpc;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Session;

/// <summary>
/// Reads the notes in the client's folders, on the pool and one file at a time. There is one scan at a time; a newer one
/// ends the one before.
/// </summary>
internal sealed class FolderScan(WorkspaceState state, Client client, Connection connection, ServerLog log)
{
    /// <summary>The most files that are read: more than a household has, or a clinic's patients of one day.</summary>
    public const int MostFiles = 2_000;

    private const int MostFolders = 20_000;
    private const int FilesWithoutProgress = 20;
    private const string Token = "hnote/folders";
    private int number;

    /// <summary>Reads all folders anew.</summary>
    public void Start()
    {
        int mine = Interlocked.Increment(ref number);
        _ = Task.Run(() => ScanAsync(() => Volatile.Read(ref number) == mine));
    }

    /// <summary>Reads some files again, or lets go of those that are gone.</summary>
    public void Look(string[] uris) => _ = Task.Run(async () =>
    {
        foreach (string uri in uris)
        {
            Put(uri, Read(uri));
        }

        await client.RefreshAsync().ConfigureAwait(false);
    });

    /// <summary>Ends a scan that runs.</summary>
    public void Stop() => Interlocked.Increment(ref number);

    private async Task ScanAsync(Func<bool> goesOn)
    {
        bool shown = false;
        try
        {
            string[] files = [.. NoteFiles.In(state.Current.Folders, MostFolders, goesOn).Take(MostFiles)];
            log.Note($"{files.Length} notes in the client's folders");
            state.Swap(current => current with { Notes = current.Notes.RemoveRange(current.Notes.Keys.Except(files.Select(Uris.Of)).ToArray()) });
            shown = files.Length > FilesWithoutProgress && await client.BeginProgressAsync(Token, "Reading the notes in your folders").ConfigureAwait(false);
            for (int i = 0; i < files.Length && goesOn(); i++)
            {
                string uri = Uris.Of(files[i]);
                Put(uri, Read(uri));
                if (shown && i % FilesWithoutProgress == 0)
                {
                    client.Progress(Token, new WorkDoneProgress("report", Message: $"{i} of {files.Length}", Percentage: i * 100 / files.Length));
                }
            }

            if (files.Length > 0)
            {
                await client.RefreshAsync().ConfigureAwait(false);
            }
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            connection.Report("reading the folders", fault);
        }
        finally
        {
            if (shown)
            {
                client.Progress(Token, new WorkDoneProgress("end"));
            }
        }
    }

    private void Put(string uri, FolderNote? note) => state.Swap(current =>
        current with { Notes = note is null ? current.Notes.Remove(uri) : current.Notes.SetItem(uri, note) });

    private FolderNote? Read(string uri) => NoteFiles.Read(uri) is { } text ? FolderNoteHandler.Read(uri, text, state.Current) : null;
}
