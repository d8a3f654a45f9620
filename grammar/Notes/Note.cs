using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Notes;

/// <summary>A whole note, typed: the facts of its opening and its entries in file order. Immutable.</summary>
/// <param name="Syntax">The tree it was read from; line indexes point into it.</param>
/// <param name="Opening">What stands before the first entry.</param>
/// <param name="Entries">The dated entries.</param>
public sealed record Note(NoteSyntax Syntax, Opening Opening, ImmutableArray<Entry> Entries)
{
    /// <summary>The rules of the clinic that lie over this note, those that come first before the others; mostly there are none.</summary>
    public ImmutableArray<ClinicRules> Clinic { get; init; } = [];

    /// <summary>True for a file of a clinic's rules, which is about no pet.</summary>
    public bool IsRules { get; init; }

    /// <summary>The clinic's name or telephone number by the first rules that hold for this animal and have it; null when none does.</summary>
    public string? ClinicText(string word) => Clinic.Where(rules => rules.HoldsFor(Opening.Species)).Select(rules => rules.Lines.Opening.Text(word)).FirstOrDefault(text => text is not null);

    /// <summary>The files that its <c>include</c> lines name, in their order.</summary>
    public IEnumerable<string> Included => Opening.Facts.Select(fact => fact.Value).OfType<TextFact>().Where(fact => fact.Word.Word == "include").Select(fact => fact.Text.Text);

    /// <summary>What could not be read in the opening, and the <c>include</c> lines whose file is not there, in line order.</summary>
    public IEnumerable<PlacedProblem> OpeningProblems => Opening.Problems.Concat(
        from fact in Opening.Facts
        where fact.Value is TextFact { Word.Word: "include" }
        let name = ((TextFact)fact.Value).Text
        let why = Clinic.FirstOrDefault(rules => rules.Unread is not null && rules.Name == name.Text)?.Unread
        where why is not null
        select new PlacedProblem(fact.Line, new Problem(ProblemRules.WrongValue, name.Span, why == ClinicRules.NotThere
            ? $"No rules file `{name.Text}` can be read in this folder or in one above it. Write its name, such as include cardiac or include rules/cardiac; a name that leads out of these folders is not followed."
            : $"The rules file `{name.Text}` can't be read: {why}.")))
        .OrderBy(problem => problem.Line);

    /// <summary>Everything that could not be read, in line order.</summary>
    public IEnumerable<PlacedProblem> Problems => OpeningProblems.Concat(Entries.SelectMany(entry => entry.Problems));

    /// <summary>Reads a note. Never fails: what is not understood is kept and reported in <see cref="Problems"/>.</summary>
    public static Note Read(string text) => Read(NoteSyntax.Parse(text), NoteVocabulary.Default);

    /// <summary>Types the lines of a tree that is read already.</summary>
    public static Note Read(NoteSyntax syntax, NoteVocabulary vocabulary) => Read(syntax, vocabulary, isRules: false);

    /// <summary>The same note under other rules of the clinic. It is read again only where they bring other spellings.</summary>
    public Note Under(ImmutableArray<ClinicRules> clinic, NoteVocabulary vocabulary) =>
        (ReferenceEquals(vocabulary, Syntax.Vocabulary) ? this : Read(NoteSyntax.Parse(Syntax.Print(), vocabulary), vocabulary)) with { Clinic = clinic };

    internal static Note Read(NoteSyntax syntax, NoteVocabulary vocabulary, bool isRules)
    {
        var reader = new NoteReader(syntax.Lines, vocabulary, isRules);
        int first = reader.NextHead(0);
        Opening opening = reader.ReadOpening(first);
        return new Note(syntax, opening, [.. reader.ReadEntries(first, syntax.Lines.Length, opening.Species, before: null)]);
    }

