using System.Collections.Immutable;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Notes;

/// <summary>Groups the lines of a tree into opening and entries. One instance reads one note.</summary>
internal sealed class NoteReader(NoteSyntax syntax, NoteVocabulary vocabulary)
{
    private readonly List<PlacedProblem> problems = [];
    private readonly ImmutableArray<Entry>.Builder entries = ImmutableArray.CreateBuilder<Entry>();
    private Opening? opening;
    private Entry? current;
    private ImmutableArray<Placed<NoteItem>>.Builder items = ImmutableArray.CreateBuilder<Placed<NoteItem>>();
    private ImmutableArray<int>.Builder notUnderstood = ImmutableArray.CreateBuilder<int>();
    private FreeTextReader texts = new();

    public Note Read()
    {
        ImmutableArray<LineSyntax> lines = syntax.Lines;
        for (int index = 0; index < lines.Length; index++)
        {
            Take(index, lines[index]);
        }

        Close();
        var note = new Note(syntax, opening!, entries.DrainToImmutable(), []);
        problems.AddRange(PlacementCheck.Of(note, vocabulary));
        return note with { Problems = [.. problems.OrderBy(p => p.Line).ThenBy(p => p.Problem.Span.Start)] };
    }

    private void Take(int index, LineSyntax line)
    {
        if (line.Kind == LineKind.EntryHead)
        {
            Close();
            current = new Entry(index, line.EntryHead!, [], [], []);
        }

        foreach (Problem problem in line.Problems)
        {
            problems.Add(new PlacedProblem(index, problem));
        }

        if (line.Problems.Length > 0 && line.Kind != LineKind.EntryHead)
        {
            notUnderstood.Add(index);
        }

        if (line.Item is { } item)
        {
            items.Add(new Placed<NoteItem>(index, item));
        }

        texts.Take(index, line);
    }

    /// <summary>Ends the opening or the current entry.</summary>
    private void Close()
    {
        if (current is null)
        {
            opening = new Opening(items.DrainToImmutable(), texts.Close(), notUnderstood.DrainToImmutable());
        }
        else
        {
            entries.Add(current with { Items = items.DrainToImmutable(), Texts = texts.Close(), NotUnderstood = notUnderstood.DrainToImmutable() });
        }
    }
}
