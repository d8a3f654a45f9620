using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Actions.Lines;

/// <summary>A line as it would be read, and what could not be read in it.</summary>
internal sealed record TrialLine(LineSyntax Line, ImmutableArray<NoteFinding> Errors);

/// <summary>
/// Reads a line before it is written: in a note of its own that has the same animal and the same kind of entry. A fix is
/// offered only when the line reads better with it, so that none can do harm.
/// </summary>
internal sealed class Trial(Species species, string? entryKind, DateOnly today)
{
    /// <summary>The place of a line of this document.</summary>
    public static Trial For(Document document, int line)
    {
        Entry? entry = document.Note.EntryAt(line);
        return new Trial(document.Note.Opening.Species, entry?.Head.Kind, document.Today);
    }

    /// <summary>Reads a line.</summary>
    public TrialLine Read(string text)
    {
        // never the first line: there a byte-order mark would be taken away
        string before = entryKind is null ? "\n"
            : $"{(species == Species.Unknown ? "" : species == Species.Cat ? "species cat\n" : "species dog\n")}{today:yyyy-MM-dd} {entryKind}\n";
        Document trial = Document.Open("", 0, before + text, today);
        int last = trial.Syntax.Lines.Length - 1;
        return new TrialLine(trial.Syntax.Lines[last], [.. trial.Analysis.Findings.Where(f => f.Line == last && f.Level == FindingLevel.Error)]);
    }

    /// <summary>
    /// True when the line reads better after the fix: the finding is gone, and what else is wrong was so before or stands
    /// behind the fix. A line tells one problem at a time, the first.
    /// </summary>
    public static bool IsBetter(TrialLine before, TrialLine after, NoteFinding target, LineFix fix) =>
        Count(after, target) < Count(before, target)
        && after.Errors.All(error => error.Span.Start >= fix.Span.Start + fix.Text.Length || Count(after, error) <= Count(before, error));

    private static int Count(TrialLine line, NoteFinding like) => line.Errors.Count(error => error.Rule == like.Rule && error.Message == like.Message);
}
