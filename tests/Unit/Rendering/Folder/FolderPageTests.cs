using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using HealthNotes.Analysis;
using HealthNotes.Grammar.Notes;
using HealthNotes.Rendering.Folder;

namespace HealthNotes.Tests.Rendering.Folder;

/// <summary>The index of a folder: each pet, what needs attention, what is due.</summary>
public class FolderPageTests
{
    private static readonly DateOnly Today = new(2026, 10, 5);

    [Fact]
    public void Each_pet_has_what_needs_attention_what_is_due_and_a_link()
    {
        IHtmlDocument page = Page(new FolderNote("dogs/marlow.hnote", "dogs/marlow.html", Of(Pages.Check), null), new FolderNote("b.hnote", "b.html", Of("pet B\nspecies cat\n"), null));
        IElement[] pets = [.. page.QuerySelectorAll("section.pet-of-folder")];
        Assert.Equal(["Marlow", "B"], pets.Select(pet => pet.QuerySelector("h2")!.TextContent));
        Assert.Equal("dogs/marlow.html", pets[0].QuerySelector("a")!.GetAttribute("href"));
        Assert.Contains("Phone the clinic", pets[0].TextContent, StringComparison.Ordinal);
        Assert.Equal(3, pets[0].QuerySelectorAll(".findings > li").Length);
        Assert.Contains("Look again at left ear: in 13 days, 18 Oct", pets[0].TextContent, StringComparison.Ordinal);
        Assert.Contains("This does not mean that the pet is healthy.", pets[1].TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Overdue_orders_and_visits_lead_and_stand_once()
    {
        IHtmlDocument page = Page(
            new FolderNote("a.hnote", "a.html", Of("pet A\nspecies dog\nborn 2020\ndue booster 2026-10-04\nhome-check every 7d\n2026-09-01 check\n  weight 10kg\n"), null),
            new FolderNote("b.hnote", "b.html", Of("pet B\nspecies dog\nborn 2020\n2024-09-01 visit\n  weight 10kg\n2026-10-01 visit\n  recheck lump R-armpit on 2026-10-03\n  recheck gait in 3w\n"), null));
        IElement first = page.QuerySelector("main section")!;
        Assert.Equal(["B: Look again at lump, right armpit: due 3 Oct, 2 days ago", "A: booster: due yesterday"], first.QuerySelectorAll("li").Select(line => line.TextContent));
        Assert.Equal("#pet-2", first.QuerySelector("li a")!.GetAttribute("href"));
        Assert.DoesNotContain("booster", page.QuerySelector("section.pet-of-folder")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Next home check (every 7 days): due 8 Sep, 27 days ago", page.QuerySelector("section.pet-of-folder")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_note_that_could_not_be_read_is_listed_with_its_reason()
    {
        IHtmlDocument page = Page(new FolderNote("c.hnote", null, null, "it is not text"));
        Assert.Contains("This note could not be read: it is not text.", page.QuerySelector("section.pet-of-folder")!.TextContent, StringComparison.Ordinal);
        Assert.Empty(page.QuerySelectorAll("a"));
    }

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\" onmouseover=\"alert(1)")]
    public void Names_stay_text(string attack)
    {
        IHtmlDocument page = Page(new FolderNote(attack, Uri.EscapeDataString(attack), Of($"pet {attack}\n"), null));
        Assert.Empty(page.QuerySelectorAll("script, [onmouseover]"));
        Assert.Equal(attack, page.QuerySelector("h2")!.TextContent);
    }

    [Fact]
    public void As_markdown_it_reads_as_plain_text()
    {
        string text = FolderPage.Markdown([new FolderNote("b.hnote", "b.md", Of("pet B\nspecies cat\n2026-10-04 check\n  gums white\n  recheck ear L in 2w\n"), null)], Today);
        Assert.StartsWith("# Health notes\n\nOne note, as read on 2026-10-05.\n\n## [B](b.md)\n", text, StringComparison.Ordinal);
        Assert.Contains("- **Phone now** · **Mouth and gums:** gums: white (4 Oct)", text, StringComparison.Ordinal);
        Assert.Contains("### Due\n\n- Look again at left ear: in 13 days, 18 Oct\n", text, StringComparison.Ordinal);
    }

    private static NoteAnalysis Of(string note) => NoteAnalysis.Of(Note.Read(note), Today);

    private static IHtmlDocument Page(params FolderNote[] notes) => new HtmlParser().ParseDocument(FolderPage.Html(notes, Today));
}
