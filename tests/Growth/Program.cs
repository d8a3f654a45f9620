using System.Diagnostics;
using System.Globalization;
using HealthNotes.Analysis;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Due;
using HealthNotes.Rendering;

// How time grows with the length of a note, a kind of line at a time: a note of many such lines, and one of twice as many.
// Usage: growth [LINES] [PART OF A NAME]. A ratio of 2 is a straight line, of 4 a square. What would take too long is not run to its end.
int most = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 16_000;
string wanted = args.Length > 1 ? args[1] : "";
Console.WriteLine($"{"kind of line",-26} {"step",-9} {$"{most / 2:N0}",9} {$"{most:N0}",9}   ratio");
foreach ((string name, Func<int, string> line, bool inOpening) in Kinds.All.Where(kind => kind.Name.Contains(wanted, StringComparison.OrdinalIgnoreCase)))
{
    var today = new DateOnly(2026, 11, 25);
    foreach ((string step, Action<string> work) in new (string, Action<string>)[]
    {
        ("analysis", text => _ = NoteAnalysis.Of(Note.Read(text), today).Findings),
        ("due", text => _ = DueList.Of(NoteAnalysis.Of(Note.Read(text), today).Record)),
        ("page", text => _ = VisitPage.Markdown(NoteAnalysis.Of(Note.Read(text), today))),
        ("edit", text =>
        {
            var document = Document.Open("file:///a.hnote", 1, text, today);
            _ = document.Analysis;
            Place end = new(document.Syntax.Lines.Length - 1, 0);
            _ = document.Edit(new DocumentEdit(new PlaceRange(end, end), "  hr 18/15s\n"), 2).Analysis;
        }),
    })
    {
        // a first measure of a quarter tells what the whole would take
        double quarter = Kinds.Seconds(Kinds.NoteOf(line, most / 4, inOpening), work);
        if (quarter > Kinds.MostSeconds)
        {
            Console.WriteLine($"{name,-26} {step,-9} {"",9} {"",9}   {most / 4:N0} lines take {quarter:0.0} s already");
            continue;
        }

        double half = Kinds.Seconds(Kinds.NoteOf(line, most / 2, inOpening), work);
        double whole = half > 4 * Kinds.MostSeconds ? double.NaN : Kinds.Seconds(Kinds.NoteOf(line, most, inOpening), work);
        double ratio = whole / half;
        Console.WriteLine($"{name,-26} {step,-9} {half,7:0.00} s {whole,7:0.00} s   {ratio:0.0}{(ratio > 2.8 && whole > 0.3 ? "  grows faster than the note" : "")}");
    }
}

/// <summary>The kinds of line: every word a line can start with, and pairs that work on one another.</summary>
internal static class Kinds
{
    public const double MostSeconds = 5;

    public static IEnumerable<(string Name, Func<int, string> Line, bool InOpening)> All => Pairs.Concat(
        NoteVocabulary.Default.LineWords.Terms.Select(word => (word.Word, Example(word), word.Kind == WordKind.Fact)));

    private static (string Name, Func<int, string> Line, bool InOpening)[] Pairs =>
    [
        ("distinct med", i => $"med drug{i} 5mg every 24h", true),
        ("med with stop", i => i % 2 == 0 ? $"med drug{i} 5mg every 24h" : $"stop drug{i - 1}", false),
        ("call-if with rr", i => i % 2 == 0 ? $"call-if rr asleep >{30 + (i % 40)} per vet 2026-01-20" : "rr 8/30s asleep", false),
        ("known with skin", i => i % 2 == 0 ? $"known condition{i}" : "skin L-flank red", false),
        ("accept with lumps", i => i % 2 == 0 ? "accept lump-sample lump L-flank until 2027-03-01" : $"lump L-flank @t{i} 12mm", false),
        ("tags with lumps", i => $"lump L-flank @t{i} {10 + (i % 9)}mm", false),
        ("seizures in a day", _ => "seizure 1min", false),
        ("skin at many sites", i => $"skin {Site(i)} red", false),
        ("pain-site at many sites", i => $"pain-site {Site(i)} sore", false),
        ("due with done", i => i % 2 == 0 ? $"due topic{i} 2026-12-01" : $"done topic{i - 1}", false),
        ("free text", i => $"> He slept on mat {i}.", false),
        ("not understood", i => $"gumz pink {i}", false),
    ];

    private static readonly string[] Sites = [.. NoteVocabulary.Default.Regions.Terms.Select(region => region.Word)];

    public static string NoteOf(Func<int, string> line, int lines, bool inOpening)
    {
        const string Opening = "pet Marlow\nspecies dog\nborn 2017-03\nadult-weight 27kg\n";
        string all = string.Concat(Enumerable.Range(0, lines).Select(i => (inOpening ? "" : "  ") + line(i) + "\n"));
        return inOpening ? Opening + all + "2026-11-20 check\n  hr 18/15s\n" : Opening + "2026-11-20 visit\n" + all;
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
