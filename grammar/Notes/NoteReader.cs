using System.Collections.Immutable;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Notes;

/// <summary>Groups lines into opening and entries. Each entry is read from its own lines and the species alone.</summary>
internal sealed class NoteReader(ImmutableArray<LineSyntax> lines, NoteVocabulary vocabulary)
{
    /// <summary>The index of the first head of an entry from <paramref name="from"/> on; the number of lines when there is none.</summary>
    public int NextHead(int from)
    {
        while (from < lines.Length && lines[from].Kind != LineKind.EntryHead)
        {
            from++;
        }

        return from;
    }

    /// <summary>The opening: the lines before <paramref name="to"/>.</summary>
    public Opening ReadOpening(int to)
    {
        Section section = Read(0, to);
        var opening = new Opening(section.Items, section.Texts, section.NotUnderstood);
        return opening with { Problems = InOrder(section.Problems, PlacementCheck.Of(opening)) };
    }

    /// <summary>The entries in the lines from <paramref name="from"/>, the head of the first, up to <paramref name="to"/>.</summary>
    public IEnumerable<Entry> ReadEntries(int from, int to, Species species)
    {
        while (from < to)
        {
            int next = NextHead(from + 1);
            Section section = Read(from, next);
            var entry = new Entry(from, lines[from].EntryHead!, section.Items, section.Texts, section.NotUnderstood)
            {
                Facts = section.Items.Any(IsFact) ? [.. section.Items.Where(IsFact)] : [],
            };
            yield return entry with { Problems = InOrder(section.Problems, PlacementCheck.Of(entry, species, vocabulary)) };
            from = next;
        }
    }

    private static bool IsFact(Placed<NoteItem> item) => item.Value.Word.Kind == WordKind.Fact;

    private static ImmutableArray<PlacedProblem> InOrder(List<PlacedProblem> found, IEnumerable<PlacedProblem> misplaced)
    {
        found.AddRange(misplaced);
        return found.Count == 0 ? [] : [.. found.OrderBy(p => p.Line).ThenBy(p => p.Problem.Span.Start)];
    }

    private Section Read(int from, int to)
    {
        ImmutableArray<Placed<NoteItem>>.Builder items = ImmutableArray.CreateBuilder<Placed<NoteItem>>(to - from);
        ImmutableArray<int>.Builder? notUnderstood = null;
        List<PlacedProblem> problems = [];
        var texts = new FreeTextReader();
        for (int index = from; index < to; index++)
        {
            LineSyntax line = lines[index];
            foreach (Problem problem in line.Problems)
            {
                problems.Add(new PlacedProblem(index, problem));
            }

            if (line.Problems.Length > 0 && line.Kind != LineKind.EntryHead)
            {
                (notUnderstood ??= ImmutableArray.CreateBuilder<int>()).Add(index);
            }

            foreach (NoteItem item in line.Items)
            {
                items.Add(new Placed<NoteItem>(index, item));
            }

            texts.Take(index, line);
        }

        return new Section(items.DrainToImmutable(), texts.Close(), notUnderstood?.DrainToImmutable() ?? [], problems);
    }

    private sealed record Section(
        ImmutableArray<Placed<NoteItem>> Items, ImmutableArray<FreeTextBlock> Texts, ImmutableArray<int> NotUnderstood, List<PlacedProblem> Problems);
}
