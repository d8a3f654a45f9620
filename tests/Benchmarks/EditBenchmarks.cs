using BenchmarkDotNet.Attributes;
using HealthNotes.Analysis;
using HealthNotes.Features.Documents;

namespace HealthNotes.Benchmarks;

/// <summary>What an edit costs on the sample of four years, beside reading the whole note. A new line moves every line below it.</summary>
[MemoryDiagnoser]
public class EditBenchmarks
{
    private const int Middle = 1_400;
    private string text = "";
    private Document document = null!;

    [GlobalSetup]
    public void Setup()
    {
        text = File.ReadAllText(NoteBenchmarks.Sample());
        document = Open();
        _ = document.Analysis;
    }

    [Benchmark(Baseline = true)]
    public NoteAnalysis ReadAll() => Open().Analysis;

    [Benchmark]
    public NoteAnalysis TypeInALine() => document.Edit(DocumentEdit.Insert(Middle, 0, " "), 2).Analysis;

    [Benchmark]
    public NoteAnalysis PutALineInTheMiddle() => document.Edit(DocumentEdit.Insert(Middle, 0, "  alert bright\n"), 2).Analysis;

    private Document Open() => Document.Open("file:///note", 1, text, new DateOnly(2026, 11, 25));
}
