using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Export.Fhir;

/// <summary>A note made of a bundle.</summary>
/// <param name="Text">The note.</param>
/// <param name="IsWhole">True when the bundle held the note itself.</param>
/// <param name="Left">How many resources have no line in it.</param>
public sealed record ImportedNote(string Text, bool IsWhole, int Left);

/// <summary>
/// Makes a note of a FHIR R4 bundle. A bundle that was exported here holds the note, which comes back as it was. Of any other the
/// facts about the pet and the common measures become lines; what has no line is counted, not guessed.
/// </summary>
public static class FhirImport
{
    /// <summary>How a UCUM unit is written in a note.</summary>
    private static readonly Dictionary<string, string> Units = new()
    {
        ["kg"] = "kg",
        ["g"] = "g",
        ["[lb_av]"] = "lb",
        ["/min"] = "",
        ["{beats}/min"] = "",
        ["{breaths}/min"] = "",
        ["Cel"] = "C",
        ["[degF]"] = "F",
        ["mmol/L"] = "mmol/L",
        ["mm[Hg]"] = "",
        ["mg"] = "mg",
        ["mL"] = "mL",
    };

    private static readonly Dictionary<string, string> Words = FhirBundle.Codes.Where(code => code.Key != "bp-diastolic").ToDictionary(code => code.Value, code => code.Key == "bp-systolic" ? "bp" : code.Key);

    /// <summary>The note of a bundle.</summary>
    /// <exception cref="FormatException">It is not a bundle with a patient; the message says what is missing.</exception>
    public static ImportedNote Of(JsonNode? json)
    {
        if (json is not JsonObject bundle || Text(bundle["resourceType"]) != "Bundle")
        {
            throw new FormatException("it is not a FHIR bundle");
        }

        JsonObject[] resources = [.. Items(bundle["entry"]).Select(entry => entry["resource"]).OfType<JsonObject>()];
        if (resources.Select(NoteOf).FirstOrDefault(note => note is not null) is { } whole)
        {
            return new ImportedNote(whole, true, 0);
        }

        JsonObject[] patients = [.. resources.Where(resource => Text(resource["resourceType"]) == "Patient")];
        if (patients is not [var patient])
        {
            throw new FormatException($"it holds {patients.Length} patients; a note is about one pet");
        }

        var note = new StringBuilder();
        int left = 0;
        note.AppendJoin('\n', Opening(patient).Concat(Lines(resources, FactOf, ref left)).Append(""));
        foreach (IGrouping<string, JsonObject> day in resources.Where(resource => DayOf(resource) is not null).GroupBy(resource => DayOf(resource)!).OrderBy(day => day.Key, StringComparer.Ordinal))
        {
            string[] lines = [.. Lines(day, EventOf, ref left)];
            note.Append(lines.Length == 0 ? "" : $"\n{day.Key} log\n  {string.Join("\n  ", lines)}\n");
        }

        left += resources.Count(resource => DayOf(resource) is null && Text(resource["resourceType"]) is not ("Patient" or "Condition" or "AllergyIntolerance" or "Provenance"));
        return new ImportedNote(note.ToString(), false, left);
    }

