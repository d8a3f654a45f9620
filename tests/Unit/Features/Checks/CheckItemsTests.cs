using HealthNotes.Features.Checks;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Checks;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Checks;

/// <summary>The table of what a full check holds.</summary>
public class CheckItemsTests
{
    private static readonly IReadOnlyList<TsvRow> Rows = TsvTable.Load(typeof(CheckItems).Assembly, "check-items.tsv").Rows;

    [Fact]
    public void Every_row_has_a_source() => Assert.All(Rows, row => Assert.NotEqual("", row["source"]));

    /// <summary>What a page lists as not looked at, and what the check asks for, must be the same.</summary>
    [Fact]
    public void Every_part_and_vital_is_in_it_head_to_tail_but_the_pain_score_and_what_follows_it()
    {
        LineWord pain = NoteVocabulary.Default.LineWords.Find("pain")!;
        LineWord[] words = [.. NoteVocabulary.Default.LineWords.Terms.Where(word => word.Kind is WordKind.Exam or WordKind.Vital && word.Order < pain.Order).OrderBy(word => word.Order)];
        Assert.Equal(words.Select(word => word.Word), CheckItems.For(onInsulin: true).Select(item => item.Word.Word));
    }

    /// <summary>A bit each in a number of 64.</summary>
    [Fact]
    public void There_are_no_more_than_can_be_counted() => Assert.InRange(Rows.Count, 10, 63);

    [Fact]
    public void Every_site_is_read_on_its_line()
    {
        foreach (CheckItem item in CheckItems.For(onInsulin: true).Where(item => item.Site is not null))
        {
            Document note = Cursor.Note($"species dog\n2026-11-25 check\n  {item.Word.Word} {item.Site} ok\n");
            Assert.Empty(note.Note.Problems);
        }
    }

    [Fact]
    public void Glucose_is_asked_of_a_pet_on_insulin_only()
    {
        Assert.DoesNotContain(CheckItems.For(onInsulin: false), item => item.Word.Word == "glucose");
        Assert.Contains(CheckItems.For(Cursor.Note("species cat\nmed insulin 1 unit every 12h\n").Analysis.Pet), item => item.Word.Word == "glucose");
    }

    [Fact]
    public void Missing_is_what_no_check_of_the_day_names()
    {
        Document note = Cursor.Note("species dog\n2026-11-24 check\n  gait easy\n2026-11-25 check\n  alert bright\n  skip stance tired\n  coat \n2026-11-25 check\n  skin supple\n2026-11-25 log\n  eye both clear\n");
        Assert.Equal(["gait", "bcs", "mcs", "eye"], MissingItems.Of(note, note.Note.Entries[1]).Take(4).Select(item => item.Word.Word));
    }

    [Fact]
    public void Else_ok_speaks_for_parts_only()
    {
        Document note = Cursor.Note("species dog\n2026-11-25 check\n  hr 72\n  else ok\n");
        Assert.Equal(["bcs", "mcs", "crt", "rr", "temp", "weight"], MissingItems.Of(note, note.Note.Entries[0]).Select(item => item.Word.Word));
    }
}
