namespace HealthNotes.LanguageServer.Protocol;

/// <summary>3.17, Window Features, LogMessage and ShowMessage Notification.</summary>
internal sealed record MessageParams(MessageType Type, string Message);

/// <summary>3.17, Window Features, MessageType.</summary>
internal enum MessageType
{
    Error = 1,
    Warning = 2,
    Info = 3,
    Log = 4,
}

/// <summary>3.17, Window Features, Show Document Request.</summary>
internal sealed record ShowDocumentParams(string Uri, bool? External = null, bool? TakeFocus = null, Range? Selection = null);

/// <summary>3.17, Window Features, Show Document Request, ShowDocumentResult.</summary>
internal sealed record ShowDocumentResult(bool Success = false);

/// <summary>3.17, Window Features, Create Work Done Progress; tokens of our own are strings.</summary>
internal sealed record WorkDoneProgressCreateParams(string Token);

/// <summary>3.17, Window Features, Cancel a Work Done Progress; a token that is not a string is not ours.</summary>
internal sealed record WorkDoneProgressCancelParams(System.Text.Json.JsonElement? Token = null);

/// <summary>3.17, Base Protocol, Progress Support, with the value of Work Done Progress.</summary>
internal sealed record ProgressParams(string Token, WorkDoneProgress Value);

/// <summary>3.17, Basic JSON Structures, Work Done Progress: begin, report and end in one.</summary>
internal sealed record WorkDoneProgress(string Kind, string? Title = null, string? Message = null, int? Percentage = null, bool? Cancellable = null);
