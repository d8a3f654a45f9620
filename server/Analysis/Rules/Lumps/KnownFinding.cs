using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Lumps;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Rules;

/// <summary>The facts by which a vet knows of a lump or a node.</summary>
internal static class KnownFinding
{
    /// <summary>The last <c>known</c> that names it and holds on <paramref name="day"/>; null when none does.</summary>
    public static DatedFact<TextFact>? For(PetFacts note, NoteItem? item, DateOnly day)
    {
        for (int index = note.Knowns.Length - 1; index >= 0; index--)
        {
            DatedFact<TextFact> fact = note.Knowns[index];
            if (!(fact.Day > day) && item is not null && NamedSite.Names(fact.Fact.Text.Text, item.Word, item.Site, item.Tag?.Name))
            {
                return fact;
            }
        }

        return null;
    }

    /// <summary>True when a <c>known</c> that holds on <paramref name="day"/> names the lump and the word.</summary>
    public static bool KnowsWord(PetFacts note, Finding lump, string word, DateOnly day) =>
        note.Knowns.Any(fact => !(fact.Day > day) && NamedSite.Says(fact.Fact.Text.Text, word) && NamedSite.Names(fact.Fact.Text.Text, lump.Word, lump.Site, lump.Tag?.Name));

    /// <summary>How it is said in a message.</summary>
    public static string Say(DatedFact<TextFact> fact) => $"Known: {fact.Fact.Text.Text} (line {fact.Line + 1}).";
}
