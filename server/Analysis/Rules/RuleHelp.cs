namespace HealthNotes.Analysis.Rules;
/// <summary>stub</summary>
public static class RuleHelp { /// <summary>stub</summary>
public static IReadOnlyList<string> Names => []; /// <summary>stub</summary>
public static string? For(string rule) => null; }
