using System.Collections.Frozen;
using System.Collections.Immutable;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Actions.Rewrites;

/// <summary>
/// Writes trade abbreviations in plain words: in a line, in an entry, in the whole note. The line becomes what <c>format</c>
/// makes of it; indent and comment stay, and so does a line with anything that is not understood.
/// </summary>
internal static class ExpandAbbreviations
{
    /// <summary>The key of the offer for the whole note.</summary>
    public const string WholeNote = Id + ":note";

    private const string Id = "expand-abbreviations";

    private static readonly FrozenSet<string> Spellings = NoteVocabulary.Default.AbbreviationPlaces
        .SelectMany(place => NoteVocabulary.Default.Abbreviations(place).Spellings).ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    private static readonly FrozenSet<string>.AlternateLookup<ReadOnlySpan<char>> BySpan = Spellings.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>What is offered at the lines of a range.</summary>
    public static IEnumerable<ActionOffer> In(Document document, PlaceRange range)
    {
        List<DocumentEdit> here = Of(document, range.Start.Line, range.End.Line);
        if (here.Count == 0)
        {
            yield break;
        }

        yield return Rewrite.Offer(Id, here.Count == 1 ? $"Write in plain words: `{here[0].NewText}`" : $"Write the abbreviations of {here.Count} lines in plain words", [.. here]);
        if (document.Note.EntryAt(range.Start.Line) is { } entry && EntryLines.LastOf(document, entry) is var last && range.End.Line <= last)
        {
            List<DocumentEdit> all = Of(document, entry.Line, last);
            if (all.Count > here.Count)
            {
                yield return Rewrite.Offer(Id, $"Write the abbreviations of this entry in plain words ({all.Count} lines)", [.. all]);
            }
        }

        if (document.Note.Entries.Length > 1 || range.Start.Line < document.Syntax.Lines.Length - 1)
        {
            yield return Rewrite.Later(Id, "Write all abbreviations of this note in plain words", WholeNote);
        }
    }

    /// <summary>The edits for the whole note.</summary>
    public static ImmutableArray<DocumentEdit> InNote(Document document) => [.. Of(document, 0, document.Syntax.Lines.Length - 1)];

    private static List<DocumentEdit> Of(Document document, int first, int last)
    {
        var edits = new List<DocumentEdit>();
        for (int line = first; line <= last; line++)
        {
            if (In(document.Syntax.Lines[line], line) is { } edit)
            {
                edits.Add(edit);
            }
        }

        return edits;
    }

    private static DocumentEdit? In(LineSyntax line, int index)
    {
        if (line.Items.IsEmpty || !line.Marks.Any(mark => IsAbbreviation(mark, line.Text)))
        {
            return null;
        }

        string plain = string.Join(", ", line.Items.Select(ItemPrinter.Print));
        var span = TextSpan.Between(line.Indent, LineAt.ContentEnd(line));
        if (span.In(line.Text).SequenceEqual(plain) || MeaningPrinter.Print(NoteSyntax.Parse("\n" + plain).Lines[1]) != MeaningPrinter.Print(line))
        {
            return null;
        }

        return new DocumentEdit(PlaceRange.Of(index, span), plain);
    }

    /// <summary>True for a word of the abbreviations table where an abbreviation may stand, and for <c>q12h</c>.</summary>
    private static bool IsAbbreviation(Token mark, string text)
    {
        if (mark.Kind is not (TokenKind.LineWord or TokenKind.Site or TokenKind.State or TokenKind.Describing or TokenKind.Keyword))
        {
            return false;
        }

        ReadOnlySpan<char> written = mark.Span.In(text);
        return BySpan.Contains(written) || (mark.Kind == TokenKind.LineWord && NoteVocabulary.Default.Leads.Find(written) is { Means: LeadMeans.Plain }) || (mark.Kind == TokenKind.Keyword && written.Length > 2 && written[0] is 'q' or 'Q' && char.IsAsciiDigit(written[1]));
    }
}