    /// <summary>
    /// The note with <paramref name="count"/> lines from <paramref name="first"/> on replaced by <paramref name="text"/>, as
    /// in <see cref="NoteSyntax.WithLines"/>. Only the entries that the new lines touch are read again; the others are the
    /// same objects, or the same further down.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">There are no such lines.</exception>
    public (Note Note, EntryChange Change) WithLines(int first, int count, string text, NoteVocabulary vocabulary)
    {
        NoteSyntax syntax = Syntax.WithLines(first, count, text);
        int moved = syntax.Lines.Length - Syntax.Lines.Length;
        if (IsRules)
        {
            return (ClinicRules.Read(syntax), EntryChange.Everything(moved));
        }

        // The line before may lie in another entry: when the first new line was the head of one, that entry takes it over.
        int start = EntryIndexAt(first - 1);
        int end = EntryIndexAt(first + count - 1) + 1;
        while (end < Entries.Length && Entries[end].Head is not { Date: not null, NoYear: null })
        {
            // the entries above settle its year
            end++;
        }

        int from = start < 0 ? 0 : Entries[start].Line;
        int to = end < Entries.Length ? Entries[end].Line + moved : syntax.Lines.Length;
        var reader = new NoteReader(syntax.Lines, vocabulary);
        int firstHead = reader.NextHead(from);
        Opening opening = start < 0 ? reader.ReadOpening(firstHead) : Opening;
        if (opening.Species != Opening.Species)
        {
            // which sites exist depends on it
            return (Read(syntax, vocabulary) with { Clinic = Clinic }, EntryChange.Everything(moved));
        }

        ImmutableArray<Entry>.Builder entries = ImmutableArray.CreateBuilder<Entry>(Entries.Length + 1);
        entries.AddRange(Entries.AsSpan()[..Math.Max(0, start)]);
        entries.AddRange(reader.ReadEntries(firstHead, to, opening.Species, entries.LastOrDefault(entry => entry.Head.Date is not null)?.Head.Date).Select(WithHeadAsBefore));
        foreach (Entry entry in Entries.AsSpan()[end..])
        {
            entries.Add(moved == 0 ? entry : entry.Moved(moved));
        }

        return (new Note(syntax, opening, entries.DrainToImmutable()) { Clinic = Clinic }, new EntryChange(Math.Max(0, start), Entries.Length - end, moved));

        // a head that is as it was stays the same object, and so does what goes by it in the entry's other lines
        Entry WithHeadAsBefore(Entry entry) => EntryIndexAt(entry.Line) is var index && index >= Math.Max(0, start) && index < end && Entries[index] is var was && was.Line == entry.Line && was.Head == entry.Head
            ? entry with { Head = was.Head } : entry;
    }

    /// <summary>The entry that a line stands in; null for the opening.</summary>
    public Entry? EntryAt(int line) => EntryIndexAt(line) is >= 0 and int index ? Entries[index] : null;

    /// <summary>The index of the entry that a line stands in; -1 for the opening.</summary>
    public int EntryIndexAt(int line)
    {
        int low = 0;
        int high = Entries.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = Entries[middle].Line <= line ? (middle + 1, high) : (low, middle);
        }

        return low - 1;
    }

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

            foreach (Placed<NoteItem> item in entry.Facts)
            {
                // a limit written outside a visit is reported as misplaced, and does not hold
                bool holds = item.Value is not (UsualFact or CallIfFact or MedicineRangeFact or MedicineStrengthFact) || entry.Head.Kind == "visit";
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
    /// <summary>What could not be read or cannot be, in line order.</summary>
    public ImmutableArray<PlacedProblem> Problems { get; init; } = [];

    /// <summary>The text of a fact in free words (<c>pet</c>, <c>breed</c>, <c>vet</c>), or null.</summary>
    public string? Text(string word) =>
        Facts.Select(fact => fact.Value).OfType<TextFact>().FirstOrDefault(fact => fact.Word.Word == word)?.Text.Text;

    /// <summary>The species, where it is written.</summary>
    public Species Species => First<SpeciesFact>()?.Species ?? Species.Unknown;

    /// <summary>The first fact of a kind, or null.</summary>
    public T? First<T>()
        where T : NoteItem => Facts.Select(fact => fact.Value).OfType<T>().FirstOrDefault();
}

/// <summary>A fact, the index of its line, and the day of the entry it stands in (null in the opening).</summary>
/// <typeparam name="T">The kind of fact.</typeparam>
public sealed record DatedFact<T>(int Line, DateOnly? Day, T Fact)
    where T : NoteItem
{
    /// <summary>The clinic's rules it stands in; null for a line of the note. It has no line in the note then: that is -1.</summary>
    public string? From { get; init; }
}
