using System.Text.Json;

namespace HealthNotes.LanguageServer.Protocol;

/// <summary>3.17, Workspace Features, Workspace folders request, WorkspaceFolder.</summary>
internal sealed record WorkspaceFolder(string Uri, string? Name = null);

/// <summary>3.17, Workspace Features, DidChangeWorkspaceFolders Notification.</summary>
internal sealed record DidChangeWorkspaceFoldersParams(WorkspaceFoldersChangeEvent Event);

/// <summary>3.17, Workspace Features, DidChangeWorkspaceFolders Notification, WorkspaceFoldersChangeEvent.</summary>
internal sealed record WorkspaceFoldersChangeEvent(WorkspaceFolder[]? Added = null, WorkspaceFolder[]? Removed = null);

/// <summary>3.17, Workspace Features, DidChangeConfiguration Notification.</summary>
internal sealed record DidChangeConfigurationParams(JsonElement? Settings = null);

/// <summary>3.17, Workspace Features, Configuration Request.</summary>
internal sealed record ConfigurationParams(ConfigurationItem[] Items);

/// <summary>3.17, Workspace Features, Configuration Request, ConfigurationItem.</summary>
internal sealed record ConfigurationItem(string Section, string? ScopeUri = null);

/// <summary>3.17, Workspace Features, DidChangeWatchedFiles Notification.</summary>
internal sealed record DidChangeWatchedFilesParams(FileEvent[] Changes);

/// <summary>3.17, Workspace Features, DidChangeWatchedFiles Notification, FileEvent.</summary>
internal sealed record FileEvent(string Uri, FileChangeType Type = FileChangeType.Changed);

/// <summary>3.17, Workspace Features, DidChangeWatchedFiles Notification, FileChangeType.</summary>
internal enum FileChangeType
{
    Created = 1,
    Changed = 2,
    Deleted = 3,
}

/// <summary>3.17, Workspace Features, Execute a command.</summary>
internal sealed record ExecuteCommandParams(string Command, JsonElement[]? Arguments = null);

/// <summary>3.17, Workspace Features, Applies a WorkspaceEdit.</summary>
internal sealed record ApplyWorkspaceEditParams(string? Label, WorkspaceEdit Edit);

/// <summary>3.17, Workspace Features, Applies a WorkspaceEdit, ApplyWorkspaceEditResult.</summary>
internal sealed record ApplyWorkspaceEditResult(bool Applied = false, string? FailureReason = null);
