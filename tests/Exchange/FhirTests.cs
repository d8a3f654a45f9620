using System.Text.Json.Nodes;
using Firely.Fhir.Validation;
using Hl7.Fhir.Model;
using Hl7.Fhir.Serialization;
using Hl7.Fhir.Specification.Source;
using Hl7.Fhir.Specification.Terminology;

namespace HealthNotes.Exchange.Tests;

/// <summary>Bundles are valid FHIR R4 by a validator of others, and come back as the note they were made of.</summary>
public sealed class FhirTests(FhirTests.Checker checker) : IClassFixture<FhirTests.Checker>
{
    private static readonly string Samples = Path.Combine(Hnote.Top, "samples");

    [Fact]
    public void Every_sample_and_many_random_notes_are_valid()
    {
        using var work = new Workspace();
        foreach (string sample in Directory.EnumerateFiles(Samples, "*.hnote"))
        {
            File.Copy(sample, work.PathOf(Path.GetFileName(sample)));
        }

        int notes = int.TryParse(Environment.GetEnvironmentVariable("HNOTE_NOTES"), out int asked) ? asked : 100;
        for (int seed = 0; seed < notes; seed++)
        {
            work.Note(RandomNote(new Random(seed)), $"random/{seed}.hnote");
        }

        Assert.Equal(0, Hnote.Run("export", work.Folder, "--format", "fhir", "--out", work.PathOf("out"), "--today", Hnote.Today).Code);
        string[] bundles = [.. Directory.EnumerateFiles(work.PathOf("out"), "*.fhir.json", SearchOption.AllDirectories)];
        Assert.Equal(notes + 6, bundles.Length);
        Assert.All(bundles, bundle => Assert.Equal("", checker.ErrorsOf(File.ReadAllText(bundle))));
    }

    [Fact]
    public void With_pseudonyms_a_bundle_is_valid_and_holds_no_name_and_no_document()
    {
        using var work = new Workspace();
        Assert.Equal(0, Hnote.Run("export", Path.Combine(Samples, "marlow.hnote"), "--format", "fhir", "--pseudonyms", "a key that nobody guesses", "--out", work.PathOf("out"), "--today", Hnote.Today).Code);
        string bundle = File.ReadAllText(Directory.EnumerateFiles(work.PathOf("out"), "*.fhir.json").Single());
        Assert.Equal("", checker.ErrorsOf(bundle));
        Assert.All(["Marlow", "marlow", "Larch", "Two Rivers", "needled", "DocumentReference", "\"Condition\""], name => Assert.DoesNotContain(name, bundle, StringComparison.Ordinal));
    }

    /// <summary>A check that finds nothing wrong proves little until it has found something wrong.</summary>
    [Theory]
    [InlineData("\"status\": \"final\"", "\"status\": \"finished\"")]
    [InlineData("\"valueQuantity\"", "\"valueQuality\"")]
    [InlineData("\"resourceType\": \"Condition\"", "\"resourceType\": \"Condition\", \"abatementString\": 5")]
    [InlineData("\"url\": \"species\"", "\"url\": \"kind\"")]
    public void A_planted_mistake_is_found(string right, string wrong)
    {
        string bundle = Hnote.Run("export", Path.Combine(Samples, "tansy.hnote"), "--format", "fhir", "--out", "-", "--today", Hnote.Today).Output;
        Assert.Contains(right, bundle, StringComparison.Ordinal);
        int at = bundle.IndexOf(right, StringComparison.Ordinal);
        Assert.NotEqual("", checker.ErrorsOf(bundle[..at] + wrong + bundle[(at + right.Length)..]));
    }

    [Fact]
    public void A_bundle_comes_back_as_a_note_whose_export_is_the_same_bundle()
    {
        using var work = new Workspace();
        Assert.Equal(0, Hnote.Run("export", Samples, "--format", "fhir", "--out", work.PathOf("first"), "--today", Hnote.Today).Code);
        Assert.All(Directory.EnumerateFiles(work.PathOf("first"), "*.fhir.json"), bundle =>
            Assert.Equal(0, Hnote.Run("import", bundle, "--out", work.PathOf(Path.GetFileName(bundle).Replace(".fhir.json", ".hnote", StringComparison.Ordinal))).Code));
        Directory.Move(work.PathOf("first"), work.PathOf("before.bundles"));
        Assert.Equal(0, Hnote.Run("export", work.Folder, "--format", "fhir", "--out", work.PathOf("second"), "--today", Hnote.Today).Code);
        Assert.All(Directory.EnumerateFiles(work.PathOf("before.bundles"), "*.fhir.json"), bundle =>
            Assert.Equal(File.ReadAllText(bundle), File.ReadAllText(Path.Combine(work.PathOf("second"), Path.GetFileName(bundle)))));
    }

    /// <summary>Resources keep their ids when a line is added above them.</summary>
    [Fact]
    public void An_id_comes_from_what_is_said()
    {
        using var work = new Workspace();
        string[] before = Ids(work.Note("pet X\nspecies cat\n2026-10-04 check\n  weight 4kg\n  gums pink\n"));
        string[] after = Ids(work.Note("pet X\nspecies cat\n2026-10-01 check\n  weight 4.1kg\n2026-10-04 check\n  weight 4kg\n  gums pink\n"));
        Assert.Single(after.Except(before));
        Assert.Empty(before.Except(after));
    }

