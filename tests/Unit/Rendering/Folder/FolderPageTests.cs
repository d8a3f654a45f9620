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
        Assert.Contains("2026-10-18 (in 13 days): Look again at ear left", pets[0].TextContent, StringComparison.Ordinal);
        Assert.Contains("This does not mean that the pet is healthy.", pets[1].TextContent, StringComparison.Ordinal);
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
        Assert.Contains("- **Phone now** **Mouth and gums:** gums white (4 Oct)", text, StringComparison.Ordinal);
        Assert.Contains("### Due\n\n- 2026-10-18 (in 13 days): Look again at ear left\n", text, StringComparison.Ordinal);
    }

    private static NoteAnalysis Of(string note) => NoteAnalysis.Of(Note.Read(note), Today);

    private static IHtmlDocument Page(params FolderNote[] notes) => new HtmlParser().ParseDocument(FolderPage.Html(notes, Today));
}
