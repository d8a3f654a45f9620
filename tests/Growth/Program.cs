using System.Diagnostics;
using System.Globalization;
using HealthNotes.Analysis;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Rendering.Pages;

// How time grows with the length of a note, a kind of line at a time: a note of many such lines beside one of half as many. Two is a
// straight line, four a square. Ends with 1 when a kind grows faster than the note in each of three tries.
// Usage: growth [LINES] [PART OF A NAME]; the part of a name "pairs" takes every pair of words, in notes of half the lines.
int most = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 16_000;
string wanted = args.Length > 1 ? args[1] : "";
bool pairs = wanted == "pairs";
most = pairs ? most / 2 : most;
var today = new DateOnly(2026, 11, 25);
(string Name, Action<string> Run)[] steps =
[
    ("edit", text =>
    {
        var document = Document.Open("file:///a.hnote", 1, text, today);
        _ = document.Analysis;
        Place end = new(document.Syntax.Lines.Length - 1, 0);
        _ = document.Edit(new DocumentEdit(new PlaceRange(end, end), "  hr 18/15s\n"), 2).Analysis;
    }),
    ("page", text => _ = VisitPage.Markdown(NoteAnalysis.Of(Note.Read(text), today))),
];
Kind[] kinds = pairs ? [.. Kinds.EveryPair] : [.. Kinds.All.Where(kind => kind.Name.Contains(wanted, StringComparison.OrdinalIgnoreCase))];
Array.ForEach(steps, step => step.Run(Kinds.NoteOf(kinds[0], 200)));
Console.WriteLine($"{"kind of line",-30} {"step",-5} {$"{most / 2:N0}",9} {$"{most:N0}",9}   ratio");
int bad = 0;
foreach (Kind kind in kinds)
{
    foreach ((string step, Action<string> work) in pairs ? steps[..1] : steps)
    {
        var (half, whole) = (double.MaxValue, double.MaxValue);
        bool faster = true;
        for (int again = 0; again < 3 && faster; again++)
        {
            half = Math.Min(half, Kinds.Seconds(Kinds.NoteOf(kind, most / 2), work));
            whole = half > Kinds.MostSeconds ? double.PositiveInfinity : Math.Min(whole, Kinds.Seconds(Kinds.NoteOf(kind, most), work));
            faster = whole > Kinds.FewestSeconds && whole > Kinds.MostRatio * half;
        }

        bad += faster ? 1 : 0;
        if (!pairs || faster)
        {
            Console.WriteLine($"{kind.Name,-30} {step,-5} {half,7:0.00} s {whole,7:0.00} s   {whole / half:0.0}{(faster ? "  grows faster than the note" : "")}");
        }
    }
}

Console.WriteLine($"{kinds.Length} kinds of line, {bad} of their steps grow faster than the note.");
return bad == 0 ? 0 : 1;

/// <summary>A kind of line.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Line">The line by its place in the note.</param>
/// <param name="InOpening">True where it belongs into the opening.</param>
internal sealed record Kind(string Name, Func<int, string> Line, bool InOpening);

/// <summary>The kinds of line: every word a line can start with, and pairs that work on one another.</summary>
internal static class Kinds
{
    public const double MostSeconds = 5;
    public const double FewestSeconds = 0.2;
    public const double MostRatio = 2.8;

    public static IEnumerable<Kind> All => Several.Concat(Words);

    /// <summary>Every word beside every other, in turn, in a visit.</summary>
    public static IEnumerable<Kind> EveryPair =>
        from one in Words
        from other in Words
        where string.CompareOrdinal(one.Name, other.Name) < 0
        select new Kind($"{one.Name} + {other.Name}", i => i % 2 == 0 ? one.Line(i) : other.Line(i), false);

    private static IEnumerable<Kind> Words => NoteVocabulary.Default.LineWords.Terms.Select(word => new Kind(word.Word, Example(word), word.Kind == WordKind.Fact));

