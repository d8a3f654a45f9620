using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using HealthNotes.Features.Actions;
using HealthNotes.Rendering;
using HealthNotes.Rendering.Sheet;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Rendering.Sheet;

/// <summary>The check sheet: the same items in the same order as the entry that is typed from it.</summary>
public class CheckSheetTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    public static TheoryData<string> Samples => [.. Directory.EnumerateFiles(Repository.PathOf("samples"), "*.hnote").Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Samples))]
    public void What_is_on_paper_is_what_is_typed(string sample)
    {
        var document = HealthNotes.Features.Documents.Document.Open("file:///a.hnote", 1, File.ReadAllText(Repository.PathOf("samples/" + sample)), Today);
        IHtmlDocument sheet = Parsed(CheckSheet.Html(document.Analysis, Paper.A4));
        string[] onPaper = [.. sheet.QuerySelectorAll("table.list tbody code").Select(code => code.TextContent)];
        string[] typed = [.. CheckEdits.AddCheckForToday(document).Edit!.NewText.Split('\n').Select(line => line.Trim()).Where(line => line.StartsWith("# ", StringComparison.Ordinal)).Skip(1).Select(line => line[2..])];
        Assert.Equal(onPaper, typed.Take(onPaper.Length));
        string[] places = [.. typed.Skip(onPaper.Length).SkipLast(1)];
        Assert.Equal(Math.Min(8, places.Length), sheet.QuerySelectorAll(".places tbody tr").Count(row => row.Children[1].TextContent.Length > 0));
        Assert.Equal("else ok", typed[^1]);
    }

    [Fact]
    public void Known_values_ranges_and_lumps_are_on_it()
    {
        IHtmlDocument sheet = Parsed(CheckSheet.Html(Analyse(Pages.Check), Paper.A4));
        string list = sheet.QuerySelector("table.list")!.TextContent;
        Assert.Contains("usual 16 to 24 a minute (vet); normal 6 to 25 a minute", list, StringComparison.Ordinal);
        Assert.Contains("36 a minute 2026-10-04", list, StringComparison.Ordinal);
        string places = sheet.QuerySelector(".places")!.TextContent;
        Assert.Contains("lump left flank12 × 9 mm 2026-10-04", places, StringComparison.Ordinal);
        Assert.Contains("lump right gland 3 @lower", places, StringComparison.Ordinal);
        Assert.Contains("hnote new check", sheet.QuerySelector(".typing")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Phone now", sheet.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal(4, sheet.QuerySelectorAll("svg.body-map").Length);
    }

    /// <summary>A count in 15 seconds times 4 is a minute's: Merck Veterinary Manual, physical examination (from memory).</summary>
    [Fact]
    public void The_counting_table_is_right()
    {
        IElement[] rows = [.. Parsed(CheckSheet.Html(Analyse("pet A\nspecies cat\n"), Paper.Letter)).QuerySelectorAll("table.counting tr")];
        int[] counts = [.. rows.Where((_, i) => i % 2 == 0).SelectMany(Numbers)];
        int[] minutes = [.. rows.Where((_, i) => i % 2 == 1).SelectMany(Numbers)];
        Assert.Equal(Enumerable.Range(2, 60), counts);
        Assert.Equal(counts.Select(count => count * 4), minutes);
    }

    [Fact]
    public void What_cannot_wait_is_told_for_the_animal()
    {
        string dog = CheckSheet.Html(Analyse("pet A\nspecies dog\nsex male\n"), Paper.A4);
        string cat = CheckSheet.Html(Analyse("pet A\nspecies cat\nsex male\n"), Paper.A4);
        string queen = CheckSheet.Html(Analyse("pet A\nspecies cat\nsex female\n"), Paper.A4);
        Assert.Contains("Heaving with nothing coming up", dog, StringComparison.Ordinal);
        Assert.DoesNotContain("Heaving with nothing coming up", cat, StringComparison.Ordinal);
        Assert.Contains("Straining to pass urine", cat, StringComparison.Ordinal);
        Assert.DoesNotContain("Straining to pass urine", queen, StringComparison.Ordinal);
    }

    [Fact]
    public void Hostile_text_stays_text_and_many_lumps_stay_few()
    {
        const string Attack = "<script>alert(1)</script>";
        string lumps = string.Concat(Enumerable.Range(0, 30).Select(n => $"  lump L-flank @t{n} 9mm\n"));
        IHtmlDocument sheet = Parsed(CheckSheet.Html(Analyse($"pet {Attack}\nknown {Attack}\nclinic {Attack}\nphone {Attack}\n2026-10-01 check\n  ear L odour # {Attack}\n{lumps}"), Paper.A4));
        Assert.Empty(sheet.QuerySelectorAll("script, img, [style], [onload]"));
        Assert.StartsWith(Attack[..20], sheet.QuerySelector("h1")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(9, sheet.QuerySelectorAll(".places tbody tr").Length);
        Assert.Contains("22 more are in the notes.", sheet.QuerySelector(".places")!.TextContent, StringComparison.Ordinal);
    }

    private static IEnumerable<int> Numbers(IElement row) => row.QuerySelectorAll("td").Select(cell => int.Parse(cell.TextContent, System.Globalization.CultureInfo.InvariantCulture));

    private static HealthNotes.Analysis.NoteAnalysis Analyse(string note) => HealthNotes.Analysis.NoteAnalysis.Of(HealthNotes.Grammar.Notes.Note.Read(note), Today);

    private static IHtmlDocument Parsed(string html) => new HtmlParser().ParseDocument(html);
}
