namespace HealthNotes.Protocol.Tests.Support;

/// <summary>The server answered with an error.</summary>
internal sealed class LspError(int code, string message) : Exception($"{code}: {message}")
{
    public const int ParseError = -32700;
    public const int InvalidRequest = -32600;
    public const int MethodNotFound = -32601;
    public const int InvalidParams = -32602;
    public const int ServerNotInitialized = -32002;
    public const int RequestCancelled = -32800;
    public const int ContentModified = -32801;

    public int Code { get; } = code;

    public string Words { get; } = message;
}
