using HealthNotes.Analysis;
using HealthNotes.Grammar.Notes;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.Reference;

/// <summary>What the README shows is what the program does.</summary>
public class ReadmeTests
{
    private static readonly string Text = File.ReadAllText(Repository.PathOf("README.md")).ReplaceLineEndings("\n");

    [Fact]
    public void The_note_it_shows_has_no_problem()
    {
        string block = Text.Split("```hnote\n")[1].Split("```")[0];
        Assert.Empty(Note.Read(block).Problems);
    }

    [Fact]
    public void The_finding_it_shows_is_the_one_that_is_made()
    {
        Note note = Note.Read("pet Marlow\nspecies dog\nborn 2017-03\nadult-weight 27kg\ncall-if rr asleep >32 per vet 2026-01-20\n2026-10-04 check\n  rr 17/30s asleep\n");
        string message = Assert.Single(NoteAnalysis.Of(note, new DateOnly(2026, 10, 4)).Findings).Message;
        Assert.Contains(message, string.Join(' ', Text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }
}
