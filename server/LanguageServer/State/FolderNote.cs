using HealthNotes.LanguageServer.Protocol;

namespace HealthNotes.LanguageServer.State;

/// <summary>
/// What is kept of a note that lies in one of the client's folders and is not open. Its tree is let go of: a folder may hold
/// many, and nobody types in them.
/// </summary>
/// <param name="Uri">Its name.</param>
/// <param name="Diagnostics">Its diagnostics.</param>
internal sealed record FolderNote(string Uri, Diagnostic[] Diagnostics);
