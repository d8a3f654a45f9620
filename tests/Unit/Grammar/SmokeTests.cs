using HealthNotes.Analysis;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Tests.Grammar;

public class SmokeTests
{
    [Fact]
    public void A_small_note_is_read_whole()
    {
        var note = Note.Read("pet Marlow\nspecies dog\n2026-10-04 check\n  rr 12/15s asleep\n  gums blue\n");
        Assert.Empty(note.Problems);
        var analysis = NoteAnalysis.Of(note, new DateOnly(2026, 10, 5));
        Assert.Contains(analysis.Findings, f => f.Rule == "gum-colour");
    }
}
