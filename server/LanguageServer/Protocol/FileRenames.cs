namespace HealthNotes.LanguageServer.Protocol;

/// <summary>3.17, Workspace Features, WillRenameFiles Request, server capability.</summary>
internal sealed record FileOperationOptions(FileOperationRegistrationOptions WillRename);

/// <summary>3.17, Workspace Features, WillCreateFiles Request, FileOperationRegistrationOptions.</summary>
internal sealed record FileOperationRegistrationOptions(FileOperationFilter[] Filters);

/// <summary>3.17, Workspace Features, WillCreateFiles Request, FileOperationFilter.</summary>
internal sealed record FileOperationFilter(FileOperationPattern Pattern, string Scheme = "file");

/// <summary>3.17, Workspace Features, WillCreateFiles Request, FileOperationPattern.</summary>
internal sealed record FileOperationPattern(string Glob);

/// <summary>3.17, Workspace Features, WillRenameFiles Request.</summary>
internal sealed record RenameFilesParams(FileRename[] Files);

/// <summary>3.17, Workspace Features, WillRenameFiles Request, FileRename: a file or a folder.</summary>
internal sealed record FileRename(string OldUri, string NewUri);
