using System.Diagnostics;
using HealthNotes.Grammar.Syntax;

// How many lines a second the parser reads, compiled to native code as the product is. BenchmarkDotNet measures the same
// under the JIT. Usage: throughput NOTE [COPIES] [ROUNDS]; the best round counts, since everything else is the machine.
string one = File.ReadAllText(args[0]);
string text = string.Concat(Enumerable.Repeat(one, args.Length > 1 ? int.Parse(args[1]) : 1));
int rounds = args.Length > 2 ? int.Parse(args[2]) : 40;
double best = double.MaxValue;
long bytes = 0;
int lines = 0;
for (int round = 0; round < rounds; round++)
{
    long before = GC.GetAllocatedBytesForCurrentThread();
    long start = Stopwatch.GetTimestamp();
    lines = NoteSyntax.Parse(text).Lines.Length;
    best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalSeconds);
    bytes = GC.GetAllocatedBytesForCurrentThread() - before;
}

Console.WriteLine($"{lines} lines: {lines / best:N0} lines/s, {text.Length / best / 1e6:N1} MB/s, {bytes / lines} bytes allocated a line");
