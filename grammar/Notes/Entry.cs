using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Grammar.Notes;

/// <summary>Something and the index of the line it stands in (from 0).</summary>
/// <typeparam name="T">What stands there.</typeparam>
public sealed record Placed<T>(int Line, T Value);

/// <summary>A problem and the index of its line (from 0).</summary>
public sealed record PlacedProblem(int Line, Problem Problem);

/// <summary>Free text: consecutive lines that start with <c>&gt;</c>, put together as Markdown.</summary>
/// <param name="Line">The index of its first line.</param>
/// <param name="Markdown">The text without its marks.</param>
/// <param name="BelongsTo">The index of the line it is indented below; null when it belongs to the whole entry.</param>
public sealed record FreeTextBlock(int Line, string Markdown, int? BelongsTo);

/// <summary>A dated entry with what was written in it, in order.</summary>
/// <param name="Line">The index of its head's line.</param>
/// <param name="Head">What its head says; the date is null when it could not be read.</param>
/// <param name="Items">The lines that are understood.</param>
/// <param name="Texts">The free text.</param>
/// <param name="NotUnderstood">The indexes of lines that are not understood, wholly or in part.</param>
public sealed record Entry(
    int Line,
    EntryHead Head,
    ImmutableArray<Placed<NoteItem>> Items,
    ImmutableArray<FreeTextBlock> Texts,
    ImmutableArray<int> NotUnderstood)
{
    /// <summary>Those of the items that are facts, such as a plan written at a visit; mostly there are none.</summary>
    public ImmutableArray<Placed<NoteItem>> Facts { get; init; } = [];

    /// <summary>
    /// True for a look over the whole pet in which something is written. One that was only begun, with every line still behind
    /// a <c>#</c>, says nothing about the pet, and must not take the place of the one before.
    /// </summary>
    public bool IsCheck => Head.Kind == "check" && !(Items.IsEmpty && Texts.IsEmpty && NotUnderstood.IsEmpty);

    /// <summary>What could not be read or cannot be, in line order.</summary>
    public ImmutableArray<PlacedProblem> Problems { get; init; } = [];

    /// <summary>What the line with this index says; null when it is not a line that is understood.</summary>
    public NoteItem? ItemAt(int line)
    {
        foreach (Placed<NoteItem> item in Items)
        {
            if (item.Line == line)
            {
                return item.Value;
            }
        }

        return null;
    }

    /// <summary>The same entry, <paramref name="lines"/> further down.</summary>
    internal Entry Moved(int lines) => new(
        Line + lines,
        Head,
        Moved(Items, lines),
        [.. Texts.Select(text => text with { Line = text.Line + lines, BelongsTo = text.BelongsTo + lines })],
        [.. NotUnderstood.Select(line => line + lines)])
    {
        Facts = Moved(Facts, lines),
        Problems = [.. Problems.Select(problem => problem with { Line = problem.Line + lines })],
    };

    private static ImmutableArray<Placed<NoteItem>> Moved(ImmutableArray<Placed<NoteItem>> items, int lines) =>
        ImmutableArray.CreateRange(items, (item, by) => new Placed<NoteItem>(item.Line + by, item.Value), lines);
}
