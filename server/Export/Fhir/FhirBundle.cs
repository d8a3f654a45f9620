using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using HealthNotes.Export.Tables;
using HealthNotes.Export.Writers;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Export.Fhir;

/// <summary>A document that goes with a bundle.</summary>
/// <param name="Name">Its file name.</param>
/// <param name="MediaType">Its media type.</param>
/// <param name="What">What it is, in plain words.</param>
/// <param name="Bytes">What it holds.</param>
public sealed record FhirDocument(string Name, string MediaType, string What, byte[] Bytes);

/// <summary>
/// One note as a FHIR R4 bundle (HL7 FHIR 4.0.1). It is made from the rows of the tables, so that pseudonyms and omitted text
/// hold here too. The same note and day give the same bundle; ids come from what a resource says, not from its line.
/// </summary>
public sealed class FhirBundle
{
    private const string Loinc = "http://loinc.org";
    private const string Ucum = "http://unitsofmeasure.org";
    private const string Terminology = "http://terminology.hl7.org/CodeSystem/";
    private const string Taxonomy = "https://www.ncbi.nlm.nih.gov/taxonomy";
    private const string NotVerified = "Reported by the owner in home notes. Not verified by a clinician.";
    private readonly ExportedNote note;
    private readonly List<JsonObject> resources = [];
    private readonly Dictionary<string, int> met = [];
    private readonly string patient;

    private FhirBundle(ExportedNote note)
    {
        this.note = note;
        patient = IdOf("Patient", "");
    }

    /// <summary>The LOINC codes by measure.</summary>
    internal static IReadOnlyDictionary<string, string> Codes { get; } = TsvTable.Load(typeof(FhirBundle).Assembly, "codes.tsv").Rows.ToDictionary(row => row["what"], row => row["loinc"]);

    /// <summary>The bundle of a note.</summary>
    /// <param name="note">The note.</param>
    /// <param name="documents">Its page and its text; none under pseudonyms.</param>
    public static JsonObject Of(ExportedNote note, IEnumerable<FhirDocument> documents)
    {
        ArgumentNullException.ThrowIfNull(note);
        var bundle = new FhirBundle(note);
        bundle.Patient();
        bundle.Readings();
        bundle.Signs();
        bundle.Care();
        bundle.Labs();
        bundle.Facts();
        bundle.Medicines();
        bundle.Acts();
        foreach (FhirDocument document in note.Pseudonyms is null ? documents : [])
        {
            bundle.Document(document);
        }

        bundle.Provenance();
        return new JsonObject
        {
            ["resourceType"] = "Bundle",
            ["id"] = bundle.IdOf("Bundle", ""),
            ["type"] = "collection",
            ["entry"] = new JsonArray([.. bundle.resources.Select(resource => new JsonObject { ["fullUrl"] = Urn((string)resource["id"]!), ["resource"] = resource })]),
        };
    }

    private void Patient()
    {
        Dictionary<string, object?> pet = Rows("pets").Single();
        JsonArray animal = [];
        if (pet["species"] is string species)
        {
            (string code, string name) = species == "dog" ? ("9615", "Canis lupus familiaris") : ("9685", "Felis catus");
            animal.Add(Extension("species", new JsonObject { ["coding"] = new JsonArray(Coding(Taxonomy, code, name)), ["text"] = species }));
        }

        if (pet["breed"] is string breed)
        {
            animal.Add(Extension("breed", Text(breed)));
        }

        if (pet["neutered"] is bool neutered)
        {
            string status = neutered ? "neutered" : "intact";
            animal.Add(Extension("genderStatus", new JsonObject { ["coding"] = new JsonArray(Coding("http://hl7.org/fhir/animal-genderstatus", status)), ["text"] = status }));
        }

        JsonObject resource = New("Patient", patient);
        if (animal.Any(extension => (string?)extension!["url"] == "species"))
        {
            // without a species the extension is not allowed
            resource["extension"] = new JsonArray(new JsonObject { ["extension"] = animal, ["url"] = "http://hl7.org/fhir/StructureDefinition/patient-animal" });
        }

        Add(resource, "identifier", pet["chip"] is string chip ? new JsonArray(new JsonObject { ["type"] = Text("microchip"), ["value"] = chip }) : null);
        Add(resource, "name", pet["name"] is string name0 ? new JsonArray(new JsonObject { ["text"] = name0 }) : null);
        Add(resource, "gender", pet["sex"] is string sex ? sex : "unknown");
        Add(resource, "birthDate", note.Analysis.Pet.Born?.ToString().TrimStart('~'));
        Add(resource, "contact", pet["owner"] is string owner ? new JsonArray(new JsonObject { ["relationship"] = new JsonArray(Text("owner")), ["name"] = new JsonObject { ["text"] = owner } }) : null);
        JsonObject[] clinic = [.. new[] { pet["vet"], pet["clinic"] }.OfType<string>().Select(display => new JsonObject { ["display"] = display })];
        Add(resource, "generalPractitioner", clinic.Length > 0 ? new JsonArray([.. clinic]) : null);
        resources.Add(resource);
    }

