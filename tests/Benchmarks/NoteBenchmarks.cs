using System.Runtime.CompilerServices;
using BenchmarkDotNet.Attributes;
using HealthNotes.Analysis;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Rendering.Pages;

namespace HealthNotes.Benchmarks;

/// <summary>What each step costs on the sample of four years; the mean divided by its lines is the cost of a line.</summary>
[MemoryDiagnoser]
public class NoteBenchmarks
{
    private static readonly DateOnly Today = new(2026, 11, 25);
    private string text = "";
    private NoteSyntax syntax = null!;
    private Note note = null!;
    private NoteAnalysis analysis = null!;

    [GlobalSetup]
    public void Setup()
    {
        text = File.ReadAllText(Sample());
        syntax = NoteSyntax.Parse(text);
        note = Note.Read(syntax, NoteVocabulary.Default);
        analysis = NoteAnalysis.Of(note, Today);
        Console.WriteLine($"// {syntax.Lines.Length} lines, {text.Length} characters");
    }

    [Benchmark(Baseline = true)]
    public NoteSyntax Parse() => NoteSyntax.Parse(text);

    [Benchmark]
    public NoteSyntax ReadOneChangedLineAgain() => syntax.WithLines(1_000, 1, "  hr 19/15s\n");

    [Benchmark]
    public Note Type() => Note.Read(syntax, NoteVocabulary.Default);

    [Benchmark]
    public NoteAnalysis Analyse() => NoteAnalysis.Of(note, Today);

    [Benchmark]
    public string Page() => VisitPage.Html(analysis);

    /// <summary>The path of the sample.</summary>
    internal static string Sample([CallerFilePath] string here = "") =>
        Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "samples", "marlow.hnote");
}
