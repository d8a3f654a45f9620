using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Lumps;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Rules;

/// <summary>The facts by which a vet knows of a lump or a node.</summary>
internal static class KnownFinding
{
    /// <summary>The last <c>known</c> that names it and holds on <paramref name="day"/>; null when none does.</summary>
    public static DatedFact<TextFact>? For(PetFacts note, NoteItem? item, DateOnly day) => item is null ? null : Naming(note, item, day).LastOrDefault();

    /// <summary>True when a <c>known</c> that holds on <paramref name="day"/> names the lump and the word.</summary>
    public static bool KnowsWord(PetFacts note, Finding lump, string word, DateOnly day) =>
        Naming(note, lump, day).Any(fact => NamedSite.Says(fact.Fact.Text.Text, word));

    private static IEnumerable<DatedFact<TextFact>> Naming(PetFacts note, NoteItem item, DateOnly day) =>
        note.Conditions.Saying(item.Word.Synonyms.Append(item.Word.Word).SelectMany(name => (string[])[name, name + "s"]))
            .Where(fact => fact.Fact.Word.Word == "known" && !(fact.Day > day) && NamedSite.Names(fact.Fact.Text.Text, item.Word, item.Site, item.Tag?.Name));

    /// <summary>Its words in a message.</summary>
    public static string Say(DatedFact<TextFact> fact) => $"Known: {fact.Fact.Text.Text} (line {fact.Line + 1}).";
}
