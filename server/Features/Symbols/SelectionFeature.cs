using System.Collections.Immutable;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Features.Symbols;

/// <summary>Grows a selection by what belongs together.</summary>
public static class SelectionFeature
{
    /// <summary>
    /// The ranges around a place, the smallest first, each strictly inside the next: word, part of the line, what the line says,
    /// the line, a block of free text, the entry, the document.
    /// </summary>
    public static ImmutableArray<PlaceRange> Around(Document document, Place place)
    {
        Place at = document.Clamp(place);
        ImmutableArray<PlaceRange>.Builder ranges = ImmutableArray.CreateBuilder<PlaceRange>();
        foreach (PlaceRange range in Candidates(document, at))
        {
            bool grows = ranges.Count == 0 || (range != ranges[^1] && range.Start <= ranges[^1].Start && ranges[^1].End <= range.End);
            if (grows && range.Touches(at))
            {
                ranges.Add(range);
            }
        }

        return ranges.DrainToImmutable();
    }

    private static IEnumerable<PlaceRange> Candidates(Document document, Place at)
    {
        LineSyntax line = document.Syntax.Lines[at.Line];
        if (MarkAt(line, at.Character) is { } mark)
        {
            TextSpan word = WordAt(line.Text, mark, at.Character);
            if (word.Length > 0)
            {
                yield return PlaceRange.Of(at.Line, word);
            }

            yield return PlaceRange.Of(at.Line, mark);
        }

        TextSpan content = LineShape.Content(line);
        if (content.Length > 0)
        {
            yield return PlaceRange.Of(at.Line, content);
        }

        yield return LineShape.Lines(document, at.Line, at.Line);
        if (line.Kind is LineKind.FreeText or LineKind.Comment)
        {
            yield return Run(document, at.Line);
        }

        int entry = EntryIndexAt(document.Note.Entries, at.Line);
        int first = entry < 0 ? 0 : document.Note.Entries[entry].Line;
        int end = LineShape.EndOf(document, entry);
        yield return LineShape.Lines(document, first, Math.Max(at.Line, LineShape.LastWritten(document, first, end)));
        yield return LineShape.Lines(document, 0, document.Syntax.Lines.Length - 1);
    }

    /// <summary>The part at a character: the one that holds it, else the one that ends there.</summary>
    private static TextSpan? MarkAt(LineSyntax line, int character)
    {
        TextSpan? before = null;
        foreach (Token mark in line.Marks)
        {
            if (mark.Span.Start <= character && character < mark.Span.End)
            {
                return mark.Span;
            }

            before = mark.Span.End == character ? mark.Span : before;
        }

        return before;
    }

    /// <summary>The letters and digits around a character, with what belongs to them: a decimal mark, an accent, an emoji's second half.</summary>
    private static TextSpan WordAt(string text, TextSpan within, int character)
    {
        int start = character;
        while (start > within.Start && IsInWord(text, start - 1))
        {
            start--;
        }

        int end = character;
        while (end < within.End && IsInWord(text, end))
        {
            end++;
        }

        return TextSpan.Between(start, end);
    }

    private static bool IsInWord(string text, int at) =>
        char.IsLetterOrDigit(text[at])
        || char.IsSurrogate(text[at])
        || text[at] is '\u200d'
        || char.GetUnicodeCategory(text[at]) is System.Globalization.UnicodeCategory.NonSpacingMark or System.Globalization.UnicodeCategory.SpacingCombiningMark or System.Globalization.UnicodeCategory.EnclosingMark
        || (text[at] is '.' or ',' && at > 0 && at + 1 < text.Length && char.IsDigit(text[at - 1]) && char.IsDigit(text[at + 1]));

    private static PlaceRange Run(Document document, int line)
    {
        ImmutableArray<LineSyntax> lines = document.Syntax.Lines;
        int first = line;
        while (first > 0 && lines[first - 1].Kind == lines[line].Kind)
        {
            first--;
        }

        int last = line;
        while (last + 1 < lines.Length && lines[last + 1].Kind == lines[line].Kind)
        {
            last++;
        }

        return LineShape.Lines(document, first, last);
    }

    private static int EntryIndexAt(ImmutableArray<Entry> entries, int line)
    {
        int low = 0;
        int high = entries.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = entries[middle].Line <= line ? (middle + 1, high) : (low, middle);
        }

        return low - 1;
    }
}
