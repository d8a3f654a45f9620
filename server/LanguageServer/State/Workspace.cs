using System.Collections.Immutable;
using HealthNotes.Features.Documents;

namespace HealthNotes.LanguageServer.State;

/// <summary>Everything that is known at one moment. Immutable: a request works to its end on the one it took first.</summary>
/// <param name="Today">The day the notes are read on.</param>
internal sealed record Workspace(DateOnly Today)
{
    public ClientProfile Client { get; init; } = ClientProfile.Plain;

    public FeatureSettings Settings { get; init; } = FeatureSettings.Default;

    /// <summary>The documents that the client has open, by the name it gave them.</summary>
    public ImmutableDictionary<string, OpenNote> Open { get; init; } = ImmutableDictionary<string, OpenNote>.Empty;

    /// <summary>The paths of the folders that the client works in.</summary>
    public ImmutableArray<string> Folders { get; init; } = [];

    /// <summary>What is known of the notes in those folders, open or not, by their names.</summary>
    public ImmutableDictionary<string, FolderNote> Notes { get; init; } = ImmutableDictionary<string, FolderNote>.Empty;

    /// <summary>The document, or null when the client has not opened it, or its text is not known any more.</summary>
    public Document? Find(string uri) => Open.GetValueOrDefault(uri) is { IsLost: false } note ? note.Document : null;

    /// <summary>The same, read on another day.</summary>
    public Workspace On(DateOnly today) => this with
    {
        Today = today,
        Open = Open.ToImmutableDictionary(pair => pair.Key, pair => pair.Value with { Document = pair.Value.Document.On(today) }),
    };
}

/// <summary>A document that the client has open.</summary>
/// <param name="Document">Its last version.</param>
/// <param name="Caret">Where the last edit ended, as long as it has not been saved since; null when nothing is being typed.</param>
internal sealed record OpenNote(Document Document, Place? Caret)
{
    /// <summary>True after a change that could not be read: the client's text is another one, until it is sent whole again.</summary>
    public bool IsLost { get; init; }
}