    private void Readings()
    {
        foreach (Dictionary<string, object?> row in Rows("readings"))
        {
            string what = (string)row["what"]!;
            string? place = (string?)row["site"];
            string? loinc = Codes.GetValueOrDefault(what);
            string name = string.Join(", ", new[] { what, (string?)row["state"] }.OfType<string>());
            JsonObject observation = Observation(row, loinc is null ? Text(name) : new JsonObject { ["coding"] = new JsonArray(Coding(Loinc, loinc)), ["text"] = name }, loinc is null ? "exam" : what == "glucose" ? "laboratory" : "vital-signs");
            Add(observation, "valueQuantity", Quantity((decimal)row["value"]!, (string)row["unit"]!, (string?)row["bound"]));
            Add(observation, "bodySite", place is null ? null : Text(place));
            if (row["normal_low"] is not null || row["normal_high"] is not null)
            {
                var range = new JsonObject();
                Add(range, "low", row["normal_low"] is decimal low ? Quantity(low, (string)row["unit"]!, null) : null);
                Add(range, "high", row["normal_high"] is decimal high ? Quantity(high, (string)row["unit"]!, null) : null);
                observation["referenceRange"] = new JsonArray(range);
            }

            Add(observation, "note", new JsonArray(new JsonObject { ["text"] = $"As written: {row["written"]}" }));
        }
    }

    private void Signs()
    {
        foreach (Dictionary<string, object?> row in Rows("signs"))
        {
            JsonObject observation = Observation(row, Text(row["sign"] is string sign ? $"{row["part"]}: {sign}" : (string)row["part"]!), "exam");
            Add(observation, "bodySite", row["site"] is string site ? Text(site) : null);
            switch ((string)row["sense"]!)
            {
                case "present":
                    observation["valueBoolean"] = true;
                    break;
                case "absent" or "ended":
                    observation["valueBoolean"] = false;
                    break;
                case "skipped":
                    observation["dataAbsentReason"] = new JsonObject { ["coding"] = new JsonArray(Coding(Terminology + "data-absent-reason", "not-performed")), ["text"] = "not looked at" };
                    break;
                case var other:
                    observation["valueString"] = other == "ok" ? "as expected" : "noted";
                    break;
            }
        }
    }

    private void Care()
    {
        foreach (Dictionary<string, object?> row in Rows("care"))
        {
            JsonObject observation = Observation(row, Text((string)row["what"]!), "activity");
            if (row["part"] is decimal part)
            {
                observation["valueQuantity"] = Quantity(part * 100, "%", null);
            }
            else if (row["times"] is int times && row["times_bound"] is null)
            {
                observation["valueInteger"] = times;
            }
            else
            {
                observation["valueBoolean"] = true;
            }
        }
    }

    private void Labs()
    {
        foreach (Dictionary<string, object?> row in Rows("labs"))
        {
            JsonObject observation = Observation(row, Text((string)row["analyte"]!), "laboratory");
            Add(observation, "valueQuantity", row["value"] is decimal value ? Quantity(value, (string?)row["unit"] ?? "", (string?)row["bound"], coded: false) : null);
            Add(observation, "valueString", row["words"] as string);
            if (row["ref_low"] is decimal low && row["ref_high"] is decimal high)
            {
                observation["referenceRange"] = new JsonArray(new JsonObject { ["low"] = new JsonObject { ["value"] = low }, ["high"] = new JsonObject { ["value"] = high } });
            }
        }
    }

