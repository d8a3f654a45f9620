using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Actions.Lines;

/// <summary>
/// A line that is to be fixed, in its document. Its text may be ahead of the document's: when several things are wrong in
/// it, each is fixed in what the one before has left.
/// </summary>
/// <param name="Document">The document.</param>
/// <param name="Index">The index of the line.</param>
/// <param name="Trial">Where it is tried.</param>
/// <param name="Read">The line as it stands now.</param>
/// <param name="UsFirst">Whether US units are offered before metric ones.</param>
internal sealed record LineAt(Document Document, int Index, Trial Trial, TrialLine Read, bool UsFirst = false)
{
    /// <summary>A line of the document, for a reader with these settings.</summary>
    public static LineAt Of(Document document, int index, FeatureSettings settings)
    {
        var trial = Trial.For(document, index);
        bool us = settings.Units == UnitsShown.Us || (settings.Units == UnitsShown.AsNoted && document.Record.Pet.ShowUsUnits);
        return new LineAt(document, index, trial, trial.Read(document.Syntax.Lines[index].Text), us);
    }

    /// <summary>The line.</summary>
    public LineSyntax Line => Read.Line;

    /// <summary>Its characters.</summary>
    public string Text => Read.Line.Text;

    /// <summary>The word it starts with, also where the line does not make sense; null when it starts with none.</summary>
    public LineWord? Word => Line.Item?.Word ?? WordOf(Line);

    /// <summary>The day of its entry.</summary>
    public DateOnly? Day => Entry?.Head.Date;

    /// <summary>Its entry; null in the opening.</summary>
    public Entry? Entry => Document.Note.EntryAt(Index);

    /// <summary>Keeps the fixes that the line reads better with.</summary>
    public IEnumerable<LineFix> Better(NoteFinding finding, IEnumerable<LineFix> fixes) =>
        fixes.Where(fix => Trial.IsBetter(Read, Trial.Read(fix.In(Text)), finding, fix));

    /// <summary>The word a line starts with, spelled in any way.</summary>
    public static LineWord? WordOf(LineSyntax line)
    {
        foreach (Token mark in line.Marks)
        {
            if (mark.Kind == TokenKind.LineWord)
            {
                return NoteVocabulary.Default.Starting(mark.Span.In(line.Text));
            }
        }

        return null;
    }

    /// <summary>The end of what is not a comment, without the blanks after it.</summary>
    public static int ContentEnd(LineSyntax line) =>
        line.Marks.LastOrDefault(mark => mark.Kind != TokenKind.Comment) is { Span.Length: > 0 } last ? last.Span.End : line.Text.AsSpan().TrimEnd().Length;

    /// <summary>A span and the blanks and commas before it.</summary>
    public static TextSpan WithBlanksBefore(string text, TextSpan span)
    {
        int start = span.Start;
        while (start > 0 && (char.IsWhiteSpace(text[start - 1]) || text[start - 1] is ',' or ';'))
        {
            start--;
        }

        return TextSpan.Between(start, span.End);
    }
}
