using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Grammar.Formatting;

/// <summary>Writes how a line was read.</summary>
public static class MeaningPrinter
{
    /// <summary>The reading in the vocabulary's own words, an observation after the other; <c>?</c> when it was not read, empty when there is nothing to read in it.</summary>
    public static string Print(LineSyntax line) => Print(line, ItemPrinter.Meaning);

    /// <summary>The same for a person: describing words in the owner's own form.</summary>
    public static string ForReader(LineSyntax line) => Print(line, ItemPrinter.ForReader);

    private static string Print(LineSyntax line, Func<NoteItem, string> item) => line switch
    {
        { Problems.Length: > 0 } or { Kind: LineKind.Unknown } => "?",
        { EntryHead: { } head } => NoteFormatter.Head(head),
        _ => string.Join(" | ", line.Items.Select(item)),
    };
}
