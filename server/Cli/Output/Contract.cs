using System.Text.Json;
using System.Text.Json.Serialization;

namespace HealthNotes.Cli.Output;

// The JSON that other programs read. Names and meanings here are a contract; tests hold them.

/// <summary>What <c>check --json</c> prints.</summary>
internal sealed record CheckReport(IReadOnlyList<FileReport> Files);

/// <summary>One file of a check.</summary>
internal sealed record FileReport(string Path, IReadOnlyList<ProblemReport> Problems);

/// <summary>
/// One finding. Lines and columns count from 1, columns in UTF-16 units, the end is just after the last character.
/// <c>shown</c> is true when the plain output shows it without <c>--all</c>.
/// </summary>
internal sealed record ProblemReport(
    string Rule, string Level, int Line, int Column, int EndLine, int EndColumn, string Message, string Source, IReadOnlyList<int> Evidence, bool Shown, bool Open);

/// <summary>What <c>read --json</c> prints.</summary>
internal sealed record ReadReport(string Path, IReadOnlyList<ReadLineReport> Lines);

/// <summary>
/// One line beside its reading. Kinds: <c>blank</c>, <c>comment</c>, <c>text</c>, <c>head</c>, <c>item</c>, <c>unknown</c>. The
/// reading is null where there is nothing to read or the line was not understood; <c>problem</c> then says why, and
/// <c>corrected</c> is the whole line as it should be, where that is certain.
/// </summary>
internal sealed record ReadLineReport(int Line, string Kind, string Text, string? Reading, string? Problem, string? Corrected);

/// <summary>What <c>values --json</c> prints.</summary>
internal sealed record ValuesReport(PetReport Pet, IReadOnlyList<ValueReport> Values)
{
    /// <summary>The note, where several are printed, one object a line.</summary>
    [JsonPropertyOrder(-1), JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Path { get; init; }
}

/// <summary>Who the note is about, on the day asked for.</summary>
internal sealed record PetReport(
    string? Name, string? Species, string? Breed, string? Sex, bool? Neutered, string? Born, int? AgeDays, bool? AgeIsAbout, string? LifeStage, string? Size, decimal? AdultWeightKg);

/// <summary>One value in canonical units. <c>bound</c> and <c>tag</c> are there only when they say something.</summary>
internal sealed record ValueReport(
    int Line,
    string? Date,
    string? Time,
    string What,
    string? Site,
    string? State,
    string Written,
    decimal Value,
    string Unit,
    decimal? Low,
    decimal? High,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Bound = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Tag = null);

/// <summary>What <c>values --days --json</c> prints.</summary>
internal sealed record DaysReport(PetReport Pet, IReadOnlyList<DayReport> Days)
{
    /// <summary>The note, where several are printed, one object a line.</summary>
    [JsonPropertyOrder(-1), JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Path { get; init; }
}

/// <summary>One day of home care, added up: water in mL and mL/kg, glucose in mmol/L; null where nothing was measured.</summary>
internal sealed record DayReport(
    string Date, int Given, int Missed, decimal? Meals, decimal? Water, decimal? WaterPerKg, int Pee, int Stool, int Vomit, int Cough, int Sneeze, int Seizure, decimal? GlucoseLow, decimal? GlucoseHigh);

/// <summary>What <c>due --json</c> prints.</summary>
internal sealed record DueReport(string Today, IReadOnlyList<DueItemReport> Due);

/// <summary>
/// One thing due, of one note. Kinds: <c>check</c>, <c>weighing</c>, <c>visit</c>, <c>recheck</c>, <c>task</c>, <c>medicine</c>, <c>course-end</c>. The date is
/// null for a task from which no day follows; days count from today, below 0 when overdue.
/// </summary>
internal sealed record DueItemReport(string Path, int Line, string? Pet, string Kind, string What, string? Date, int? Days, string Source);

/// <summary>Writes the contract without reflection.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(CheckReport))]
[JsonSerializable(typeof(ReadReport))]
[JsonSerializable(typeof(ValuesReport))]
[JsonSerializable(typeof(DaysReport))]
[JsonSerializable(typeof(DueReport))]
internal sealed partial class ContractJson : JsonSerializerContext
{
    /// <summary>Plain letters stay plain: the output is for terminals and files, not for web pages.</summary>
    public static ContractJson Readable { get; } = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });
}
