using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Rendering;
using HealthNotes.Rendering.Card;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Rendering.Card;

/// <summary>The card: every line on it can be typed, and what it must say is on it.</summary>
public class NoteCardTests
{
    private static readonly string[] Keywords = ["no ", "not ", "none", "gone", "gave", "missed", "skip", "ask"];

    [Fact]
    public void Every_line_can_be_typed() => None.Wrong(
        from line in CardLine.All
        let note = Note.Read(NoteSyntax.Parse(line.Text).Lines[0].Kind == LineKind.EntryHead ? line.Text : "2026-10-05\n  " + line.Text)
        from problem in note.Problems
        select $"{line.Text}: {problem.Problem.Message}");

    [Fact]
    public void It_shows_how_to_say_each_of_these() =>
        Assert.All(Keywords, word => Assert.Contains(CardLine.All, line => line.Group == "say" && line.Text.Contains(word, StringComparison.Ordinal)));

    [Fact]
    public void Every_line_the_emergencies_and_the_cautions_are_on_it()
    {
        IHtmlDocument card = Parsed(NoteCard.Html(Species.Dog, Paper.A4));
        Assert.Equal(CardLine.All.Select(line => line.Text), card.QuerySelectorAll("dt code").Select(code => code.TextContent));
        Assert.Contains("Heaving with nothing coming up", card.QuerySelector(".now")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("a veterinarian decides", card.QuerySelector(".care")!.TextContent, StringComparison.Ordinal);
        Assert.Empty(card.QuerySelectorAll("script, img, link, [style]"));
    }

    [Fact]
    public void Emergencies_are_those_of_the_animal()
    {
        string cat = Parsed(NoteCard.Html(Species.Cat, Paper.Letter)).QuerySelector(".now")!.TextContent;
        string any = Parsed(NoteCard.Html(Species.Unknown, Paper.Letter)).QuerySelector(".now")!.TextContent;
        Assert.DoesNotContain("Heaving with nothing coming up", cat, StringComparison.Ordinal);
        Assert.Contains("Straining to pass urine", cat, StringComparison.Ordinal);
        Assert.Contains("Heaving with nothing coming up", any, StringComparison.Ordinal);
    }

    private static IHtmlDocument Parsed(string html) => new HtmlParser().ParseDocument(html);
}
