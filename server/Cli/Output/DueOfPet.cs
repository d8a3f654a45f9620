using HealthNotes.Analysis;
using HealthNotes.Grammar.Items;
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

    /// <summary>What it is and when, in words.</summary>
    public string Line => DueText.Line(Due, Analysis.Today);

    /// <summary>The clinic and its telephone number, as the note has them; empty when it has none.</summary>
    public string Clinic => OwnClinic.Length > 0 ? OwnClinic : string.Join(", ", new[] { Analysis.Note.ClinicText("clinic"), Analysis.Note.ClinicText("phone") }.OfType<string>());

    private string OwnClinic => string.Join(", ", Analysis.Note.Facts<TextFact>(Analysis.Today).Where(fact => fact.Fact.Word.Word is "clinic" or "phone").OrderBy(fact => fact.Fact.Word.Word, StringComparer.Ordinal).Select(fact => fact.Fact.Text.Text));

    /// <summary>All that is due in a note.</summary>
    public static IEnumerable<DueOfPet> Of(string path, NoteAnalysis analysis) => DueList.Of(analysis.Record).Select(due => new DueOfPet(path, analysis, due));

    /// <summary>The same order as of one pet: overdue orders and visits first.</summary>
    public static IReadOnlyList<DueOfPet> InOrder(IEnumerable<DueOfPet> due) =>
        [.. due.OrderBy(one => one.Due.Rank(one.Analysis.Today) with { Item5 = 0 }).ThenBy(one => one.Path, StringComparer.Ordinal).ThenBy(one => one.Due.Line)];
}
