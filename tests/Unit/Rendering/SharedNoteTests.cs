using HealthNotes.Analysis;
using HealthNotes.Grammar.Notes;
using HealthNotes.Rendering;
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
        vet Dr Example
        phone 01632 960142 (invented)
        chip 900000000000001
        phonee 01632 960143
        known heart murmur

        2026-10-04 check by Jo Example
          weight 111.4-102.1lb   # at Two Rivers (invented), 01632 960142
          hr 18/15s
          tooth 208 tartar
          ask may I write to jo@example.org or +44 (1632) 960-144?
          photo left-ear.jpg
          photo the-house.jpg
          > Jo example rang 01632/960.145 on 2026-10-03 at 12 larch lane.
          lump L-flank @lower 12mm
        """;

    private static readonly string[] Secrets = ["Jo Example", "jo example", "Larch", "larch", "Two Rivers", "96014", "960-14", "960.14", "9000000", "example.org", "Dr Example", "the-house"];

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Nothing_private_is_left_anywhere_on_the_page(bool markdown)
    {
        var analysis = NoteAnalysis.Of(HealthNotes.Grammar.Notes.Note.Read(SharedNote.Of(HealthNotes.Grammar.Notes.Note.Read(Note), ["left-ear.jpg"])), Pages.Today);
        PageOptions options = PageOptions.Default with { For = Audience.Share };
        string page = markdown ? VisitPage.Markdown(analysis, options) : VisitPage.Html(analysis, options);
        Assert.Equal([], Secrets.Where(secret => page.Contains(secret, StringComparison.OrdinalIgnoreCase)));
        Assert.Contains("Made for sharing", page, StringComparison.Ordinal);
        Assert.Contains("left-ear.jpg", page, StringComparison.Ordinal);
        Assert.Contains("heart murmur", page, StringComparison.Ordinal);
        Assert.Contains("2026-10-03", page, StringComparison.Ordinal);
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
        string shared = SharedNote.Of(HealthNotes.Grammar.Notes.Note.Read(Note), []);
        string[] lines = shared.Split('\n');
        Assert.Equal("", lines[6]);
        Assert.StartsWith("  weight 111.4-102.1lb   # at [left out], [left out]", lines[12], StringComparison.Ordinal);
        Assert.Equal("  tooth 208 tartar", lines[14]);
        Assert.Equal("  ask may I write to [left out] or [left out]?", lines[15]);
        Assert.Equal("  > [left out] rang [left out] on 2026-10-03 at [left out].", lines[18]);
        Assert.Equal("  lump L-flank @lower 12mm", lines[19]);
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
        NoteAnalysis shared = NoteAnalysis.Of(HealthNotes.Grammar.Notes.Note.Read(SharedNote.Of(note, [])), new DateOnly(2026, 11, 25));
        Assert.Equal(whole.Record.Readings.Select(reading => (reading.Line, reading.What, reading.Written)), shared.Record.Readings.Select(reading => (reading.Line, reading.What, reading.Written)));
        Assert.Equal(whole.Findings.Select(finding => (finding.Rule, finding.Line)), shared.Findings.Select(finding => (finding.Rule, finding.Line)));
    }
}
