using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Cli.Output;

/// <summary>A line beside its reading.</summary>
/// <param name="Index">Its index, from 0.</param>
/// <param name="Line">The line.</param>
/// <param name="Reading">How it was read; empty where there is nothing to read.</param>
/// <param name="Problem">Why it was not understood, or null.</param>
internal sealed record LineReading(int Index, LineSyntax Line, string Reading, Problem? Problem)
{
    /// <summary>Every line of a note, with what only the whole note can tell.</summary>
    public static IEnumerable<LineReading> Of(Note note)
    {
        ILookup<int, Problem> problems = note.Problems.ToLookup(placed => placed.Line, placed => placed.Problem);
        return note.Syntax.Lines.Select((line, index) => new LineReading(index, line, MeaningPrinter.ForReader(line.EntryHead is null ? line : line with { EntryHead = note.EntryAt(index)!.Head }), problems[index].MaxBy(problem => problem.Corrected is not null)));
    }
}
