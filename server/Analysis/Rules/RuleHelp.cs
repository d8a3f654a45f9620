using System.Reflection;

namespace HealthNotes.Analysis.Rules;

/// <summary>The help pages of the rules: one Markdown page a rule, embedded in this assembly.</summary>
public static class RuleHelp
{
    private const string Folder = "help/";
    private const string Ending = ".md";

    /// <summary>The names of all rules that have a page, in alphabetical order.</summary>
    public static IReadOnlyList<string> Names { get; } =
    [
        .. Assembly.GetExecutingAssembly().GetManifestResourceNames()
            .Where(name => name.StartsWith(Folder, StringComparison.Ordinal) && name.EndsWith(Ending, StringComparison.Ordinal))
            .Select(name => name[Folder.Length..^Ending.Length])
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>The page of a rule, in Markdown; null when there is no such rule.</summary>
    public static string? For(string rule)
    {
        using Stream? page = Assembly.GetExecutingAssembly().GetManifestResourceStream(Folder + rule + Ending);
        if (page is null)
        {
            return null;
        }

        using var reader = new StreamReader(page);
        return reader.ReadToEnd();
    }
}
