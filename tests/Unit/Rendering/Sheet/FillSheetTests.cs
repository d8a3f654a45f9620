using System.Security.Cryptography;
using System.Text;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using HealthNotes.Analysis;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Checks;
using HealthNotes.Rendering.Sheet;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Rendering.Sheet;

/// <summary>The check to fill in on a phone. What its script writes is tried in a browser.</summary>
public class FillSheetTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    private static NoteAnalysis Analysed(string text) => NoteAnalysis.Of(Note.Read(text), Today);

    private static IHtmlDocument Parsed(NoteAnalysis analysis) => new HtmlParser().ParseDocument(FillSheet.Html(analysis));

    [Fact]
    public void It_asks_for_all_that_the_check_sheet_asks_for()
    {
        NoteAnalysis analysis = Analysed(File.ReadAllText(Repository.PathOf("samples/marlow.hnote")));
        string[] expected = [.. CheckPlan.Of(analysis.Record).LineStarts.Select(start => start == "rr asleep" ? "rr" : start)];
        Assert.Equal(expected, Parsed(analysis).QuerySelectorAll("section[data-start]").Select(part => part.GetAttribute("data-start")));
    }

    [Fact]
    public void Only_its_own_script_may_run_and_nothing_is_requested()
    {
        IHtmlDocument page = Parsed(Analysed("pet <script>alert(1)</script>\nspecies dog\n2026-11-20 check\n  lump L-flank @</section><script>x</script> 12mm\n"));
        IElement script = Assert.Single(page.QuerySelectorAll("script"));
        string hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script.TextContent)));
        string policy = page.QuerySelector("meta[http-equiv]")!.GetAttribute("content")!;
        Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.Contains($"script-src 'sha256-{hash}'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Empty(page.QuerySelectorAll("link, iframe, form, [src], [onclick]"));
        Assert.All(page.QuerySelectorAll("a"), link => Assert.StartsWith("tel:", link.GetAttribute("href"), StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("dog", "weight", "kg")]
    [InlineData("dog\nunits us", "weight", "lb")]
    [InlineData("dog\nunits us", "temp", "F")]
    [InlineData("cat", "bcs", "/9")]
    public void A_number_has_the_unit_of_the_note(string species, string word, string unit) =>
        Assert.Equal(unit, Parsed(Analysed($"pet M\nspecies {species}\n")).QuerySelector($"section[data-start='{word}'] .n")!.GetAttribute("data-unit"));

    [Fact]
    public void Every_word_that_is_tapped_is_read_behind_its_part() => None.Wrong(
        from part in Parsed(Analysed("pet M\nspecies dog\n")).QuerySelectorAll("section.part[data-start]")
        from chip in part.QuerySelectorAll(".words button")
        let line = $"{part.GetAttribute("data-start")} {chip.TextContent}"
        where Note.Read($"pet M\nspecies dog\n2026-11-25 check\n  {line}\n").Entries[0].Items.IsEmpty
        select line);
}
