using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Readings;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>Facts of the opening as they are shown.</summary>
internal static class PetCardBuilder
{
    /// <summary>Below this no dose is compared with a weight: it is a slip of the pen.</summary>
    private const decimal LeastWeightKg = 0.01m;

    /// <summary>The milligrams a kilogram of a dose, in words; empty when either is not known.</summary>
    public static string PerKilogram(PageContext context, NoteValue? dose, NoteReading? weight) =>
        weight is { Value.Number: >= LeastWeightKg } && DosePerWeight.MilligramsPerKilogram(dose, weight.Value.Number) is { } perKg
            ? $" ({PageWords.PerKilogram(perKg)})"
            : "";

    /// <summary>The texts of a fact that hold today, each once.</summary>
    public static List<string> Texts(PageContext context, string word) => Listed(
        context.Analysis.Note.Facts<TextFact>(context.Analysis.Today)
            .Where(fact => fact.Fact.Word.Word == word)
            .Select(fact => NoteText.Field(fact.Fact.Text.Text)).Distinct().DefaultIfEmpty(context.Analysis.Note.ClinicText(word) is { } text ? NoteText.Field(text) : "").Where(text => text.Length > 0));

    /// <summary>A plan as it is shown, without its first word.</summary>
    public static string Plan(MedicinePlan plan) => ItemPrinter.Print(plan)[(plan.Word.Word.Length + 1)..];

    /// <summary>The limits that the clinic set, and the ranges it calls usual, as prose.</summary>
    public static IEnumerable<string> Limits(PageContext context) =>
        Listed(context.Analysis.Note.Facts<CallIfFact>(context.Analysis.Today).Select(fact => Said(fact.Fact, fact.Fact.Vital, fact.Fact.State, fact.Fact.Per, PageWords.LimitOf(fact.Fact.Limit.Bound == Bound.Above, ValuePrinter.Print(fact.Fact.Limit).TrimStart('<', '>'), fact.Fact.IsNow)))
            .Concat(context.Analysis.Note.Facts<UsualFact>(context.Analysis.Today).Select(fact => Said(fact.Fact, fact.Fact.Vital, fact.Fact.State, fact.Fact.Per, PageWords.UsualOf(ValuePrinter.Print(fact.Fact.Range)))))
            .Concat(OfTheClinic(context.Analysis.Record.Facts)).Distinct());

    /// <summary>What the clinic's rules set and no line of the note does, each with the file it stands in.</summary>
    private static IEnumerable<string> OfTheClinic(PetFacts facts) =>
        facts.CallIfs.Where(drawn => drawn.Fact.From is not null).Select(drawn => (Said(drawn.Fact.Fact, drawn.Fact.Fact.Vital, drawn.Fact.Fact.State, drawn.Fact.Fact.Per, PageWords.LimitOf(drawn.IsAbove, ValuePrinter.Print(drawn.Fact.Fact.Limit).TrimStart('<', '>'), drawn.Fact.Fact.IsNow)), drawn.Fact.From))
            .Concat(facts.Usuals.SelectMany(same => same).Where(usual => usual.From is not null).Select(usual => (Said(usual.Fact, usual.Fact.Vital, usual.Fact.State, usual.Fact.Per, PageWords.UsualOf(ValuePrinter.Print(usual.Fact.Range))), usual.From)))
            .Select(set => PageWords.SetIn(set.Item1, NoteText.Field(set.From!)));

    private static string Said(NoteItem fact, Grammar.Vocabulary.LineWord vital, Grammar.Vocabulary.StateWord? state, Attribution? per, string limit) => NoteText.Field(string.Join(' ', new[]
    {
        Analysis.Rules.Wording.NameOf(vital.Word).ToLowerInvariant(), state?.Word.Replace('-', ' ') ?? "", fact.Place?.Word.Replace('-', ' ') ?? "", limit, per is null ? "" : PageWords.Per(per.Who, per.When?.ToString()),
    }.Where(part => part.Length > 0)));

    private static List<string> Listed(IEnumerable<string> values)
    {
        List<string> all = [.. values];
        return all.Count <= PageLimits.ListItems ? all : [.. all.TakeLast(PageLimits.ListItems), PageWords.LeftOut(all.Count - PageLimits.ListItems)];
    }
}
