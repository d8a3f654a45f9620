using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Due;
using HealthNotes.Rendering.Model;

namespace HealthNotes.Cli.Output;

/// <summary>One thing due, with what is printed of its note; the note itself is not kept.</summary>
/// <param name="Path">The note's file.</param>
/// <param name="Name">The pet's name; null for a pet without one.</param>
/// <param name="Clinic">The clinic and its telephone number, as the note has them; empty when it has none.</param>
/// <param name="Today">The day it is due from.</param>
/// <param name="Due">What is due.</param>
internal sealed record DueOfPet(string Path, string? Name, string Clinic, DateOnly Today, DueItem Due)
{
    /// <summary>The pet's name, or words for a pet without one.</summary>
    public string Pet => Name is { Length: > 0 } ? Name : "a pet without a name";

    /// <summary>What it is, in words.</summary>
    public string What => DueText.Of(Due);

    /// <summary>What it is and when, in words.</summary>
    public string Line => DueText.Line(Due, Today);

    /// <summary>All that is due in a note.</summary>
    public static IEnumerable<DueOfPet> Of(string path, PetRecord record)
    {
        string clinic = ClinicOf(record);
        return DueList.Of(record).Select(due => new DueOfPet(path, record.Pet.Name, clinic, record.Today, due));
    }

    /// <summary>The same order as of one pet: overdue orders and visits first.</summary>
    public static IReadOnlyList<DueOfPet> InOrder(IEnumerable<DueOfPet> due) =>
        [.. due.OrderBy(one => one.Due.Rank(one.Today) with { Item5 = 0 }).ThenBy(one => one.Path, StringComparer.Ordinal).ThenBy(one => one.Due.Line)];

    private static string ClinicOf(PetRecord record) =>
        string.Join(", ", record.Note.Facts<TextFact>(record.Today).Where(fact => fact.Fact.Word.Word is "clinic" or "phone").OrderBy(fact => fact.Fact.Word.Word, StringComparer.Ordinal).Select(fact => fact.Fact.Text.Text))
            is { Length: > 0 } own ? own : string.Join(", ", new[] { record.Note.ClinicText("clinic"), record.Note.ClinicText("phone") }.OfType<string>());
}
