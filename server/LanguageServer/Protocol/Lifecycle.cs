using System.Text.Json;

namespace HealthNotes.LanguageServer.Protocol;

/// <summary>3.17, Lifecycle Messages, Initialize Request, InitializeParams.</summary>
internal sealed record InitializeParams(
    int? ProcessId = null,
    string? RootPath = null,
    string? RootUri = null,
    JsonElement? InitializationOptions = null,
    ClientCapabilities? Capabilities = null,
    string? Trace = null,
    WorkspaceFolder[]? WorkspaceFolders = null);

/// <summary>3.17, Lifecycle Messages, Initialize Request, InitializeResult.</summary>
internal sealed record InitializeResult(ServerCapabilities Capabilities, ServerInfo ServerInfo);

/// <summary>3.17, Lifecycle Messages, Initialize Request, InitializeResult.serverInfo.</summary>
internal sealed record ServerInfo(string Name, string Version);

/// <summary>3.17, Lifecycle Messages, Initialized Notification; it carries nothing.</summary>
internal sealed record InitializedParams;

/// <summary>3.17, Lifecycle Messages, SetTrace Notification.</summary>
internal sealed record SetTraceParams(string? Value = null);

/// <summary>3.17, Lifecycle Messages, LogTrace Notification.</summary>
internal sealed record LogTraceParams(string Message, string? Verbose = null);

/// <summary>3.17, Lifecycle Messages, Register Capability, RegistrationParams.</summary>
internal sealed record RegistrationParams(Registration[] Registrations);

/// <summary>3.17, Lifecycle Messages, Register Capability, Registration; its options are those of watched files, the only ones used.</summary>
internal sealed record Registration(string Id, string Method, DidChangeWatchedFilesRegistrationOptions? RegisterOptions = null);

/// <summary>3.17, Workspace Features, DidChangeWatchedFiles Notification, registration options.</summary>
internal sealed record DidChangeWatchedFilesRegistrationOptions(FileSystemWatcher[] Watchers);

/// <summary>3.17, Workspace Features, DidChangeWatchedFiles Notification, FileSystemWatcher.</summary>
internal sealed record FileSystemWatcher(string GlobPattern);
