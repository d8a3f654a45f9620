using System.Globalization;
using System.Text.Json;

namespace HealthNotes.LanguageServer.Convert;

/// <summary>From the arguments of a command, which can be anything, to the texts that ours take.</summary>
internal static class CommandArguments
{
    /// <summary>The argument, or null when it is not there or no text.</summary>
    public static string? Text(JsonElement[]? arguments, int index) =>
        arguments?.Length > index && arguments[index].ValueKind == JsonValueKind.String ? arguments[index].GetString() : null;

    /// <summary>The argument as a number, written either way; 0 when it is not there or no number.</summary>
    public static int Number(JsonElement[]? arguments, int index) =>
        arguments?.Length > index && arguments[index].ValueKind == JsonValueKind.Number && arguments[index].TryGetInt32(out int number) ? number
        : int.TryParse(Text(arguments, index), NumberStyles.None, CultureInfo.InvariantCulture, out int written) ? written : 0;
}
