using HealthNotes.Features.Diagnostics;
using HealthNotes.Features.Documents;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Diagnostics;

/// <summary>What is held back while the line is being typed, drawn with the cursor where the last edit ended.</summary>
public class StillTypingTests
{
    private const string Before = "pet M\nspecies dog\nborn 2020\n2026-11-20 check\n  ";

    private static IEnumerable<string> Shown(string line, bool typing = true)
    {
        var cursor = Cursor.In(Before + line);
        return StillTyping.Without(cursor.Document, cursor.Document.Analysis.Findings, typing ? cursor.Place : null)
            .Where(finding => finding.Line == cursor.Place.Line).Select(finding => finding.Rule);
    }

    [Theory]
    [InlineData("gum|")] // gums
    [InlineData("c|")] // coat, cough, crt
    [InlineData("2026-1|")]
    [InlineData("07:3|")]
    [InlineData("06|")]
    [InlineData("06:|")]
    [InlineData("06:40 |")] // what happened comes next
    [InlineData("07:30 m|")] // mood, mouth
    [InlineData("wound RH-|")]
    [InlineData("lump L-flank 20x|")]
    [InlineData("ear L odour brow|")] // brown
    [InlineData("due appointment 2026-1|")]
    [InlineData("gums|")] // what was seen comes next
    [InlineData("gums |")]
    [InlineData("|gums ")] // a command took the # away
    [InlineData("gums pin|")] // pink
    [InlineData("lump L-fla|")] // flank
    [InlineData("lump |")]
    [InlineData("weight 38.|")]
    [InlineData("weight 38.6 |")]
    [InlineData("belly no|")]
    [InlineData("belly not |")]
    [InlineData("hr 18/|")]
    [InlineData("hr 7|")] // 72
    [InlineData("weight 83.2-|")]
    [InlineData("med carprofen 150mg every |")]
    [InlineData("ear L red |")] // it can wait for the end of the line
    public void Held_back(string line)
    {
        Assert.NotEmpty(Shown(line, typing: false));
        Assert.Empty(Shown(line));
    }

    [Theory]
    [InlineData("gumz|")] // no word goes on like this
    [InlineData("gums pinkk|")]
    [InlineData("xyzzy |")]
    [InlineData("gums blue|")] // urgent isn't a mistake in writing
    [InlineData("temp 41C|")]
    [InlineData("lump L-gland9|x")]
    [InlineData("g|ums pinkk")] // typing is elsewhere in the line
    public void Shown_at_once(string line) => Assert.NotEmpty(Shown(line));

    [Fact]
    public void Other_lines_are_never_held_back()
    {
        var cursor = Cursor.In(Before + "gumz\n  gums|\n");
        Assert.Equal([4], StillTyping.Without(cursor.Document, cursor.Document.Analysis.Findings, cursor.Place).Select(finding => finding.Line));
    }

    [Theory]
    [InlineData("  # gums\n  gait |\n  eye L red\n", 0)] // wherever in the check the last edit was
    [InlineData("  gait\n  # gums|\n", 0)]
    [InlineData("  gait\n2026-11-21 check\n  # gums|\n", 1)] // in another check it is a line without an end
    public void A_part_that_waits_in_the_check_is_quiet(string lines, int shown)
    {
        var cursor = Cursor.In(Before.TrimEnd(' ') + lines);
        Assert.Equal(shown, StillTyping.Without(cursor.Document, cursor.Document.Analysis.Findings, cursor.Place).Count(finding => finding.Rule == "missing"));
    }

    [Fact]
    public void A_place_that_is_gone_holds_nothing_back()
    {
        Document note = Cursor.Note("gum");
        Assert.Equal(note.Analysis.Findings, StillTyping.Without(note, note.Analysis.Findings, new Place(9, 0)));
    }
}
