using HealthNotes.Features.Checks;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Tests.Features.Checks;

/// <summary>A check as a walk: whatever a tap writes is a line that is read.</summary>
public class CheckWalkTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    private static Document Open(string text) => Document.Open("file:///a.hnote", 1, text, Today);

    [Theory]
    [InlineData("dog")]
    [InlineData("cat")]
    public void Every_ok_and_every_skip_is_read(string species)
    {
        WalkStep[] steps = [.. CheckWalk.Of(Open($"pet Marlow\nspecies {species}\n2026-10-01 check\n  lump L-flank 12mm\n"))];
        string[] lines = [.. steps.SelectMany(step => new[] { step.Ok, step.Skip }).OfType<string>()];
        Note note = Note.Read($"pet Marlow\nspecies {species}\n2026-11-25 check\n" + string.Concat(lines.Select(line => $"  {line}\n")));
        Assert.Empty(note.Problems.Select(problem => $"{lines[problem.Line - 3]}"));
        Assert.True(lines.Length > 30);
    }

    [Fact]
    public void A_step_shows_what_was_last_seen_there()
    {
        WalkStep[] steps = [.. CheckWalk.Of(Open("pet Marlow\nspecies dog\n2026-10-01 check\n  ear L odour\n  hr 18/15s\n  lump L-flank 12mm\n2026-10-20 check\n  ear R clean\n"))];
        Assert.Equal("2026-10-01: ear L odour", steps.Single(step => step.Line == "ear both").Last);
        Assert.True(steps.Single(step => step.Line == "hr") is { Counted: true, Ok: null, Last: "2026-10-01: hr 18/15s" });
        Assert.Equal("lump L-flank", steps[^1].Line);
    }
}