    [Fact]
    public void A_bundle_of_another_program_gives_facts_and_measures_and_counts_the_rest()
    {
        using var work = new Workspace();
        string bundle = work.Note(
            """
            {"resourceType": "Bundle", "type": "collection", "entry": [
              {"resource": {"resourceType": "Patient", "name": [{"text": "Rowan"}], "gender": "male", "birthDate": "2019-05",
                "extension": [{"url": "http://hl7.org/fhir/StructureDefinition/patient-animal", "extension": [{"url": "species", "valueCodeableConcept": {"coding": [{"code": "canislf"}]}}]}]}},
              {"resource": {"resourceType": "AllergyIntolerance", "code": {"text": "penicillin\n2020-01-01 visit"}}},
              {"resource": {"resourceType": "Observation", "effectiveDateTime": "2026-03-01T10:00:00Z", "code": {"coding": [{"system": "http://loinc.org", "code": "29463-7"}]}, "valueQuantity": {"value": 12.5, "unit": "kg", "code": "kg"}}},
              {"resource": {"resourceType": "Observation", "effectiveDateTime": "2026-03-01", "code": {"text": "coat"}, "valueString": "dull"}},
              {"resource": {"resourceType": "Encounter"}}]}
            """,
            "other.json");
        Outcome outcome = Hnote.Run("import", bundle);
        Assert.Equal(0, outcome.Code);
        Assert.Contains("2 of them have no line in it", outcome.Output, StringComparison.Ordinal);
        Assert.Equal("pet Rowan\nspecies dog\nsex male\nborn 2019-05\nallergy penicillin 2020-01-01 visit\n\n2026-03-01 log\n  weight 12.5kg\n", File.ReadAllText(work.PathOf("other.imported.hnote")));
        Assert.Equal(2, Hnote.Run("import", bundle).Code);
    }

    [Theory]
    [InlineData("[]", "it is not a FHIR bundle")]
    [InlineData("{", "it is not JSON")]
    [InlineData("{\"resourceType\": \"Bundle\"}", "it holds 0 patients")]
    [InlineData("{\"resourceType\": \"Bundle\", \"entry\": [5, {\"resource\": {\"resourceType\": 7}}]}", "it holds 0 patients")]
    public void What_is_no_bundle_is_refused_in_plain_words(string text, string why)
    {
        using var work = new Workspace();
        Outcome outcome = Hnote.Run("import", work.Note(text, "x.json"));
        Assert.Equal(2, outcome.Code);
        Assert.Contains(why, outcome.Errors, StringComparison.Ordinal);
        Assert.False(outcome.ShowsInternals);
    }

    private static string[] Ids(string note)
    {
        JsonNode bundle = JsonNode.Parse(Hnote.Run("export", note, "--format", "fhir", "--out", "-", "--today", Hnote.Today).Output)!;
        return [.. bundle["entry"]!.AsArray().Select(entry => (string)entry!["fullUrl"]!)];
    }

    /// <summary>Lines of the samples in any order and number.</summary>
    private static string RandomNote(Random random)
    {
        string[] lines = [.. Directory.EnumerateFiles(Samples, "*.hnote").Order(StringComparer.Ordinal).SelectMany(File.ReadLines)];
        string[] facts = [.. lines.Where(line => line.Length > 0 && char.IsLetter(line[0]))];
        string[] items = [.. lines.Where(line => line.StartsWith("  ", StringComparison.Ordinal)),
            "  lab creatinine 110umol/L ref 44-159", "  bp 150/90", "  vaccine rabies for 3y", "  rr <30 asleep", "  gave cephalexin 500mg 08:00 20:00", "  vomit x3, no blood", "  lump gone", "  glucose ~5.5mmol/L", "  med cephalexin 10mg/kg every 8-12h as needed"];
        var day = new DateOnly(2024, 1, 1);
        return string.Join('\n', random.GetItems(facts, random.Next(1, 12)).Concat(Enumerable.Range(0, random.Next(0, 12)).SelectMany(_ =>
            random.GetItems(items, random.Next(1, 20)).Prepend($"{day = day.AddDays(random.Next(1, 90)):yyyy-MM-dd} {random.GetItems(["check", "log", "visit"], 1)[0]}")))) + "\n";
    }

    /// <summary>The validator. It takes its definitions from the specification's own file, and much of a minute for its first bundle.</summary>
    public sealed class Checker
    {
        private readonly Validator validator;
        private readonly FhirJsonDeserializer reader = new();

        public Checker()
        {
            var source = new CachedResolver(ZipSource.CreateValidationSource());
            validator = new Validator(source, new LocalTerminologyService(source));
        }

        public string ErrorsOf(string json)
        {
            Resource resource;
            try
            {
                resource = reader.DeserializeResource(json);
            }
            catch (DeserializationFailedException problem)
            {
                return problem.Message;
            }

            return string.Join('\n', validator.Validate(resource).Issue.Where(issue => issue.Severity is OperationOutcome.IssueSeverity.Error or OperationOutcome.IssueSeverity.Fatal)
                .Select(issue => $"{issue.Details?.Text} at {issue.Expression.FirstOrDefault()}").Take(5));
        }
    }
}
