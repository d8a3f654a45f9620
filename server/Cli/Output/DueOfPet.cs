using HealthNotes.Analysis;
using HealthNotes.Record.Due;
using HealthNotes.Rendering;

namespace HealthNotes.Cli.Output;

/// <summary>One thing due, with the note it is from.</summary>
internal sealed record DueOfPet(string Path, NoteAnalysis Analysis, DueItem Due)
{
    /// <summary>The pet's name, or words for a pet without one.</summary>
    public string Pet => Analysis.Pet.Name is { Length: > 0 } name ? name : "a pet without a name";

    /// <summary>What it is, in words.</summary>
    public string What => DueText.Of(Due);

    /// <summary>When, in words.</summary>
    public string When => DueText.When(Due.On, Analysis.Today);

    /// <summary>All that is due in a note.</summary>
    public static IEnumerable<DueOfPet> Of(string path, NoteAnalysis analysis) => DueList.Of(analysis.Record).Select(due => new DueOfPet(path, analysis, due));

    /// <summary>By day, what has no day last.</summary>
    public static IReadOnlyList<DueOfPet> InOrder(IEnumerable<DueOfPet> due) =>
        [.. due.OrderBy(due => due.Due.On is null).ThenBy(due => due.Due.On).ThenBy(due => due.Path, StringComparer.Ordinal).ThenBy(due => due.Due.Line)];
}
