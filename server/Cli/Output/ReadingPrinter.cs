using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Cli.Output;

/// <summary>Writes each line of a note beside its reading: in two columns where there is room, else the reading below the line.</summary>
internal static class ReadingPrinter
{
    private const int WidestLine = 44;
    private const int NarrowestForTwo = 80;
    private const string Between = "   ";

    public static void Print(TextWriter output, IReadOnlyList<LineReading> lines)
    {
        bool two = Terminal.Width() >= NarrowestForTwo;
        int numbers = $"{lines.Count}".Length;
        int left = Math.Min(WidestLine, lines.Max(line => line.Line.Text.Length));
        int rightFrom = numbers + 2 + left + Between.Length;
        foreach (LineReading line in lines.Where(line => line.Line.Ending.Length > 0 || line.Line.Text.Length > 0))
        {
            string text = Left(line.Line, two ? left : int.MaxValue);
            string[] reading = [.. Right(line).SelectMany(part => Terminal.Wrap(part, two ? rightFrom : numbers + 4))];
            string start = $"{Terminal.Faint($"{line.Index + 1}".PadLeft(numbers))}  {text}";
            bool beside = two && text.Length <= left && reading.Length > 0;
            output.WriteLine(beside ? start + new string(' ', left - text.Length) + Between + Shown(line, reading[0]) : start.TrimEnd());
            foreach (string more in reading.Skip(beside ? 1 : 0))
            {
                output.WriteLine(new string(' ', two ? rightFrom : numbers + 4) + Shown(line, more));
            }
        }
    }

    /// <summary>The line as written; where it is too long for its column, without the comment at its end.</summary>
    private static string Left(LineSyntax line, int width) =>
        line.Text.Length > width && line is { Item: not null, Marks: [.., { Kind: TokenKind.Comment } comment] }
            ? line.Text[..comment.Span.Start].TrimEnd() + " #…"
            : line.Text.TrimEnd();

    /// <summary>What stands beside a line: its reading, or why it was not understood and what to write.</summary>
    private static IEnumerable<string> Right(LineReading line)
    {
        if (line.Problem is not { } problem)
        {
            return line.Line is { Kind: LineKind.FreeText } text && text.Text.TrimStart() is not ['>', ..] ? ["= free text, as written"]
                : line.Reading.Length == 0 ? [] : ["= " + line.Reading];
        }

        string message = "not understood: " + problem.Message;
        return problem.Corrected is { } corrected ? [message, "write: " + corrected.Trim()] : [message];
    }

    private static string Shown(LineReading line, string text) => line.Problem is null ? text : Terminal.InColour(text, FindingLevel.Error);
}
