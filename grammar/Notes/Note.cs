using System.Collections.Immutable;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Notes;

/// <summary>A whole note, typed: the facts of its opening and its entries in file order. Immutable.</summary>
/// <param name="Syntax">The tree it was read from; line indexes point into it.</param>
/// <param name="Opening">What stands before the first entry.</param>
/// <param name="Entries">The dated entries.</param>
/// <param name="Problems">Everything that could not be read, in line order.</param>
public sealed record Note(
    NoteSyntax Syntax,
    Opening Opening,
    ImmutableArray<Entry> Entries,
    ImmutableArray<PlacedProblem> Problems)
{
    /// <summary>Reads a note. Never fails: what is not understood is kept and reported in <see cref="Problems"/>.</summary>
    public static Note Read(string text) => Read(NoteSyntax.Parse(text), NoteVocabulary.Default);

    /// <summary>Types the lines of a tree that is read already.</summary>
    public static Note Read(NoteSyntax syntax, NoteVocabulary vocabulary) => new NoteReader(syntax, vocabulary).Read();

    /// <summary>The facts that hold on <paramref name="day"/> (of the opening, and of entries up to that day), each with its line and the day it was written.</summary>
    public IEnumerable<DatedFact<T>> Facts<T>(DateOnly? day = null)
        where T : NoteItem
    {
        foreach (Placed<NoteItem> fact in Opening.Facts)
        {
            if (fact.Value is T wanted)
            {
                yield return new DatedFact<T>(fact.Line, null, wanted);
            }
        }

        foreach (Entry entry in Entries)
        {
            if (day is { } until && entry.Head.Date is { } date && date > until)
            {
                continue;
            }

            foreach (Placed<NoteItem> item in entry.Items)
            {
                // a limit written outside a visit is reported as misplaced, and does not hold
                bool holds = item.Value is not (UsualFact or CallIfFact) || entry.Head.Kind == "visit";
                if (holds && item.Value is T wanted)
                {
                    yield return new DatedFact<T>(item.Line, entry.Head.Date, wanted);
                }
            }
        }
    }
}

/// <summary>What stands before the first entry.</summary>
/// <param name="Facts">The facts, and tasks that stand among them.</param>
/// <param name="Texts">Free text about the pet.</param>
/// <param name="NotUnderstood">The indexes of lines that are not understood.</param>
public sealed record Opening(
    ImmutableArray<Placed<NoteItem>> Facts,
    ImmutableArray<FreeTextBlock> Texts,
    ImmutableArray<int> NotUnderstood)
{
    /// <summary>The text of a fact in free words (<c>pet</c>, <c>breed</c>, <c>vet</c>), or null.</summary>
    public string? Text(string word) =>
        Facts.Select(fact => fact.Value).OfType<TextFact>().FirstOrDefault(fact => fact.Word.Word == word)?.Text.Text;


    /// <summary>The species, when it is said.</summary>
    public Species Species => First<SpeciesFact>()?.Species ?? Species.Unknown;

    /// <summary>The first fact of a kind, or null.</summary>
    public T? First<T>()
        where T : NoteItem => Facts.Select(fact => fact.Value).OfType<T>().FirstOrDefault();
}

/// <summary>A fact, the index of its line, and the day of the entry it stands in (null in the opening).</summary>
/// <typeparam name="T">The kind of fact.</typeparam>
public sealed record DatedFact<T>(int Line, DateOnly? Day, T Fact)
    where T : NoteItem;
