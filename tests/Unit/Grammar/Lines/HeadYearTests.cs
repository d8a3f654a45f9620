using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Tests.Grammar.Lines;

/// <summary>The head of an entry without its year: the entry above settles it.</summary>
public class HeadYearTests
{
    [Theory]
    [InlineData("2026-10-28 log", "3 nov", "2026-11-03")]
    [InlineData("2026-10-28 log", "3nov 9am", "2026-11-03")]
    [InlineData("2026-12-20 17:30 check", "21.12.", "2026-12-21")]
    [InlineData("2026-11-20", "6 dec check by Kim", "2026-12-06")]
    [InlineData("2026-12-28", "3 jan check", "2027-01-03")]
    [InlineData("2026-11-10 visit", "Nov 3rd", "2026-11-03")] // the newest first
    [InlineData("2026-11-03", "3 Nov 18:10", "2026-11-03")]
    [InlineData("2028-02-20", "29 feb", "2028-02-29")]
    [InlineData("2026-02-20", "29 feb", null)] // there is no such day
    [InlineData("2026-02-20", "20 sep", "2026-09-20")]
    [InlineData("# no entry above", "3 nov", null)]
    public void Is_the_nearest_such_day(string above, string head, string? day)
    {
        var note = Note.Read($"pet Marlow\n{above}\n  gums pink\n{head}\n  ear clean\n");
        Assert.Equal(day, note.Entries[^1].Head.Date?.ToString("yyyy-MM-dd"));
        Assert.Equal(day is null, note.Problems.Any(problem => problem.Line == 3));
        Assert.Equal(note.Syntax.Lines[3].Text, NoteFormatter.Format(note.Syntax).Split('\n')[3]);
    }

    [Fact]
    public void One_settles_the_next() =>
        Assert.Equal(["2026-10-28", "2026-12-30", "2027-01-02", "2027-06-01"], Days(Note.Read("2026-10-28\n30 dec\n2 jan\n1 june\n")));

    [Fact]
    public void A_change_above_reaches_those_below()
    {
        var note = Note.Read("2026-10-28\n  gums pink\n3 nov\n4 nov\n2026-11-05\n");
        (Note changed, _) = note.WithLines(0, 1, "2025-10-28\n", NoteVocabulary.Default);
        Assert.Equal(["2025-10-28", "2025-11-03", "2025-11-04", "2026-11-05"], Days(changed));
    }

    [Theory]
    [InlineData("3 nov vomited twice")]
    [InlineData("3nov vomited twice")]
    [InlineData("3 nov gums pink")]
    [InlineData("31 feb")]
    public void What_is_more_than_a_head_is_none(string line) => Assert.NotEqual(LineKind.EntryHead, NoteSyntax.Parse(line).Lines[0].Kind);

    private static string[] Days(Note note) => [.. note.Entries.Select(entry => entry.Head.Date!.Value.ToString("yyyy-MM-dd"))];
}
