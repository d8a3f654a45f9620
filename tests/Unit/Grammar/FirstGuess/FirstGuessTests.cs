using System.Text.RegularExpressions;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Notes;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.FirstGuess;

/// <summary>
/// What people wrote who had read the README alone, and what each line means. The tables stand beside this file: line, where
/// it stands (opening, head or entry), its readings (parted by <c> || </c>; <c>?</c> for a line that is refused; <c>-</c> for
/// none), and why.
/// </summary>
public partial class FirstGuessTests
{
    private const double Wanted = 0.95;

    private static readonly Row[] Rows =
        [.. Directory.EnumerateFiles(Repository.PathOf("tests/Unit/Grammar/FirstGuess"), "*.tsv").Order(StringComparer.Ordinal).SelectMany(Load)];

    [Fact]
    public void Lines_are_read_as_meant()
    {
        string[] others = [.. Rows.Where(row => !row.AsMeant).Select(row => row.ToString())];
        double share = 1 - ((double)others.Length / Rows.Length);
        Assert.True(share >= Wanted, $"{share:P1} of {Rows.Length} lines are read as meant, not these:\n{string.Join('\n', others)}");
    }

    [Fact]
    public void No_line_is_read_as_something_else() => None.Wrong(Rows.Where(row => !row.AsMeant && row.Read != "?"));

    private static IEnumerable<Row> Load(string file) =>
        File.ReadLines(file).Skip(1).Select(line => line.Split('\t')).Select(cells => new Row(
            Path.GetFileName(file), cells[0], cells[2].Split(" || "), Reading(cells[0], inEntry: cells[1] == "entry")));

    private static string Reading(string line, bool inEntry)
    {
        var note = Note.Read(inEntry ? "2026-10-04 log\n  " + line : line);
        int index = inEntry ? 1 : 0;
        string read = note.Problems.Any(problem => problem.Line == index) ? "?" : MeaningPrinter.Print(note.Syntax.Lines[index]);
        return read.Length == 0 ? "-" : read;
    }

    private sealed partial record Row(string File, string Line, string[] Meant, string Read)
    {
        public bool AsMeant => Meant.Select(Plain).Contains(Plain(Read), StringComparer.OrdinalIgnoreCase);

        public override string ToString() => $"{File}: `{Line}` is read as `{Read}`, means `{string.Join("` or `", Meant)}`";

        /// <summary>
        /// The reading without what says nothing of its own: the order of words, a comma that keeps two of them from being read as one
        /// phrase, and "both" of eyes and ears that are written in the plural.
        /// </summary>
        private static string Plain(string reading) => string.Join(" | ", reading.ToLowerInvariant().Replace(",", "", StringComparison.Ordinal)
            .Replace("eye both ", "eye ", StringComparison.Ordinal).Replace("ear both ", "ear ", StringComparison.Ordinal).Split(" | ")
            .Select(item => string.Join(' ', Words().Matches(item).Select(match => match.Value).Order(StringComparer.Ordinal))));

        [GeneratedRegex("\"[^\"]*\"|no \\S+|\\S+ gone|\\S+")]
        private static partial Regex Words();
    }
}
