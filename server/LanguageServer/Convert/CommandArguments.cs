using System.Text.Json;

namespace HealthNotes.LanguageServer.Convert;

/// <summary>From the arguments of a command, which can be anything, to the texts that ours take.</summary>
internal static class CommandArguments
{
    /// <summary>The argument, or null when it is not there or no text.</summary>
    public static string? Text(JsonElement[]? arguments, int index) =>
        arguments?.Length > index && arguments[index].ValueKind == JsonValueKind.String ? arguments[index].GetString() : null;
}