    private static Kind[] Several =>
    [
        new("distinct med", i => $"med drug{i} 5mg every 24h", true),
        new("med with stop", i => i % 2 == 0 ? $"med drug{i} 5mg every 24h" : $"stop drug{i - 1}", false),
        new("call-if with rr", i => i % 2 == 0 ? $"call-if rr asleep >{30 + (i % 40)} per vet 2026-01-20" : "rr 8/30s asleep", false),
        new("known with skin", i => i % 2 == 0 ? $"known condition{i}" : "skin L-flank red", false),
        new("accept with lumps", i => i % 2 == 0 ? "accept lump-sample lump L-flank until 2027-03-01" : $"lump L-flank @t{i} 12mm", false),
        new("tags with lumps", i => $"lump L-flank @t{i} {10 + (i % 9)}mm", false),
        new("seizures in a day", _ => "seizure 1min", false),
        new("skin at many sites", i => $"skin {Site(i)} red", false),
        new("pain-site at many sites", i => $"pain-site {Site(i)} sore", false),
        new("due with done", i => i % 2 == 0 ? $"due topic{i} 2026-12-01" : $"done topic{i - 1}", false),
        new("free text", i => $"> He slept on mat {i}.", false),
        new("not understood", i => $"gumz pink {i}", false),
    ];

    private static readonly string[] Sites = [.. NoteVocabulary.Default.Regions.Terms.Select(region => region.Word)];

    public static string NoteOf(Kind kind, int lines)
    {
        const string Opening = "pet Marlow\nspecies dog\nborn 2017-03\nadult-weight 27kg\n";
        string all = string.Concat(Enumerable.Range(0, lines).Select(i => (kind.InOpening ? "" : "  ") + kind.Line(i) + "\n"));
        return kind.InOpening ? Opening + all + "2026-11-20 check\n  hr 18/15s\n" : Opening + "2026-11-20 visit\n" + all;
    }

    public static double Seconds(string text, Action<string> work)
    {
        long start = Stopwatch.GetTimestamp();
        work(text);
        return Stopwatch.GetElapsedTime(start).TotalSeconds;
    }

    private static string Site(int i) => Sites[i % Sites.Length];

    /// <summary>A line that the word's own slots read; its number changes from line to line.</summary>
    private static Func<int, string> Example(LineWord word) => word.Word switch
    {
        "accept" => _ => "accept lump-sample lump L-flank until 2027-03-01",
        "usual" => i => $"usual rr {16 + (i % 5)}-{24 + (i % 5)} asleep per vet",
        "call-if" => i => $"call-if rr asleep >{32 + (i % 9)} per vet",
        "expect" => _ => "expect wound swollen until 2026-12-09",
        "recheck" => i => $"recheck ear L in {1 + (i % 9)}w",
        "due" => i => $"due topic{i} 2026-12-01",
        "skip" => _ => "skip ear refused",
        "else" => _ => "else ok",
        "photo" => i => $"photo a{i}.jpg",
        "hr" or "rr" => i => $"{word.Word} {12 + (i % 9)}/15s",
        "temp" => i => $"temp 38.{i % 9}C",
        "weight" or "adult-weight" => i => $"{word.Word} 2{i % 9}.4kg",
        "crt" => _ => "crt 1.5s",
        "glucose" => i => $"glucose {5 + (i % 9)}mmol/L",
        "bp" => i => $"bp {140 + (i % 20)}/90",
        "bcs" or "mcs" or "pain" or "lameness" or "murmur" or "dental" => i => $"{word.Word} {i % 3}/{(word.Word == "bcs" ? 9 : word.Word == "mcs" ? 3 : word.Word == "pain" ? 10 : word.Word == "dental" ? 4 : word.Word == "murmur" ? 6 : 5)}",
        "med" or "gave" or "missed" or "stop" => i => $"{word.Word} benazepril{(word.Word == "stop" ? "" : " 5mg")}",
        "lab" => i => $"lab creatinine {100 + (i % 20)}umol/L",
        "girth" => i => $"girth {40 + (i % 9)}cm",
        "node" or "lump" or "wound" or "gland" => i => $"{word.Word} L-{(word.Word == "node" ? "jaw" : word.Word == "gland" ? "gland2" : "flank")} {10 + (i % 9)}mm",
        "tooth" => _ => "tooth 208 tartar",
        "water" => i => $"water {400 + (i % 90)}ml",
        "born" => _ => "born 2017-03",
        "species" => _ => "species dog",
        "sex" => _ => "sex male neutered",
        "units" => _ => "units us",
        "home-check" => _ => "home-check every 30d",
        "vaccine" or "flea-tick" or "worming" => _ => $"{word.Word} 2026-08-01 for 12w",
        "stitches" => _ => "stitches 13/14 clean",
        "walk" => i => $"walk {10 + (i % 40)}min",
        _ when word.Takes.Any(take => take.Kind == SlotKind.Text) => i => $"{word.Word} words {i}",
        _ when word.Takes.Any(take => take.Kind == SlotKind.Ok) => _ => $"{word.Word} ok",
        _ => i => $"{word.Word} {i % 5}x",
    };
}
