using System.Collections.Frozen;
using HealthNotes.Analysis.Danger;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Rules;

/// <summary>Something that an <c>allergy</c> fact names stands in what was eaten or given, in a remark, or in a line that was not understood.</summary>
public sealed class AllergyRule : IEntryRule
{
    private const int ShortestWord = 3;
    private static readonly FrozenSet<string> Ends = SmallWords.Of("allergy-ends");
    private static readonly FrozenSet<string> NoCause = SmallWords.Of("allergy-no-cause");

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("allergy", "allergy", 1);

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(PetRecord at, PetEntry entry)
    {
        (string Word, DatedFact<TextFact> Fact)[] causes = [.. at.Facts.Allergies.Where(fact => !(fact.Day > entry.Entry.Head.Date)).SelectMany(fact => CausesOf(fact.Fact.Text.Text).Select(word => (word, fact)))];
        if (causes.Length == 0)
        {
            yield break;
        }

        int told = -1;
        foreach (UnreadText text in UnreadText.In(at, entry).Concat(Eaten(at, entry)).Where(text => text.Place != TextPlace.Free).OrderBy(text => text.Line))
        {
            var searched = new SearchedText(text.Text);
            for (int index = 0; index < searched.Words.Length && told != text.Line; index++)
            {
                if (Array.Find(causes, cause => IsSame(cause.Word, searched.Words[index].Text)) is { Word: not null } cause && !searched.IsNegated(index, 1))
                {
                    told = text.Line;
                    yield return this.At(FindingLevel.Call, text.Line, new(text.Span.Start + searched.Words[index].Span.Start, searched.Words[index].Span.Length),
                        $"Names {searched.Words[index].Text}, which these notes list as an allergy (line {cause.Fact.Line + 1}: {cause.Fact.Fact.Text.Text}). If your pet had it, phone the clinic.",
                        "the allergy written for this pet", cause.Fact.Line).WithoutAdvice();
                }
            }
        }
    }

    /// <summary>Describing words of what was eaten (<c>ate grass</c>) are read, and are what the pet had all the same.</summary>
    private static IEnumerable<UnreadText> Eaten(PetRecord at, PetEntry entry) =>
        from item in entry.Entry.Items
        where item.Value is CareEvent { Word.Word: "ate" or "food" }
        from sign in item.Value.Words
        select new UnreadText(item.Line, sign.Span, sign.Span.In(at.Note.Syntax.Lines[item.Line].Text).ToString(), TextPlace.Eaten);

    /// <summary>The words of a fact that name what the pet must not have; what comes of it, and since when, is left out.</summary>
    private static IEnumerable<string> CausesOf(string fact) =>
        TextWord.Split(fact.Split('(', ':')[0]).Select(word => word.Text).TakeWhile(word => !Ends.Contains(word) && !char.IsDigit(word[0]))
            .Where(word => word.Length >= ShortestWord && !NoCause.Contains(word));

    private static bool IsSame(string cause, string word) => cause == word || cause + "s" == word || cause == word + "s";
}
