using System.Runtime.CompilerServices;
using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Documents;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features;

/// <summary>Findings that rest on other lines follow when those lines change.</summary>
public class EditedAnalysisTests
{
    private const string TwoChecks = """
        pet Marlow
        species dog
        born 2017-03
        adult-weight 27kg
        2026-10-01 check
          rr 32 asleep
        2026-11-01 check
          lump L-flank 12mm
          rr 34 asleep
        """;

    [Fact]
    public void The_reading_before_decides_how_strong_a_count_is()
    {
        Document document = Cursor.Note(TwoChecks);
        Assert.Equal(FindingLevel.Call, LevelAt(document, 8));
        Document calmer = Replace(document, 5, "  rr 24 asleep");
        Assert.Equal(FindingLevel.Watch, LevelAt(calmer, 8));
        Assert.Equal(FindingLevel.Call, LevelAt(Replace(calmer, 5, "  rr 33 asleep"), 8));
    }

    /// <summary>Answers are kept, not the record that gave them: a long session holds one record a note.</summary>
    [Fact]
    public void An_earlier_version_is_let_go()
    {
        (Document now, WeakReference before) = Edited();
        GC.Collect();
        Assert.False(before.IsAlive);
        Assert.NotEmpty(now.Analysis.Findings);
    }

    [Fact]
    public void A_line_put_in_above_moves_findings_and_their_evidence()
    {
        Document moved = Cursor.Note(TwoChecks).Edit(DocumentEdit.Insert(5, 0, "  alert bright\n"), 2);
        NoteFinding finding = Assert.Single(moved.Analysis.Findings, f => f.Line == 9);
        Assert.Equal<int>([6, 9], finding.Evidence.ToArray());
        Assert.Equal(FindingLevel.Call, finding.Level);
    }

    [Fact]
    public void A_line_put_in_above_moves_the_other_lines_of_an_entry_that_a_finding_rests_on()
    {
        Document document = Cursor.Note(TwoChecks.Replace("  lump L-flank 12mm", "  paw LF 60mm\n  paw RF 90mm", StringComparison.Ordinal));
        _ = document.Analysis;
        Document moved = document.Edit(DocumentEdit.Insert(5, 0, "  alert bright\n"), 2);
        Assert.Equal<int>([8, 9], Assert.Single(moved.Analysis.Findings, f => f.Rule == "sides").Evidence.ToArray());
    }

    [Fact]
    public void A_count_keeps_being_judged_by_the_one_before_wherever_both_stand()
    {
        Document document = Cursor.Note(TwoChecks);
        _ = document.Analysis;
        Document moved = document.Edit(DocumentEdit.Insert(4, 0, "2026-09-01 check\n  rr 20 asleep\n"), 2);
        Assert.Equal(FindingLevel.Call, LevelAt(moved, 10));
        Assert.Equal(FindingLevel.Watch, LevelAt(Replace(moved, 7, "  rr 24 asleep"), 10));
    }

    [Fact]
    public void An_earlier_lump_makes_a_later_one_known()
    {
        Document document = Cursor.Note(TwoChecks);
        Assert.Equal(FindingLevel.Watch, LevelAt(document, 7));
        Document noted = document.Edit(DocumentEdit.Insert(5, 0, "  lump L-flank 10mm sampled\n"), 2);
        Assert.Equal(FindingLevel.Info, LevelAt(noted, 5));
        Assert.Equal(FindingLevel.Info, LevelAt(noted, 8));
    }

    [Fact]
    public void A_usual_range_written_now_holds_for_the_readings_there_are()
    {
        Document document = Cursor.Note(TwoChecks);
        _ = document.Analysis;
        Document usual = document.Edit(DocumentEdit.Insert(4, 0, "usual rr 20-36 asleep per vet 2026-01-20\n"), 2);
        Assert.DoesNotContain(usual.Analysis.Findings, f => f.Line == 9);
    }

    [Fact]
    public void Versions_that_nobody_asked_about_are_not_lost()
    {
        Document document = Cursor.Note(TwoChecks);
        _ = document.Analysis;
        Document edited = Replace(Replace(Replace(document, 8, "  rr 20 asleep"), 5, "  rr 20 asleep"), 8, "  rr 35 asleep");
        Assert.Equal(FindingLevel.Watch, LevelAt(edited, 8));
    }

    [Fact]
    public void An_analysis_that_was_stopped_is_made_when_next_asked_for()
    {
        Document document = Cursor.Note(TwoChecks);
        Assert.Throws<OperationCanceledException>(() => document.AnalysisUnless(new CancellationToken(canceled: true)));
        Assert.Equal(FindingLevel.Call, LevelAt(document, 8));
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static (Document Now, WeakReference Before) Edited()
    {
        Document first = Cursor.Note(TwoChecks);
        Assert.NotEmpty(first.Analysis.Findings);
        Document now = Replace(first, 7, "  lump L-flank 14mm");
        Assert.NotEmpty(now.Analysis.Findings);
        return (now, new WeakReference(first.Record));
    }

    private static Document Replace(Document document, int line, string text) =>
        document.Edit(new DocumentEdit(new(new(line, 0), new(line, 99)), text), document.Version + 1);

    private static FindingLevel LevelAt(Document document, int line) => Assert.Single(document.Analysis.Findings, f => f.Line == line).Level;
}
