using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;
using HealthNotes.Rendering;
using HealthNotes.Rendering.Pages;
using HealthNotes.Rendering.Sections;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Rendering;

/// <summary>Six notes of real patterns, each read as before a consultation.</summary>
public class SixNotesTests
{
    private const int MostWords = 60;
    private const double MostEmpty = 0.05;
    private static readonly DateOnly Today = new(2026, 11, 25);

    public static TheoryData<string> Notes => ["healthy-dog", "old-cat", "murmur", "four-lumps", "after-surgery", "diabetic-cat"];

    [Theory]
    [MemberData(nameof(Notes))]
    public void The_page_in_words(string name) => Snapshots.Match(VisitPage.Markdown(Of(name)), name);

    [Theory]
    [MemberData(nameof(Notes))]
    public void Five_lines_to_paste(string name)
    {
        string text = VisitPage.Plain(Of(name));
        Assert.Equal(5, text.Count(letter => letter == '\n'));
        Assert.DoesNotContain("  ", text, StringComparison.Ordinal);
        Assert.Contains(text.TrimEnd(), Page(name).QuerySelector("pre.copy")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Notes))]
    public void At_most_sixty_words_stand_before_the_first_problem(string name) => Assert.InRange(WordsBefore(Page(name)), 5, MostWords);

    [Theory]
    [MemberData(nameof(Notes))]
    public void Hardly_a_cell_is_empty(string name)
    {
        // the grid of days is a grid: nothing written is what an empty cell says
        IElement[] cells = [.. Page(name).QuerySelectorAll("tbody td, tbody th").Where(cell => cell.Closest("section.days") is null)];
        Assert.InRange(cells.Count(cell => cell.TextContent.Length == 0), 0, cells.Length * MostEmpty);
    }

    [Theory]
    [MemberData(nameof(Notes))]
    public void No_code_and_no_quoted_line_stands_above_the_appendix(string name)
    {
        IHtmlDocument page = Page(name);
        page.QuerySelector("section.appendix")!.Remove();
        foreach (IElement apart in page.QuerySelectorAll("pre.copy, section.not-understood, section.pictures").ToArray())
        {
            apart.Remove();
        }

        Assert.Empty(page.QuerySelectorAll("code"));
        Assert.DoesNotMatch(@"\b(L|R|LF|RF|LH|RH)-[a-z]", page.Body!.TextContent);
        Assert.DoesNotMatch(@"\bline \d", page.Body!.TextContent);
    }

    [Theory]
    [MemberData(nameof(Notes))]
    public void Every_problem_leads_to_its_lines_and_sources(string name)
    {
        IHtmlDocument page = Page(name);
        int sources = page.QuerySelectorAll("section.sources li").Length;
        foreach (IElement link in page.QuerySelectorAll("section.problems a"))
        {
            IElement detail = page.GetElementById(link.GetAttribute("href")![1..])!.ParentElement!;
            Assert.NotEmpty(detail.QuerySelectorAll("code"));
            string cited = detail.QuerySelectorAll("small")[^1].TextContent["Sources: ".Length..];
            Assert.All(cited.Split(", "), number => Assert.InRange(int.Parse(number, null), 1, sources));
        }
    }

    [Fact]
    public void A_nail_that_healed_last_year_is_not_a_reason_to_phone_and_the_page_is_short()
    {
        Assert.DoesNotContain(Of("healthy-dog").CurrentFindings, finding => finding.Level >= FindingLevel.Watch);
        IHtmlDocument page = Page("healthy-dog");
        Assert.Empty(page.QuerySelectorAll("ol.findings li"));
        Assert.Contains("No recorded value is out of range. This does not mean that the pet is healthy", page.Section("problems"), StringComparison.Ordinal);
        Assert.InRange(HeadSection.Words(page.Section("problems") + page.Section("measured") + page.Section("looked-at")), 40, 140);
    }

    [Fact]
    public void The_loss_of_an_old_cat_is_told_from_the_top_and_since_the_visit() =>
        Assert.Contains("4.3 (18 Jun 2025) → 3.61 (visit) → 3.49 kg (18 Nov), −19 % in 17 months, −3 % since the visit", Page("old-cat").Section("problems"), StringComparison.Ordinal);

    [Fact]
    public void The_clinics_limit_takes_the_place_of_the_general_range()
    {
        string breathing = Page("murmur").Section("problems");
        Assert.Contains("above the clinic's limit of 30 in 2 of 19 readings", breathing, StringComparison.Ordinal);
        Assert.DoesNotContain("reference range", breathing, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_four_lumps_the_one_that_grows_is_the_problem()
    {
        IHtmlDocument page = Page("four-lumps");
        Assert.StartsWith("SignificantLump 4, right hind thigh:", page.QuerySelector("ol.findings li")!.TextContent.Replace(" ", "", StringComparison.Ordinal).Replace("Lump4,righthindthigh", "Lump 4, right hind thigh", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Equal(4, page.QuerySelectorAll("section.body li").Count(item => item.TextContent.StartsWith("Lump", StringComparison.Ordinal)));
        Assert.Contains("no clear change", page.Section("body"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_doubled_dose_is_named_with_its_times() =>
        Assert.Contains("given twice on 15 Nov, at 06:50 and 08:10; missed 18 Nov", Page("after-surgery").Section("problems"), StringComparison.Ordinal);

    [Fact]
    public void What_the_clinic_ordered_and_is_not_done_stands_at_the_top()
    {
        Assert.Contains("glucose curve (only 3 values, 07:00 to 14:30) (9 Nov)", Page("diabetic-cat").Section("pet"), StringComparison.Ordinal);
        Assert.DoesNotContain("glucose curve done", Page("diabetic-cat").Section("pet"), StringComparison.Ordinal);
        Assert.Contains("lowest 3.6 on 9 Nov 13:00, 5 h 45 min after insulin", Page("diabetic-cat").Section("problems"), StringComparison.Ordinal);
        Assert.Contains("9 Nov | 2 units at 07:15; 2 units at 19:15 | 07:00 11.8 mmol/L before food; 13:00 3.6 mmol/L; 14:30 6.1 mmol/L", Page("diabetic-cat").Rows("days"));
    }

    [Fact]
    public void The_owner_reads_the_same_facts_with_what_to_do_and_the_cautions()
    {
        IHtmlDocument vet = Page("old-cat");
        IHtmlDocument owner = Page("old-cat", Audience.Owner);
        Assert.Equal(Facts(vet), Facts(owner));
        Assert.Contains("Phone the clinic", owner.Section("problems"), StringComparison.Ordinal);
        Assert.DoesNotContain("Significant", owner.Section("problems"), StringComparison.Ordinal);
        Assert.Contains("Phone the clinic about what is marked", owner.Section("next"), StringComparison.Ordinal);
        Assert.NotEmpty(owner.QuerySelectorAll("section.cautions li"));
        Assert.Empty(vet.QuerySelectorAll("section.cautions"));

        static string[] Facts(IHtmlDocument page) => [.. page.QuerySelectorAll("ol.findings li").Select(item => item.TextContent[(item.QuerySelector(".level")!.TextContent.Length)..].Trim())];
    }

    [Fact]
    public void Each_printed_sheet_says_whose_it_is()
    {
        string style = Page("healthy-dog").QuerySelector("style")!.TextContent;
        Assert.Contains("@bottom-left { content: \"Pepper \\0000B7 dog female\\00002C neutered \\0000B7 Chip 000000000000301 \\0000B7 the household at Mill Bend \\0000B7 notes 2025\\00002D11\\00002D02 to", style, StringComparison.Ordinal);
        Assert.Contains("counter(page) \" / \" counter(pages)", style, StringComparison.Ordinal);
    }

    /// <summary>Words above the first problem, but for the owner's questions and what the clinic said.</summary>
    internal static int WordsBefore(IHtmlDocument page)
    {
        string text = string.Join(' ', new[] { page.QuerySelector("h1"), page.QuerySelector(".intro"), page.QuerySelector("section.problems h2") }.Select(part => part!.TextContent)
            .Concat(page.QuerySelectorAll("section.pet > p, section.pet > ul").Select(part => part.TextContent)));
        return HeadSection.Words(text);
    }

    private static NoteAnalysis Of(string name) => NoteAnalysis.Of(Note.Read(File.ReadAllText(Repository.PathOf($"tests/Unit/Rendering/Six/{name}.hnote"))), Today);

    private static IHtmlDocument Page(string name, Audience reader = Audience.Vet) => new HtmlParser().ParseDocument(VisitPage.Html(Of(name), new PageOptions { For = reader }));
}
