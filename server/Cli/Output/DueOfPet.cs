using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Due;
using HealthNotes.Rendering.Model;

namespace HealthNotes.Cli.Output;

/// <summary>One thing due, with the note it is from.</summary>
internal sealed record DueOfPet(string Path, PetRecord Record, DueItem Due)
{
    /// <summary>The pet's name, or words for a pet without one.</summary>
    public string Pet => Record.Pet.Name is { Length: > 0 } name ? name : "a pet without a name";

    /// <summary>What it is, in words.</summary>
    public string What => DueText.Of(Due);

    /// <summary>What it is and when, in words.</summary>
    public string Line => DueText.Line(Due, Record.Today);

    /// <summary>The clinic and its telephone number, as the note has them; empty when it has none.</summary>
    public string Clinic => OwnClinic.Length > 0 ? OwnClinic : string.Join(", ", new[] { Record.Note.ClinicText("clinic"), Record.Note.ClinicText("phone") }.OfType<string>());

    private string OwnClinic => string.Join(", ", Record.Note.Facts<TextFact>(Record.Today).Where(fact => fact.Fact.Word.Word is "clinic" or "phone").OrderBy(fact => fact.Fact.Word.Word, StringComparer.Ordinal).Select(fact => fact.Fact.Text.Text));

    /// <summary>All that is due in a note.</summary>
    public static IEnumerable<DueOfPet> Of(string path, PetRecord record) => DueList.Of(record).Select(due => new DueOfPet(path, record, due));

    /// <summary>The same order as of one pet: overdue orders and visits first.</summary>
    public static IReadOnlyList<DueOfPet> InOrder(IEnumerable<DueOfPet> due) =>
        [.. due.OrderBy(one => one.Due.Rank(one.Record.Today) with { Item5 = 0 }).ThenBy(one => one.Path, StringComparer.Ordinal).ThenBy(one => one.Due.Line)];
}
