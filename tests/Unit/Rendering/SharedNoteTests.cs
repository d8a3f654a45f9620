using HealthNotes.Analysis;
using HealthNotes.Grammar.Notes;
using HealthNotes.Rendering;
using HealthNotes.Rendering.Pages;
using HealthNotes.Rendering.Sharing;

namespace HealthNotes.Tests.Rendering;

/// <summary>A page that goes to anybody knows nobody's name, number or address.</summary>
public class SharedNoteTests
{
    private const string Note = """
        # Invented for the tests; call 01632 960142.
        pet Marlow
        species dog
        owner Jo Example, 12 Larch Lane
        clinic Two Rivers (invented)
        vet Dr Li Example
        phone 01632 960142 (invented)
        chip 900000000000001
        ownr Uma Neighbour 01632 960143
        known heart murmur since 2026-01
        call-if rr asleep >32 per Quill 2026-01-20

        2026-10-04 check by Jo Example
          weight 111.4-102.1lb   # at Two Rivers (invented), 01632 960142
          hr 18/15s
          tooth 208 tartar beside the RIVERS bridge
          ask may I write to jo@example.org or +44 (1632) 960-144?
          photo left-ear.jpg the garden of 12 Larch Lane
          photo the-house.jpg
          > Jo example rang 01632/960.145 on 2026-10-03 at 12 larch lane.
          lump L-flank @lower 12mm
          gave carprofen 75mg for li at the door
          ear L wax says Quill
          gumz pink said uma
        2026-10-05 log by Pat
          > EXAMPLE's number: 01632\u2013960\u2014146, 01632\u2011960147 or 01632·960·148; Uma and LI know; rivers_club@localhost; www.two.test/x; PAT too
          skip mouth Larch bit me
        """;

    private static readonly string[] Secrets =
    [
        "Jo Example", "Jo ", "Example", "Larch", "Rivers", "96014", "960-14", "960.14", "9000000", "example.org", "Dr Li", "for li", "LI know", "the-house", "Uma", "Quill", "PAT too", "localhost", "two.test", "960\u2014", "960·1", "garden",
    ];

    /// <summary>Without text nothing of the owner's own words is there; with it, nothing that reaches a person.</summary>
    [Theory]
    [InlineData(true, false)]
    [InlineData(false, false)]
    [InlineData(true, true)]
    [InlineData(false, true)]
    public void Nothing_private_is_left_anywhere_on_the_page(bool markdown, bool withText)
    {
        var analysis = NoteAnalysis.Of(HealthNotes.Grammar.Notes.Note.Read(SharedNote.Of(HealthNotes.Grammar.Notes.Note.Read(Note), ["left-ear.jpg"], withText)), Pages.Today);
        PageOptions options = PageOptions.Default with { For = Audience.Share };
        string page = markdown ? VisitPage.Markdown(analysis, options) : VisitPage.Html(analysis, options);
        Assert.Equal([], Secrets.Where(secret => page.Contains(secret, StringComparison.OrdinalIgnoreCase) && !(withText && secret is "garden")));
        Assert.Contains("Made for sharing", page, StringComparison.Ordinal);
        Assert.Contains("left-ear.jpg", page, StringComparison.Ordinal);
        Assert.Contains("heart murmur", page, StringComparison.Ordinal);
        Assert.Contains("carprofen", page, StringComparison.Ordinal);
        Assert.Equal(withText, page.Contains("2026-10-03", StringComparison.Ordinal));
        Assert.Equal(withText, page.Contains("door", StringComparison.Ordinal));
    }

    /// <summary>The page for the vet has them: the test above would pass on an empty page.</summary>
    [Fact]
    public void The_page_for_the_vet_keeps_what_the_clinic_needs()
    {
        string page = VisitPage.Markdown(Pages.Analyse(Note));
        Assert.All(["Jo Example", "12 Larch Lane", "Two Rivers", "01632 960142", "900000000000001", "the-house.jpg"], kept => Assert.Contains(kept, page, StringComparison.Ordinal));
    }

