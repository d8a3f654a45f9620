using HealthNotes.Analysis;
using HealthNotes.Grammar.Notes;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.Reference;

/// <summary>What the README shows is what the program does.</summary>
public class ReadmeTests
{
    private static readonly string Text = File.ReadAllText(Repository.PathOf("README.md")).ReplaceLineEndings("\n");

    [Fact]
    public void Every_line_it_shows_is_read() => None.Wrong(
        from block in Text.Split("```hnote\n").Skip(1)
        let note = Note.Read(block.Split("```")[0])
        from problem in note.Problems
        select $"{note.Syntax.Lines[problem.Line].Text}: {problem.Problem.Message}");

    [Fact]
    public void Every_line_of_the_rules_it_shows_is_read() =>
        Assert.Empty(ClinicRules.Read("our", Text.Split("```hnote-rules\n")[1].Split("```")[0]).Lines.Problems);

    /// <summary>The section is what a new writer learns the forms from.</summary>
    [Fact]
    public void What_you_can_type_has_forty_lines_or_more()
    {
        string section = Text.Split("## What you can type")[1].Split("\n## ")[0];
        Assert.True(section.Split("```hnote\n").Skip(1).Sum(block => Note.Read(block.Split("```")[0]).Syntax.Lines.Length) >= 40);
    }

    [Fact]
    public void The_finding_it_shows_is_the_one_that_is_made()
    {
        Note note = Note.Read("pet Marlow\nspecies dog\nborn 2017-03\nadult-weight 27kg\ncall-if rr asleep >32 per vet 2026-01-20\n2026-10-04 check\n  rr 17/30s asleep\n");
        string message = Assert.Single(NoteAnalysis.Of(note, new DateOnly(2026, 10, 4)).Findings).Message;
        Assert.Contains(message, string.Join(' ', Text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }
}