    /// <summary>Conditions and allergies are the owner's words: they are unconfirmed, and without words there is nothing to say.</summary>
    private void Facts()
    {
        foreach (Dictionary<string, object?> row in Rows("facts").Where(row => row["fact"] is "known" or "allergy" && row["words"] is not null))
        {
            bool allergy = row["fact"] is "allergy";
            JsonObject resource = Add(allergy ? "AllergyIntolerance" : "Condition", row);
            if (allergy)
            {
                resource["clinicalStatus"] = Concept("allergyintolerance-clinical", "active");
            }

            resource["verificationStatus"] = Concept(allergy ? "allergyintolerance-verification" : "condition-ver-status", "unconfirmed");
            resource["code"] = Text((string)row["words"]!);
            resource[allergy ? "patient" : "subject"] = Subject();
            Add(resource, "recordedDate", Day(row["date"]));
        }
    }

    private void Medicines()
    {
        foreach (Dictionary<string, object?> row in Rows("orders"))
        {
            JsonObject statement = Add("MedicationStatement", row);
            statement["status"] = row["until"] is DateOnly until && until < note.Analysis.Today ? "completed" : "active";
            statement["medicationCodeableConcept"] = Text((string)row["medicine"]!);
            statement["subject"] = Subject();
            var period = new JsonObject();
            Add(period, "start", Day(row["from"]));
            Add(period, "end", Day(row["until"]));
            Add(statement, "effectivePeriod", period.Count > 0 ? period : null);
            Add(statement, "dateAsserted", Day(row["date"]));
            var dosage = new JsonObject();
            if (row["every_hours"] is decimal hours and > 0)
            {
                var repeat = new JsonObject { ["frequency"] = 1, ["period"] = RowText.Rounded(hours), ["periodUnit"] = "h" };
                Add(repeat, "periodMax", row["every_hours_to"] is decimal most && most > hours ? RowText.Rounded(most) : null);
                dosage["timing"] = new JsonObject { ["repeat"] = repeat };
            }

            Add(dosage, "asNeededBoolean", row["as_needed"] is true ? true : null);
            Add(dosage, "doseAndRate", Dose(row) is { } dose ? new JsonArray(new JsonObject { ["doseQuantity"] = dose }) : null);
            Add(statement, "dosage", dosage.Count > 0 ? new JsonArray(dosage) : null);
        }

        foreach (Dictionary<string, object?> row in Rows("doses").Where(row => row["kind"] is "gave" or "missed" && row["date"] is not null))
        {
            Administration(row, (string)row["medicine"]!, row["kind"] is "gave");
        }
    }

    private void Acts()
    {
        foreach (Dictionary<string, object?> row in Rows("acts").Where(row => row["on"] is not null))
        {
            string name = row["topic"] is string topic ? $"{row["act"]}: {topic}" : (string)row["act"]!;
            if (row["act"] is not "vaccine")
            {
                Administration(row, name, given: true);
                continue;
            }

            JsonObject vaccine = Add("Immunization", row);
            vaccine["status"] = "completed";
            vaccine["vaccineCode"] = Text(name);
            vaccine["patient"] = Subject();
            vaccine["occurrenceDateTime"] = Day(row["on"]);
            vaccine["primarySource"] = false;
        }
    }

    private void Administration(Dictionary<string, object?> row, string medicine, bool given)
    {
        JsonObject administration = Add("MedicationAdministration", row);
        administration["status"] = given ? "completed" : "not-done";
        administration["medicationCodeableConcept"] = Text(medicine);
        administration["subject"] = Subject();
        administration["effectiveDateTime"] = row.TryGetValue("on", out object? on) ? Day(on) : Day(row["date"]);
        Add(administration, "dosage", row.ContainsKey("amount") && Dose(row) is { } dose ? new JsonObject { ["dose"] = dose } : null);
        Add(administration, "note", row["time"] is string time ? new JsonArray(new JsonObject { ["text"] = $"At {time}." }) : null);
    }

    private void Document(FhirDocument document)
    {
        JsonObject resource = New("DocumentReference", IdOf("DocumentReference", document.MediaType));
        resource["status"] = "current";
        resource["type"] = Text(document.What);
        resource["subject"] = Subject();
        resource["content"] = new JsonArray(new JsonObject
        {
            ["attachment"] = new JsonObject { ["contentType"] = document.MediaType, ["data"] = Convert.ToBase64String(document.Bytes), ["title"] = document.Name },
        });
        resources.Add(resource);
    }

