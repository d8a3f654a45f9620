using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Notes;

/// <summary>Groups lines into opening and entries. Each entry is read from its own lines and the species alone.</summary>
internal sealed class NoteReader(ImmutableArray<LineSyntax> lines, NoteVocabulary vocabulary, bool isRules = false)
{
    /// <summary>How many days before the entry above a day without its year may lie; from there on it lies behind.</summary>
    private const int LongestBack = 120;

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
        Section section = Read(0, to, null);
        var opening = new Opening(section.Items, section.Texts, section.NotUnderstood);
        ImmutableArray<PlacedProblem> misplaced = [.. PlacementCheck.Of(opening, isRules)];
        return misplaced.IsEmpty ? opening with { Problems = [.. section.Problems] }
            : new Opening(Without(section.Items, misplaced), section.Texts, Lines(section.NotUnderstood, misplaced)) { Problems = InOrder(section.Problems, misplaced) };
    }

    /// <summary>
    /// The entries in the lines from <paramref name="from"/>, the head of the first, up to <paramref name="to"/>. A date without its
    /// year is the nearest such day to <paramref name="before"/>, the last day above it.
    /// </summary>
    public IEnumerable<Entry> ReadEntries(int from, int to, Species species, DateOnly? before)
    {
        while (from < to)
        {
            int next = NextHead(from + 1);
            EntryHead head = lines[from].EntryHead!;
            head = head with { Date = head.NoYear is { } noYear ? Near(noYear, before) : head.Date };
            before = head.Date ?? before;
            Section section = Read(from, next, head.Date);
            if (head is { Date: null, NoYear: not null })
            {
                section.Problems.Insert(0, new PlacedProblem(from, new Problem(ProblemRules.BadDate, head.DateSpan,
                    $"`{head.DateSpan.In(lines[from].Text)}`: no entry above it tells the year. Write the date with its year, such as 2026-10-22.")));
            }

            var entry = new Entry(from, head, section.Items, section.Texts, section.NotUnderstood);
            ImmutableArray<PlacedProblem> misplaced = [.. PlacementCheck.Of(entry, species, vocabulary)];
            if (!misplaced.IsEmpty)
            {
                // a line that says what cannot be is not used at all
                entry = entry with { Items = Without(section.Items, misplaced), NotUnderstood = Lines(section.NotUnderstood, misplaced) };
            }

            yield return entry with
            {
                Facts = entry.Items.Any(IsFact) ? [.. entry.Items.Where(IsFact)] : [],
                Problems = misplaced.IsEmpty ? [.. section.Problems] : InOrder(section.Problems, misplaced),
            };
            from = next;
        }
    }

    private static bool IsFact(Placed<NoteItem> item) => item.Value.Word.Kind == WordKind.Fact;

    private static ImmutableArray<PlacedProblem> InOrder(List<PlacedProblem> found, ImmutableArray<PlacedProblem> misplaced) =>
        [.. found.Concat(misplaced).OrderBy(p => p.Line).ThenBy(p => p.Problem.Span.Start)];

    private static ImmutableArray<Placed<NoteItem>> Without(ImmutableArray<Placed<NoteItem>> items, ImmutableArray<PlacedProblem> misplaced)
    {
        HashSet<int> left = [.. misplaced.Select(problem => problem.Line)];
        return items.RemoveAll(item => left.Contains(item.Line));
    }

    private static ImmutableArray<int> Lines(ImmutableArray<int> notUnderstood, ImmutableArray<PlacedProblem> misplaced) =>
        [.. notUnderstood.Concat(misplaced.Select(problem => problem.Line)).Distinct().Order()];

    /// <summary>The day with its year: the first one behind the entry above, or one shortly before it where the newest come first.</summary>
    private static DateOnly? Near((int Month, int Day) noYear, DateOnly? before)
    {
        if (before is not { } last)
        {
            return null;
        }

        for (int year = Math.Max(1, last.Year - 1); year <= Math.Min(DateOnly.MaxValue.Year, last.Year + 1); year++)
        {
            if (noYear.Day <= DateTime.DaysInMonth(year, noYear.Month)
                && new DateOnly(year, noYear.Month, noYear.Day) is var day && day.DayNumber - last.DayNumber >= -LongestBack)
            {
                return day;
            }
        }

        return null;
    }

    private Section Read(int from, int to, DateOnly? day)
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
                items.Add(new Placed<NoteItem>(index, Dated(item, day)));
            }

            texts.Take(index, line);
        }

        return new Section(items.DrainToImmutable(), texts.Close(), notUnderstood?.DrainToImmutable() ?? [], problems);
    }

    /// <summary>The item with the years of its days, where they are written without: the day of the entry gives them.</summary>
    private static NoteItem Dated(NoteItem item, DateOnly? day) =>
        item.Schedule is var schedule && schedule.LacksYear() && day is { } known ? item with { Body = item.Body.With(schedule.Near(known, done: item.Word.Kind == WordKind.Act)) } : item;

    private sealed record Section(
        ImmutableArray<Placed<NoteItem>> Items, ImmutableArray<FreeTextBlock> Texts, ImmutableArray<int> NotUnderstood, List<PlacedProblem> Problems);
}
