using System.Text.Json;
using HealthNotes.Features.Documents;

namespace HealthNotes.LanguageServer.Convert;

/// <summary>From the client's settings (section <c>hnote</c>) to ours. What is missing or of another type keeps its value.</summary>
internal static class ClientSettings
{
    /// <summary>The section's name.</summary>
    public const string Section = "hnote";

    /// <summary>
    /// The settings in <paramref name="given"/>: the section itself, or something with the section in it.
    /// </summary>
    public static FeatureSettings Of(JsonElement? given, FeatureSettings before)
    {
        if (given is not { ValueKind: JsonValueKind.Object } settings)
        {
            return before;
        }

        if (settings.TryGetProperty(Section, out JsonElement section))
        {
            return Of(section, before);
        }

        return before with
        {
            Units = UnitsOf(Text(settings, "units")) ?? before.Units,
            PastFindings = Switch(settings, "pastFindings") ?? before.PastFindings,
            Hints = settings.TryGetProperty("hints", out JsonElement hints) ? HintsOf(hints, before.Hints) : before.Hints,
        };
    }

    /// <summary>The units of a setting's name, or null.</summary>
    public static UnitsShown? UnitsOf(string? name) => name switch
    {
        "metric" => UnitsShown.Metric,
        "us" => UnitsShown.Us,
        "asNoted" => UnitsShown.AsNoted,
        _ => null,
    };

    /// <summary>A setting's name of the units.</summary>
    public static string NameOf(UnitsShown units) => units switch
    {
        UnitsShown.Metric => "metric",
        UnitsShown.Us => "us",
        _ => "asNoted",
    };

    private static HintSettings HintsOf(JsonElement hints, HintSettings before) => hints.ValueKind switch
    {
        JsonValueKind.True => new HintSettings(),
        JsonValueKind.False => new HintSettings(false, false, false, false, false, false, false),
        JsonValueKind.Object => new HintSettings(
            Switch(hints, "rates") ?? before.Rates,
            Switch(hints, "sizes") ?? before.Sizes,
            Switch(hints, "conversions") ?? before.Conversions,
            Switch(hints, "differences") ?? before.Differences,
            Switch(hints, "doses") ?? before.Doses,
            Switch(hints, "days") ?? before.Days,
            Switch(hints, "readings") ?? before.Readings),
        _ => before,
    };

    private static string? Text(JsonElement settings, string name) =>
        settings.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;

    private static bool? Switch(JsonElement settings, string name) =>
        settings.TryGetProperty(name, out JsonElement value) && value.ValueKind is JsonValueKind.True or JsonValueKind.False ? value.GetBoolean() : null;
}
