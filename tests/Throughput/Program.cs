using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Parsing;

// What the parser and the analysis do in a second, compiled to native code as the product is. BenchmarkDotNet measures the same
// under the JIT. Usage: throughput NOTE [COPIES] [ROUNDS] reads; throughput analysis NOTE [COPIES...] works out and edits.
// The best round counts, since everything else is the machine.
if (args[0] == "analysis")
{
    Analysis.Measure(File.ReadAllText(args[1]), args.Length > 2 ? [.. args[2..].Select(copies => int.Parse(copies, CultureInfo.InvariantCulture))] : [1, 4, 36]);
    return;
}

string one = File.ReadAllText(args[0]);
string text = string.Concat(Enumerable.Repeat(one, args.Length > 1 ? int.Parse(args[1]) : 1));
int rounds = args.Length > 2 ? int.Parse(args[2]) : 40;
double best = double.MaxValue;
long bytes = 0;
int lines = 0;
for (int round = 0; round < rounds; round++)
{
    long before = GC.GetTotalAllocatedBytes(precise: true);
    long start = Stopwatch.GetTimestamp();
    lines = NoteSyntax.Parse(text).Lines.Length;
    best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalSeconds);
    bytes = GC.GetTotalAllocatedBytes(precise: true) - before;
}

Console.WriteLine($"{lines} lines: {lines / best:N0} lines/s, {text.Length / best / 1e6:N1} MB/s, {bytes / lines} bytes allocated a line");

/// <summary>A full analysis, and the analysis after one edit, of a note of four years and of many such years.</summary>
internal static partial class Analysis
{
    private const int Rounds = 5;
    private const int Edits = 101;
    private const int YearsACopy = 4;

    public static void Measure(string note, int[] copies)
    {
        Console.WriteLine("lines      full ms   a line µs   edit ms: last reading   in the middle   free text   findings");
        foreach (int count in copies)
        {
            Document document = Open(Repeated(note, count));
            double full = Best(Rounds, () => _ = Open(document.Syntax.Print()).Analysis.FindingCount);
            string[] lines = [.. document.Syntax.Lines.Select(line => line.Text)];
            int last = Array.FindLastIndex(lines, line => line.TrimStart().StartsWith("rr ", StringComparison.Ordinal));
            int middle = Array.FindIndex(lines, lines.Length / 2, line => line.TrimStart().StartsWith("rr ", StringComparison.Ordinal));
            int free = Array.FindLastIndex(lines, line => line.TrimStart().StartsWith('>'));
            _ = document.Analysis.FindingCount;
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{lines.Length,-9} {full,8:N1} {full * 1000 / lines.Length,11:N1} {Edited(ref document, last, "  rr 17/60s asleep", "  rr 18/60s asleep"),22:N2} {Edited(ref document, middle, "  rr 17/60s asleep", "  rr 18/60s asleep"),15:N2} {Edited(ref document, free, "  > quiet", "  > quiet day"),11:N2} {document.Analysis.FindingCount,10}"));
        }
    }

    /// <summary>The median time from an edit to its findings.</summary>
    private static double Edited(ref Document document, int line, params string[] texts)
    {
        var times = new List<double>();
        for (int edit = 0; edit < Edits; edit++)
        {
            long start = Stopwatch.GetTimestamp();
            var range = new PlaceRange(new Place(line, 0), new Place(line, int.MaxValue));
            document = document.Edit(new DocumentEdit(range, texts[edit % texts.Length]), document.Version + 1);
            _ = document.Analysis.FindingCount;
            times.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        times.Sort();
        return times[Edits / 2];
    }

    private static double Best(int rounds, Action work)
    {
        double best = double.MaxValue;
        for (int round = 0; round < rounds; round++)
        {
            long start = Stopwatch.GetTimestamp();
            work();
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        return best;
    }

    /// <summary>The opening, then the entries again and again, each time some years earlier, the latest last.</summary>
    private static string Repeated(string note, int copies)
    {
        int first = Entry().Match(note).Index;
        return note[..first] + string.Concat(Enumerable.Range(0, copies).Select(copy => Entry().Replace(note[first..].TrimEnd() + "\n\n", match =>
        {
            var day = DateOnly.ParseExact(match.Value, "yyyy-MM-dd", CultureInfo.InvariantCulture);
            return day.AddYears(-YearsACopy * (copies - 1 - copy)).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        })));
    }

    private static Document Open(string text) => Document.Open("file:///a.hnote", 1, text, new DateOnly(2026, 11, 25));

    [GeneratedRegex("(?m)^[0-9]{4}-[0-9]{2}-[0-9]{2}")]
    private static partial Regex Entry();
}
