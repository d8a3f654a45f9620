using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>A note that does not say which animal it is about gets the line, below the pet's name: dog or cat, for the writer to choose.</summary>
internal static class SpeciesFix
{
    public static IEnumerable<ActionOffer> Of(Document document, NoteFinding finding)
    {
        Opening opening = document.Note.Opening;
        int end = document.Note.Entries.Length > 0 ? document.Note.Entries[0].Line : document.Syntax.Lines.Length;
        bool begun = document.Syntax.Lines.Take(end).Any(line => LineAt.WordOf(line)?.Word == "species");
        if (opening.Species != Species.Unknown || begun)
        {
            yield break;
        }

        bool onlyThis = opening.Text("pet") is not null && document.Record.Pet.Born is not null;
        foreach (string animal in (string[])["species dog", "species cat"])
        {
            DocumentEdit edit = opening.Facts.FirstOrDefault(fact => fact.Value.Word.Word == "pet") is { } pet
                ? WholeLines.InsertBelow(document, WholeLines.LastOf(document, pet.Line), [animal])
                : MisplacedFact.InsertFact(document, [animal]);
            ActionOffer offer = NoteFix.Offer("say-species", $"Add `{animal}`", finding, preferred: false, edit);
            yield return onlyThis ? offer : offer with { Fixes = [] };
        }
    }
}