    private void Provenance()
    {
        JsonObject resource = New("Provenance", IdOf("Provenance", ""));
        resource["target"] = new JsonArray([.. resources.Select(target => new JsonObject { ["reference"] = Urn((string)target["id"]!) })]);
        resource["recorded"] = $"{note.Analysis.Today:yyyy-MM-dd}T00:00:00Z";
        resource["activity"] = Text(NotVerified);
        resource["agent"] = new JsonArray(new JsonObject { ["type"] = Text("owner"), ["who"] = new JsonObject { ["display"] = "Owner, in home notes" } });
        resources.Add(resource);
    }

    private JsonObject Observation(Dictionary<string, object?> row, JsonObject code, string category)
    {
        JsonObject resource = Add("Observation", row);
        resource["status"] = "final";
        resource["category"] = new JsonArray(Concept("observation-category", category));
        resource["code"] = code;
        resource["subject"] = Subject();
        Add(resource, "effectiveDateTime", Day(row["date"]));
        return resource;
    }

    /// <summary>A new resource about a row. Its id comes from what the row says but for its line: lines above may be added.</summary>
    private JsonObject Add(string type, Dictionary<string, object?> row)
    {
        string says = string.Join('\n', row.Where(value => value.Key is not ("line" or "file" or "pet_id")).Select(value => FormattableString.Invariant($"{value.Key}={value.Value}")));
        JsonObject resource = New(type, IdOf(type, says));
        resources.Add(resource);
        return resource;
    }

    private string IdOf(string type, string says)
    {
        string key = $"{note.PetId}\n{type}\n{says}";
        met[key] = met.GetValueOrDefault(key) + 1;
        return new Guid(SHA256.HashData(Encoding.UTF8.GetBytes($"{key}\n{met[key]}"))[..16], bigEndian: true).ToString();
    }

    private IEnumerable<Dictionary<string, object?>> Rows(string name)
    {
        ExportTable table = ExportTables.All.Single(table => table.Name == name);
        return table.Rows(note).Select(row => table.Columns.Zip(row).ToDictionary(value => value.First.Name, value => value.Second));
    }

    private JsonObject Subject() => new() { ["reference"] = Urn(patient) };

    private static JsonObject? Dose(Dictionary<string, object?> row) => row["amount"] is decimal amount ? Quantity(amount, (string)row["unit"]!, null) : null;

    /// <summary>A quantity; what is counted (a tablet), and a scale, have no code of their own.</summary>
    private static JsonObject Quantity(decimal value, string unit, string? bound, bool coded = true)
    {
        var quantity = new JsonObject { ["value"] = RowText.Rounded(value) };
        Add(quantity, "comparator", bound is "<" or ">" ? bound : null);
        Add(quantity, "unit", unit.Length == 0 ? null : unit);
        string? code = unit switch { "mmHg" => "mm[Hg]", "kg" or "/min" or "Cel" or "mm" or "s" or "mL" or "mmol/L" or "mg" or "mg/kg" or "%" => unit, ['/', ..] => "{score}", _ => null };
        if (coded && code is not null)
        {
            quantity["system"] = Ucum;
            quantity["code"] = code;
        }

        return quantity;
    }

    private static string? Day(object? day) => day is DateOnly some ? some.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : null;

    private static string Urn(string id) => "urn:uuid:" + id;

    private static JsonObject New(string type, string id) => new() { ["resourceType"] = type, ["id"] = id };

    private static JsonObject Text(string text) => new() { ["text"] = text };

    private static JsonObject Concept(string system, string code) => new() { ["coding"] = new JsonArray(Coding(Terminology + system, code)) };

    private static JsonObject Coding(string system, string code, string? display = null)
    {
        var coding = new JsonObject { ["system"] = system, ["code"] = code };
        Add(coding, "display", display);
        return coding;
    }

    private static JsonObject Extension(string url, JsonObject concept) => new() { ["url"] = url, ["valueCodeableConcept"] = concept };

    private static void Add(JsonObject to, string name, JsonNode? value)
    {
        if (value is not null)
        {
            to[name] = value;
        }
    }
}
