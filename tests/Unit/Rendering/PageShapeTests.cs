using AngleSharp.Dom;
using AngleSharp.Html.Dom;

namespace HealthNotes.Tests.Rendering;

/// <summary>The page as a document: landmarks, outline, tables, size.</summary>
public class PageShapeTests
{
    private readonly IHtmlDocument page = Pages.Document(Pages.Check);

    [Fact]
    public void It_says_its_language_and_title_and_fits_a_phone()
    {
        Assert.Equal("en", page.DocumentElement.GetAttribute("lang"));
        Assert.Equal("Marlow: visit page, 2026-10-05", page.Title);
        Assert.NotNull(page.QuerySelector("meta[name=viewport]"));
    }

    [Fact]
    public void Every_section_is_named_by_its_heading() =>
        Assert.All(page.QuerySelectorAll("section"), section => Assert.StartsWith("H", page.GetElementById(section.GetAttribute("aria-labelledby")!)!.TagName, StringComparison.Ordinal));

    [Fact]
    public void Tables_have_captions_and_scopes()
    {
        Assert.NotEmpty(page.QuerySelectorAll("table"));
        Assert.All(page.QuerySelectorAll("table"), table => Assert.NotNull(table.QuerySelector("caption")));
        Assert.All(page.QuerySelectorAll("th"), header => Assert.Contains(header.GetAttribute("scope"), new[] { "col", "row" }));
    }

    [Fact]
    public void Levels_are_words_in_a_shape()
    {
        IHtmlCollection<IElement> levels = page.QuerySelectorAll(".level");
        Assert.NotEmpty(levels);
        Assert.All(levels, level => Assert.Contains(level.TextContent, new[] { "Urgent", "Significant", "Out of range or changed", "Noted" }));
    }

    [Fact]
    public void A_note_of_twenty_thousand_lines_makes_a_page_of_bounded_size()
    {
        var lines = new System.Text.StringBuilder("pet A\nspecies dog\nborn 2017-03\n2026-09-01 check\n  alert bright\n");
        for (int i = 0; i < 5_000; i++)
        {
            lines.Append("2026-09-").Append((i % 28 + 1).ToString("00")).Append(" log\n  07:30 gave benazepril 5mg | `x`\n  > *free* text | of the day\n  nonsense ").Append(i).Append('\n');
        }

        string html = Pages.Html(lines.ToString());
        Assert.InRange(html.Length, 10_000, 400_000);
    }

    [Fact]
    public void One_very_long_line_is_clipped_and_says_how_long_it_was()
    {
        string html = Pages.Html("pet A\n2026-10-01 check\n  " + new string('x', 1_000_000) + "\n");
        Assert.InRange(html.Length, 5_000, 100_000);
        Assert.Contains("(1,000,000 characters)", html);
    }
}
