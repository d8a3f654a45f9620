namespace HealthNotes.LanguageServer.Session;

/// <summary>How <c>hnote lsp</c> was started.</summary>
public sealed record ServerOptions
{
    /// <summary>The named pipe or socket file to speak over, which the client made; standard input and output where it is null.</summary>
    public string? Pipe { get; init; }

    /// <summary>A file to which lines about what the server does are added.</summary>
    public string? Log { get; init; }

    /// <summary>The process to end with; <c>initialize</c> may name one too.</summary>
    public int? ClientProcessId { get; init; }

    /// <summary>The day to read notes on, for tests and for looking back; the clock's day where it is null.</summary>
    public DateOnly? Today { get; init; }

    /// <summary>The version to answer with.</summary>
    public string Version { get; init; } = "";
}