    [Fact]
    public void Lines_keep_their_numbers_and_values_their_digits()
    {
        string[] lines = SharedNote.Of(HealthNotes.Grammar.Notes.Note.Read(Note), []).Split('\n');
        Assert.Equal(["", "pet Marlow", "species dog", "", "", "", "", "", "", "known heart murmur since 2026-01", "call-if rr asleep >32", "", "2026-10-04 check", "  weight 111.4-102.1lb", "  hr 18/15s", "  tooth 208 tartar", "", "", "", "", "  lump L-flank @lower 12mm"], lines[..21]);
        string[] withText = SharedNote.Of(HealthNotes.Grammar.Notes.Note.Read(Note), [], withText: true).Split('\n');
        Assert.Equal("  ask may I write to [left out] or +[left out]?", withText[16]);
        Assert.Equal("  > [left out] [left out] rang [left out] on 2026-10-03 at 12 [left out] [left out].", withText[19]);
        Assert.Equal("2026-10-05 log", withText[24]);
    }

    /// <summary>A line that was not read is in neither: nobody can say what is in it. A head that was not read still parts the days.</summary>
    [Theory]
    [InlineData("pet Marlow\nownr Jo\n2026-10-04 check\n  hr 18/15s\n2026-13-04 check by Jo\n  hr 20/15s\n")]
    [InlineData("pet Marlow\nphonee 01632 960142\nJo\n2026-10-04 check\n  hr 18/15s\n04/13/2026 chek Jo\n  hr 20/15s\n")]
    public void Lines_that_were_not_read_are_left_out(string text)
    {
        var note = HealthNotes.Grammar.Notes.Note.Read(text);
        Assert.All([false, true], withText =>
        {
            string shared = SharedNote.Of(note, [], withText);
            Assert.DoesNotContain("Jo", shared, StringComparison.Ordinal);
            Assert.DoesNotContain("0163", shared, StringComparison.Ordinal);
            Assert.Equal(note.Entries.Select(entry => (entry.Line, entry.Items.Length)), HealthNotes.Grammar.Notes.Note.Read(shared).Entries.Select(entry => (entry.Line, entry.Items.Length)));
        });
    }

    [Fact]
    public void The_free_words_can_be_looked_at_before_they_go_anywhere()
    {
        string[] lines = [.. SharedNote.FreeLines(SharedNote.Of(HealthNotes.Grammar.Notes.Note.Read("pet Marlow\n2026-10-04 check\n  > He sleeps.\n  hr 18/15s\n  gums pink by the window\n"), [], withText: true))];
        Assert.Equal(["pet Marlow", "> He sleeps.", "gums pink by the window"], lines);
    }

    /// <summary>Every sample keeps its values: what is masked must not eat a measurement.</summary>
    [Theory]
    [InlineData("samples/marlow.hnote")]
    [InlineData("samples/tansy.hnote")]
    [InlineData("samples/brutus-giant.hnote")]
    [InlineData("samples/hazel-puppy.hnote")]
    [InlineData("samples/juniper-after-surgery.hnote")]
    public void Values_stay_as_they_were(string sample)
    {
        Note note = HealthNotes.Grammar.Notes.Note.Read(File.ReadAllText(Support.Repository.PathOf(sample)));
        NoteAnalysis whole = NoteAnalysis.Of(note, new DateOnly(2026, 11, 25));
        Assert.All([false, true], withText =>
        {
            NoteAnalysis shared = NoteAnalysis.Of(HealthNotes.Grammar.Notes.Note.Read(SharedNote.Of(note, [], withText)), new DateOnly(2026, 11, 25));
            Assert.Equal(whole.Record.Readings.Select(reading => (reading.Line, reading.What, reading.Written)), shared.Record.Readings.Select(reading => (reading.Line, reading.What, reading.Written)));
        });
    }
}