    private static string? NoteOf(JsonObject resource)
    {
        if (Text(resource["resourceType"]) != "DocumentReference" || Items(resource["content"]).Select(content => content["attachment"]).OfType<JsonObject>().FirstOrDefault() is not { } attachment
            || Text(attachment["contentType"]) != "text/plain" || Text(attachment["title"])?.EndsWith(".hnote", StringComparison.Ordinal) != true)
        {
            return null;
        }

        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(Convert.FromBase64String(Text(attachment["data"]) ?? ""));
        }
        catch (Exception problem) when (problem is FormatException or DecoderFallbackException)
        {
            throw new FormatException("the note in it can't be decoded");
        }
    }

    private static IEnumerable<string> Opening(JsonObject patient)
    {
        Dictionary<string, JsonNode?> animal = Items(patient["extension"]).SelectMany(extension => Items(extension["extension"])).Where(part => Text(part["url"]) is not null)
            .GroupBy(part => Text(part["url"])!).ToDictionary(part => part.Key, part => part.First()["valueCodeableConcept"]);
        string? species = CodeOf(animal.GetValueOrDefault("species")) switch { "9615" or "canislf" => "dog", "9685" or "feliscatus" => "cat", _ => null };
        string? neutered = CodeOf(animal.GetValueOrDefault("genderStatus")) switch { "neutered" => " neutered", "intact" => " entire", _ => "" };
        string? sex = Text(patient["gender"]) is "male" or "female" ? Text(patient["gender"]) + neutered : null;
        string? name = Items(patient["name"]).Select(part => Text(part["text"]) ?? string.Join(' ', Items(part["given"], Text))).FirstOrDefault();
        return new (string Word, string? Value)[]
        {
            ("pet", name), ("species", species), ("breed", Text(animal.GetValueOrDefault("breed")?["text"])), ("sex", sex), ("born", Text(patient["birthDate"])),
            ("chip", Items(patient["identifier"]).Select(part => Text(part["value"])).FirstOrDefault()),
        }.Where(fact => fact.Value is { Length: > 0 }).Select(fact => $"{fact.Word} {OneLine(fact.Value!)}").Where(line => IsRead(line, opening: true));
    }

    private static string[] Lines(IEnumerable<JsonObject> resources, Func<JsonObject, (bool Tried, string? Line)> of, ref int left)
    {
        (bool Tried, string? Line)[] lines = [.. resources.Select(of)];
        left += lines.Count(line => line is { Tried: true, Line: null });
        return [.. lines.Select(line => line.Line).OfType<string>()];
    }

    private static (bool, string?) FactOf(JsonObject resource)
    {
        string? word = Text(resource["resourceType"]) switch { "Condition" => "known", "AllergyIntolerance" => "allergy", _ => null };
        string line = $"{word} {OneLine(Text(resource["code"]?["text"]) ?? "")}";
        return (word is not null, word is not null && IsRead(line, opening: true) ? line : null);
    }

    private static (bool, string?) EventOf(JsonObject resource)
    {
        string? line = Text(resource["resourceType"]) switch
        {
            "Observation" when CodeOf(resource["code"]) is { } code && Words.TryGetValue(code, out string? word) && QuantityOf(resource["valueQuantity"]) is { } value => $"{word} {value}",
            "MedicationAdministration" when Text(resource["status"]) == "completed" && Text(resource["medicationCodeableConcept"]?["text"]) is { } medicine => $"gave {OneLine(medicine)} {QuantityOf(resource["dosage"]?["dose"])}".TrimEnd(),
            _ => null,
        };
        return (Text(resource["resourceType"]) is not ("Condition" or "AllergyIntolerance"), line is not null && IsRead(line, opening: false) ? line : null);
    }

    private static string? QuantityOf(JsonNode? quantity)
    {
        string? unit = Text(quantity?["code"]) is { } code ? Units.GetValueOrDefault(code) : Text(quantity?["unit"]) is { } written ? " " + written : null;
        return quantity?["value"] is JsonValue value && value.TryGetValue(out decimal number) && unit is not null
            ? (Text(quantity["comparator"]) is "<" or ">" ? Text(quantity["comparator"]) : "") + number.ToString(CultureInfo.InvariantCulture) + OneLine(unit) : null;
    }

    private static string? DayOf(JsonObject resource) =>
        (Text(resource["effectiveDateTime"]) ?? Text(resource["effectivePeriod"]?["start"]) ?? Text(resource["occurrenceDateTime"]) ?? Text(resource["recordedDate"])) is { Length: >= 10 } moment
        && DateOnly.TryParseExact(moment[..10], "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? $"{day:yyyy-MM-dd}" : null;

    /// <summary>True for a line that a note reads whole: nothing is imported that would then be a mistake in the note.</summary>
    private static bool IsRead(string line, bool opening) => !Note.Read(opening ? line + "\n" : $"pet X\n2026-01-01 log\n  {line}\n").Problems.Any();

    private static string OneLine(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Replace('#', ' ');

    private static string? CodeOf(JsonNode? concept) => concept is null ? null : Items(concept["coding"]).Select(coding => Text(coding["code"])).FirstOrDefault(code => code is not null);

    private static string? Text(JsonNode? node) => node is JsonValue value && value.TryGetValue(out string? text) ? text : null;

    private static IEnumerable<JsonObject> Items(JsonNode? node) => node is JsonArray all ? all.OfType<JsonObject>() : [];

    private static IEnumerable<string> Items(JsonNode? node, Func<JsonNode?, string?> of) => node is JsonArray all ? all.Select(of).OfType<string>() : [];
}
