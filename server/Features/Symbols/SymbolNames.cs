using System.Globalization;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Symbols;

/// <summary>What lines and entries are called in an outline.</summary>
internal static class SymbolNames
{
    /// <summary>An entry: <c>2026-10-04 check</c>; the date as written where it is none.</summary>
    public static string Of(Entry entry, NoteSyntax syntax)
    {
        string date = entry.Head.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? entry.Head.DateSpan.In(syntax.Lines[entry.Line].Text).ToString();
        return $"{date} {entry.Head.Kind}";
    }

    /// <summary>
    /// How much of a line is its name: its word, what says which one is meant, and its value, as far as they follow one another
    /// (<c>lump L-flank @lower 12mm</c>, <c>07:30 gave benazepril 5mg</c>).
    /// </summary>
    public static TextSpan NameIn(LineSyntax line, NoteItem item)
    {
        TextSpan content = LineShape.Content(line);
        int end = item.Head.Span.End;
        foreach (Token mark in line.Marks)
        {
            if (mark.Span.Start < end)
            {
                continue;
            }

            if (!Tells(mark.Kind, item))
            {
                break;
            }

            end = mark.Span.End;
        }

        // a fact may come without its word: "female, spayed"
        return end > content.Start || line.Marks.IsEmpty ? TextSpan.Between(content.Start, Math.Clamp(end, content.Start, content.End)) : line.Marks[0].Span;
    }

    /// <summary>What a line stands for.</summary>
    public static SymbolSort SortOf(NoteItem item) => item switch
    {
        MedicinePlan => SymbolSort.Medicine,
        Reading => SymbolSort.Reading,
        Examined => SymbolSort.Exam,
        Finding => SymbolSort.Finding,
        _ => item.Word.Kind switch
        {
            WordKind.Fact => SymbolSort.Fact,
            WordKind.Care => SymbolSort.Care,
            WordKind.Task => SymbolSort.Task,
            WordKind.Picture => SymbolSort.Photo,
            _ => SymbolSort.Other,
        },
    };

    private static bool Tells(TokenKind kind, NoteItem item) => kind switch
    {
        TokenKind.Site or TokenKind.Tag => item is not Reading,
        TokenKind.LineWord => true,
        TokenKind.Value => item is not MedicinePlan,
        TokenKind.State => item is Reading,
        TokenKind.Name => item is MedicinePlan or DoseEvent,
        _ => false,
    };
}
