using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
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
    private static readonly string[] FactsAlsoInVisits = ["usual", "call-if", "phone-now-if", "med-range", "med-strength"];
    private static readonly string[] FactsAlsoInEntries = ["med", "known", "allergy", "home-check", "accept", "expect", "surgery"];
    private static readonly string[] FactsMoreThanOnce = ["known", "allergy", "usual", "call-if", "phone-now-if", "med", "med-range", "med-strength", "phone", "home-check", "accept", "expect", "surgery", "include", "alias", "override-urgent"];

    private static readonly string[] OnlyInRules = ["alias", "override-urgent"];

    /// <summary>What is wrong with the places of an opening's lines, in a note or in a clinic's rules.</summary>
    public static IEnumerable<PlacedProblem> Of(Opening opening, bool isRules)
    {
        var seen = new HashSet<string>();
        foreach (Placed<NoteItem> fact in opening.Facts)
        {
            LineWord word = fact.Value.Word;
            if (fact.Value.Schedule.LacksYear())
            {
                yield return NoYear(fact);
            }
            else if (word.Kind is not (WordKind.Fact or WordKind.Task or WordKind.Act or WordKind.Picture))
            {
                yield return Problem(fact, fact.Value.Head.Span, ProblemRules.Misplaced,
                    $"`{word.Word}` stands before the first entry. Write a line with its date above it, such as 2026-10-04 check.");
            }
            else if (!isRules && OnlyInRules.Contains(word.Word))
            {
                yield return Problem(fact, fact.Value.Head.Span, ProblemRules.Misplaced, $"`{word.Word}` is for several pets. Write it in a file of the clinic's rules, whose name ends in {ClinicRules.Ending}.");
            }
            else if (word.Kind == WordKind.Fact && !FactsMoreThanOnce.Contains(word.Word) && !seen.Add(word.Word))
            {
                string message = word.Word == "pet" ? "A second pet in one file. Keep one file per pet." : $"`{word.Word}` stands twice in the opening. Keep one.";
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
            if (item.Value.Schedule.LacksYear())
            {
                yield return NoYear(item);
            }
            else if (item.Value is MedicinePlan { Head.Span.Length: 0, Schedule: { For: null, Until: null, From: null } } plan && entry.Head.Kind != "visit" && plan.Manner.All(manner => manner.Kind != StateKind.When))
            {
                // read as a plan because it has an interval; at home it may be a dose as well, unless it says for how long, or only when needed
                string written = ItemPrinter.Print(plan);
                string dose = string.Join(' ', ((string[])["gave", plan.Medicine.Text, plan.Dose is { } amount ? ValuePrinter.Print(amount) : ""]).Where(part => part.Length > 0));
                yield return Problem(item, plan.Medicine.Span, ProblemRules.Misplaced, $"Is this a dose that was given, or the plan? Write `{dose}` or `{written}`.");
            }
            else if (word.Kind == WordKind.Fact && !FactsAlsoInEntries.Contains(word.Word)
                && !(FactsAlsoInVisits.Contains(word.Word) && entry.Head.Kind == "visit"))
            {
                string where = FactsAlsoInVisits.Contains(word.Word) ? "in the opening of the file, or in a visit" : "in the opening of the file, before the first entry";
                yield return Problem(item, item.Value.Head.Span, ProblemRules.Misplaced, $"`{word.Word}` is a fact about the pet. Write it {where}."
                    + (word.Has(SlotKind.Text) ? " Anything that was said goes on a line that starts with >." : ""));
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
            return region.Species != "both" && region.Species != animal ? $"A {animal} has no {region.Word}."
                : site.Number is 5 && species == Species.Cat ? "A cat has four pairs of mammary glands, numbered 1 to 4 from the front."
                : null;
        }

        return site.Number is { } tooth && !vocabulary.IsTooth(tooth, species) ? $"A {animal} has no tooth {tooth}." : null;
    }

    private static PlacedProblem NoYear(Placed<NoteItem> item) =>
        Problem(item, item.Value.Head.Span, ProblemRules.BadDate, "Which year? No entry with a date stands above this line. Write the day as year-month-day, such as 2026-10-20.");

    private static PlacedProblem Problem(Placed<NoteItem> item, TextSpan span, string rule, string message) =>
        new(item.Line, new Problem(rule, span, message));
}
