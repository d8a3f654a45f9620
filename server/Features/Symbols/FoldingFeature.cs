using System.Collections.Immutable;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Features.Symbols;

/// <summary>Lines that can be folded into the first of them.</summary>
/// <param name="FirstLine">The line that stays.</param>
/// <param name="LastLine">The last line that is hidden; after <paramref name="FirstLine"/>.</param>
/// <param name="IsComment">True for a run of comments.</param>
public sealed record FoldedLines(int FirstLine, int LastLine, bool IsComment);

/// <summary>What can be folded.</summary>
public static class FoldingFeature
{
    /// <summary>The opening, the entries, runs of comments, blocks of free text: nested or apart, by first line.</summary>
    public static ImmutableArray<FoldedLines> In(Document document)
    {
        ImmutableArray<FoldedLines>.Builder folds = ImmutableArray.CreateBuilder<FoldedLines>();
        for (int entry = -1; entry < document.Note.Entries.Length; entry++)
        {
            int end = LineShape.EndOf(document, entry);
            int first = entry < 0 ? FirstOfOpening(document, end) : document.Note.Entries[entry].Line;
            if (LineShape.LastWritten(document, first, end) is var last && last > first)
            {
                folds.Add(new FoldedLines(first, last, false));
            }

            AddRuns(document, entry < 0 ? 0 : first + 1, end, folds);
        }

        folds.Sort((one, other) => one.FirstLine != other.FirstLine ? one.FirstLine - other.FirstLine : other.LastLine - one.LastLine);
        return folds.DrainToImmutable();
    }

    /// <summary>The opening starts at its first fact: remarks above it are folded on their own.</summary>
    private static int FirstOfOpening(Document document, int end)
    {
        int first = 0;
        while (first < end && document.Syntax.Lines[first].Kind is LineKind.Blank or LineKind.Comment)
        {
            first++;
        }

        return first;
    }

    /// <summary>Two or more comments, or lines of free text, that follow one another.</summary>
    private static void AddRuns(Document document, int from, int end, ImmutableArray<FoldedLines>.Builder folds)
    {
        int first = from;
        for (int line = from + 1; line <= end; line++)
        {
            LineKind kind = first < end ? document.Syntax.Lines[first].Kind : LineKind.Blank;
            if (line < end && document.Syntax.Lines[line].Kind == kind)
            {
                continue;
            }

            if (kind is LineKind.Comment or LineKind.FreeText && line - 1 > first)
            {
                folds.Add(new FoldedLines(first, line - 1, kind == LineKind.Comment));
            }

            first = line;
        }
    }
}
