using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Record.Pet;

/// <summary>Facts in the owner's words, to be found by what they say without reading all of them. Immutable.</summary>
public sealed class WordIndex
{
    private readonly ImmutableArray<string> plain;
    private readonly ILookup<string, int> byWord;

    /// <summary>Takes the facts in file order.</summary>
    public WordIndex(IEnumerable<DatedFact<TextFact>> facts)
    {
        Facts = [.. facts];
        plain = [.. Facts.Select(fact => TextWord.Plain(fact.Fact.Text.Text))];
        byWord = Enumerable.Range(0, Facts.Length).SelectMany(index => plain[index].Split(' ', StringSplitOptions.RemoveEmptyEntries).Distinct().Select(word => (Word: word, Index: index)))
            .ToLookup(pair => pair.Word, pair => pair.Index);
    }

    /// <summary>The facts, in file order.</summary>
    public ImmutableArray<DatedFact<TextFact>> Facts { get; }

    /// <summary>The facts that have one of the phrases, its words one behind the other, in file order. A hyphen is a blank.</summary>
    public IEnumerable<DatedFact<TextFact>> Saying(IEnumerable<string> phrases) => IndexesOf(phrases).Order().Select(index => Facts[index]);

    /// <summary>The facts that have one of the phrases and one of the others, in file order.</summary>
    public IEnumerable<DatedFact<TextFact>> Saying(IEnumerable<string> phrases, IEnumerable<string> others) =>
        IndexesOf(phrases).ToArray() is { Length: > 0 } some ? some.Intersect(IndexesOf(others)).Order().Select(index => Facts[index]) : [];

    private IEnumerable<int> IndexesOf(IEnumerable<string> phrases) => Facts.IsEmpty ? [] : phrases.Select(TextWord.Plain).SelectMany(phrase =>
        byWord[phrase[1..phrase.IndexOf(' ', 1)]].Where(index => plain[index].Contains(phrase, StringComparison.Ordinal))).Distinct();
}
