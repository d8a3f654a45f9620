using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Grammar.Formatting;

/// <summary>Writes how a line was read, in the vocabulary's own words.</summary>
public static class MeaningPrinter
{
    /// <summary>The reading of a line, an observation after the other; <c>?</c> when it was not read, empty when there is nothing to read in it.</summary>
    public static string Print(LineSyntax line) => line switch
    {
        { Problems.Length: > 0 } or { Kind: LineKind.Unknown } => "?",
        { EntryHead: { } head } => NoteFormatter.Head(head),
        _ => string.Join(" | ", line.Items.Select(ItemPrinter.Meaning)),
    };
}
