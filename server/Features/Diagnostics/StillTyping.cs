using System.Buffers;
using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Checks;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Diagnostics;

/// <summary>
/// A half-typed line is not scolded while the next character could make it right: <c>gum</c> may become <c>gums</c>,
/// <c>hr 7</c> may become <c>hr 72</c>. What can wait is not shown before the line is left. What is held back is shown as soon as another line is edited, and when the note is
/// saved or opened.
/// </summary>
public static class StillTyping
{
    private static readonly SearchValues<char> DateCharacters = SearchValues.Create("0123456789-:/.T ");

    /// <summary>The findings without those that the next characters at <paramref name="caret"/>, where the last edit ended, could do away with.</summary>
    public static ImmutableArray<NoteFinding> Without(Document document, ImmutableArray<NoteFinding> findings, Place? caret)
    {
        if (caret is not { } place || place.Line >= document.Syntax.Lines.Length)
        {
            return findings;
        }

        string line = document.Syntax.Lines[place.Line].Text;
        int end = line.AsSpan().TrimEnd().Length;
        ImmutableArray<NoteFinding> shown = WithoutWaiting(document, findings, place.Line);
        return place.Character < end
            ? shown
            : shown.RemoveAll(finding => finding.Line == place.Line && CouldBecomeRight(finding, document.Syntax.Lines[place.Line], wordIsOver: place.Character > end));
    }

    /// <summary>In a check that is being filled in, a part without what was seen still waits: a command may have put it there.</summary>
    private static ImmutableArray<NoteFinding> WithoutWaiting(Document document, ImmutableArray<NoteFinding> findings, int edited) =>
        document.Note.EntryAt(edited) is not { Head.Kind: "check" } check ? findings : findings.RemoveAll(finding =>
            finding is { Level: FindingLevel.Error, Rule: ProblemRules.Missing } && document.Note.EntryAt(finding.Line)?.Line == check.Line && WaitingLine.At(document, finding.Line) is not null);

    private static bool CouldBecomeRight(NoteFinding finding, LineSyntax syntax, bool wordIsOver)
    {
        string line = syntax.Text;
        bool error = finding.Level == FindingLevel.Error;
        if (error && finding.Rule is ProblemRules.Missing or ProblemRules.OpenNegation)
        {
            // what is missing, or negated, comes next
            return true;
        }

        ReadOnlySpan<char> typed = line.AsSpan().TrimEnd();
        bool inNumber = !wordIsOver && EndsInNumber(typed);
        if (!error)
        {
            // what can wait does; and nothing follows from half a number, or half a date
            return finding.Level != FindingLevel.Urgent || inNumber;
        }

        ReadOnlySpan<char> text = finding.Span.In(line);
        int start = typed.LastIndexOf(' ') + 1;
        if (finding.Span.End < start)
        {
            return false;
        }

        string last = typed[start..].ToString();

        if (finding.Rule == ProblemRules.MissingUnit || (finding.Rule == ProblemRules.UnknownLine && !text.IsEmpty && !text.ContainsAnyExcept(DateCharacters)))
        {
            // the unit comes next, or what happened at that time
            return true;
        }

        return inNumber
            ? finding.Rule is not (ProblemRules.SaidTwice or ProblemRules.Misplaced or ProblemRules.UnknownLine)
            : wordIsOver ? !text.IsEmpty && IsStartOfWord(finding.Rule, $"{text} ", syntax)
            : IsStartOfWord(finding.Rule, last, syntax) || (!text.IsEmpty && IsStartOfWord(finding.Rule, text.ToString(), syntax));
    }

    /// <summary>A number at the end may get more digits, or its unit.</summary>
    private static bool EndsInNumber(ReadOnlySpan<char> text) => (text.Length > 0 && char.IsAsciiDigit(text[^1]))
        || (text.Length > 1 && text[^1] is '.' or ',' or '/' or '-' or ':' or 'x' && char.IsAsciiDigit(text[^2]));

    private static bool IsStartOfWord(string rule, string typed, LineSyntax line)
    {
        NoteVocabulary words = NoteVocabulary.Default;
        bool startsLine = Starts(typed, words.LineWords.Spellings.Concat(words.Leads.Spellings).Concat(words.Medicines.Spellings).Concat(words.Before.Spellings));
        return rule switch
        {
            ProblemRules.UnknownLine or ProblemRules.Misplaced => startsLine,
            ProblemRules.WrongUnit => Starts(typed, words.Units.Spellings),
            ProblemRules.UnknownWord or ProblemRules.ImpossibleSite => LineAt.WordOf(line) is not { } word ? startsLine || Starts(typed, [.. words.Fixed("entry").Spellings, "by"])
                : startsLine || Starts(typed, SlotTable.Spellings(words, word)) || Starts(typed[(typed.LastIndexOf('-') + 1)..], words.Regions.Spellings),
            _ => false,
        };
    }

    /// <summary>True when a longer word starts so.</summary>
    private static bool Starts(string typed, IEnumerable<string> spellings)
    {
        foreach (string spelling in spellings)
        {
            if (spelling.Length > typed.Length && spelling.AsSpan().StartsWith(typed, StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }
}
