using System.Diagnostics.CodeAnalysis;
using HealthNotes.LanguageServer.Protocol;
using StreamJsonRpc;

namespace HealthNotes.LanguageServer.Host;

/// <summary>Messages as JSON, by the tables that the compiler made.</summary>
internal static class ProtocolFormatter
{
    /// <summary>One for each connection.</summary>
    [UnconditionalSuppressMessage("Trimming", "IL2026", Justification = "Every type that is read or written is in ProtocolJson.")]
    [UnconditionalSuppressMessage("AOT", "IL3050", Justification = "Every type that is read or written is in ProtocolJson.")]
    public static SystemTextJsonFormatter Create() => new() { JsonSerializerOptions = ProtocolJson.Default.Options };
}
