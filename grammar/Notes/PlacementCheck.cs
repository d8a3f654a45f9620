using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Notes;

/// <summary>
/// What a line on its own cannot tell: facts among observations and the other way round, facts said twice, and sites that
/// this species does not have.
/// </summary>
internal static class PlacementCheck
{
    private static readonly string[] FactsAlsoInVisits = ["usual", "call-if"];
    private static readonly string[] FactsAlsoInEntries = ["med", "known", "allergy", "home-check", "accept", "surgery"];
    private static readonly string[] FactsMoreThanOnce = ["known", "allergy", "usual", "call-if", "med", "phone", "home-check", "accept", "surgery"];

    /// <summary>What is wrong with the places of an opening's lines.</summary>
    public static IEnumerable<PlacedProblem> Of(Opening opening)
    {
        var seen = new HashSet<string>();
        foreach (Placed<NoteItem> fact in opening.Facts)
        {
            LineWord word = fact.Value.Word;
            if (word.Kind is not (WordKind.Fact or WordKind.Task or WordKind.Act or WordKind.Picture))
            {
                yield return Problem(fact, fact.Value.Head.Span, ProblemRules.Misplaced,
                    $"`{word.Word}` stands before the first entry; write a line with its date above it, such as 2026-10-04 check");
            }
            else if (word.Kind == WordKind.Fact && !FactsMoreThanOnce.Contains(word.Word) && !seen.Add(word.Word))
            {
                string message = word.Word == "pet" ? "a second pet in one file; keep one file per pet" : $"`{word.Word}` is said twice in the opening; keep one";
                yield return Problem(fact, fact.Value.Head.Span, ProblemRules.SaidTwice, message);
            }
        }
    }

    /// <summary>What is wrong with the places of an entry's lines, in an animal of this species.</summary>
    public static IEnumerable<PlacedProblem> Of(Entry entry, Species species, NoteVocabulary vocabulary)
    {
        foreach (Placed<NoteItem> item in entry.Items)
        {
            LineWord word = item.Value.Word;
            if (word.Kind == WordKind.Fact && !FactsAlsoInEntries.Contains(word.Word)
                && !(FactsAlsoInVisits.Contains(word.Word) && entry.Head.Kind == "visit"))
            {
                string where = FactsAlsoInVisits.Contains(word.Word) ? "in the opening of the file, or in a visit" : "in the opening of the file, before the first entry";
                yield return Problem(item, item.Value.Head.Span, ProblemRules.Misplaced, $"`{word.Word}` is a fact; it stands {where}");
            }

            if (species != Species.Unknown && item.Value.Site is { } site && Impossible(site, item.Value, species, vocabulary) is { } message)
            {
                yield return Problem(item, site.Span, ProblemRules.ImpossibleSite, message);
            }
        }
    }

    private static string? Impossible(Site site, NoteItem item, Species species, NoteVocabulary vocabulary)
    {
        string animal = species == Species.Dog ? "dog" : "cat";
        if (site.Region is { } region)
        {
            return region.Species != "both" && region.Species != animal ? $"a {animal} has no {region.Word}"
                : site.Number is 5 && species == Species.Cat ? "a cat has four pairs of mammary glands, numbered 1 to 4 from the front"
                : null;
        }

        return site.Number is { } tooth && !vocabulary.IsTooth(tooth, species) ? $"a {animal} has no tooth {tooth}" : null;
    }

    private static PlacedProblem Problem(Placed<NoteItem> item, TextSpan span, string rule, string message) =>
        new(item.Line, new Problem(rule, span, message));
}
