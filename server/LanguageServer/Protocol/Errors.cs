namespace HealthNotes.LanguageServer.Protocol;

/// <summary>A request that is refused; the client gets the code and the message, which says why in plain words.</summary>
/// <param name="code">One of <see cref="ErrorCodes"/>.</param>
/// <param name="why">What the user, or the author of the client, may read.</param>
internal sealed class RefusedRequestException(int code, string why) : Exception(why)
{
    public int Code { get; } = code;
}

/// <summary>3.17, Base Protocol, ErrorCodes.</summary>
internal static class ErrorCodes
{
    public const int ParseError = -32700;
    public const int InvalidRequest = -32600;
    public const int MethodNotFound = -32601;
    public const int InvalidParams = -32602;
    public const int InternalError = -32603;
    public const int ServerNotInitialized = -32002;
    public const int RequestCancelled = -32800;
    public const int ContentModified = -32801;
    public const int RequestFailed = -32803;
}
