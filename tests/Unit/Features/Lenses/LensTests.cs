using System.Collections.Immutable;
using CsCheck;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Lenses;
using HealthNotes.Record.Checks;
using HealthNotes.Tests.Grammar.Properties;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Lenses;

/// <summary>What is shown above checks, tasks and the opening.</summary>
public class LensTests
{
    private static string[] Titles(string text) =>
        [.. LensFeature.In(Cursor.Note(text), FeatureSettings.Default).Select(lens => $"{lens.Range.Start.Line}: {lens.Title}")];

    private static (int All, int Measured) Dog
    {
        get
        {
            ImmutableArray<CheckItem> items = CheckItems.For(onInsulin: false);
            return (items.Length, items.Count(item => item.IsMeasured));
        }
    }

    [Fact]
    public void A_check_tells_how_far_it_got_and_what_is_next_head_to_tail() =>
        Assert.Equal([$"2: 3 of {Dog.All} looked at, next: gait"], Titles("species dog\nsex male\n2026-11-25 check\n  gums pink\n  stance square\n  alert bright\n  gums moist\n  lump L-flank 12mm"));

    [Fact]
    public void What_was_refused_is_counted_apart() =>
        Assert.Equal([$"2: 1 of {Dog.All} looked at, 1 skipped, next: gait"], Titles("species dog\nsex male\n2026-11-25 check\n  alert bright\n  skip stance would not stand"));

    [Fact]
    public void The_rest_that_is_ok_was_looked_at_but_not_measured_and_not_refused() =>
        Assert.Equal([$"2: {Dog.All - Dog.Measured - 1} of {Dog.All} looked at, 1 skipped, next: bcs"], Titles("species dog\nsex male\n2026-11-25 check\n  skip anus refused\n  else ok"));

    [Fact]
    public void A_check_in_two_parts_of_one_day_is_one_check() =>
        Assert.Equal([$"2: 2 of {Dog.All} looked at, next: gait", $"4: 2 of {Dog.All} looked at, next: gait"], Titles("species dog\nsex male\n2026-11-25 08:00 check\n  alert bright\n2026-11-25 18:00 check\n  stance square"));

    [Fact]
    public void Of_an_older_check_what_would_be_next_is_not_asked() =>
        Assert.Equal($"2: 1 of {Dog.All} looked at", Titles("species dog\nsex male\n2026-09-01 check\n  alert bright\n2026-10-01 check\n  alert bright\n2026-11-25 check\n  alert bright")[0]);

    [Fact]
    public void Logs_and_visits_have_none() => Assert.Empty(Titles("2026-11-25 log\n  alert bright\n2026-11-25 visit\n  weight 26kg"));

    [Theory]
    [InlineData("due worming 2026-11-28", "1: due in 3 days")]
    [InlineData("due worming 2026-11-26", "1: due tomorrow")]
    [InlineData("due worming 2026-11-25", "1: due today")]
    [InlineData("due worming 2026-11-23", "1: was due 2 days ago")]
    [InlineData("recheck ear L in 8d", "1: due in 3 days")]
    public void A_task_tells_when_it_is_due(string line, string title) => Assert.Equal([title], Titles($"2026-11-20 log\n  {line}"));

    [Theory]
    [InlineData("due worming 2026-11-23", "done worming tablets given")]
    [InlineData("recheck ear L in 3d", "ear both clean")]
    [InlineData("recheck lump L-flank @lower in 3d", "lump L-flank @lower 12mm")]
    public void What_is_done_tells_nothing(string task, string done) => Assert.Empty(Titles($"2026-11-20 log\n  {task}\n2026-11-24 log\n  {done}"));

    [Theory]
    [InlineData("due worming 2026-11-23", "done nails clipped")]
    [InlineData("recheck ear L in 3d", "ear R clean")]
    [InlineData("recheck lump L-flank @lower in 3d", "lump L-flank @upper 12mm")]
    public void What_is_not_done_stays(string task, string other) => Assert.Equal(["1: was due 2 days ago"], Titles($"2026-11-20 log\n  {task}\n2026-11-24 log\n  {other}"));

    [Theory]
    [InlineData("2026-12-25", 1)]
    [InlineData("2026-12-26", 0)]
    public void What_is_due_long_from_now_waits(string day, int count) => Assert.Equal(count, Titles($"2026-11-20 log\n  due worming {day}").Length);

    [Fact]
    public void The_later_line_about_a_topic_counts() =>
        Assert.Equal(["3: due in 3 days"], Titles("2026-11-20 log\n  due worming 2026-11-21\n2026-11-22 log\n  due worming 2026-11-28"));

    [Fact]
    public void The_opening_tells_the_next_home_check_and_offers_it()
    {
        LensText lens = LensFeature.In(Cursor.Note("species dog\nhome-check every 30d\n2026-11-01 check\n  alert bright"), FeatureSettings.Default)[0];
        Assert.Equal("next: home check, due in 6 days", lens.Title);
        Assert.Equal(new LensCommand(LensCommands.AddCheck, "file:///notes/test.hnote", new Place(0, 0)), lens.Command);
    }

    [Fact]
    public void The_opening_tells_what_comes_before_the_next_home_check_and_leads_there()
    {
        LensText lens = LensFeature.In(Cursor.Note("species dog\nhome-check every 30d\n2026-11-01 check\n  due worming 2026-11-27"), FeatureSettings.Default)[0];
        Assert.Equal("next: worming, due in 2 days", lens.Title);
        Assert.Equal(new LensCommand(LensCommands.GoTo, "file:///notes/test.hnote", new Place(3, 0)), lens.Command);
    }

    [Fact]
    public void An_empty_note_has_none() => Assert.Empty(Titles(""));

    [Fact]
    public void Of_any_note_the_lenses_stand_in_line_order_and_nothing_throws() => Soup.Note.ForAll(text =>
    {
        var document = Document.Open("file:///a.hnote", 1, text, Cursor.Today);
        ImmutableArray<LensText> lenses = LensFeature.In(document, FeatureSettings.Default);
        Assert.Equal(lenses.Select(lens => lens.Range.Start).Order(), lenses.Select(lens => lens.Range.Start));
        Assert.All(lenses, lens => Assert.True(lens.Title.Length > 0 && lens.Range.End == document.Clamp(lens.Range.End)));
        Assert.True(lenses.Count(lens => lens.Title.Contains("looked at", StringComparison.Ordinal)) >= document.Note.Entries.Count(entry => entry.Head.Kind == "check"));
    }, iter: Effort.Times(1_000));

    /// <summary>All that is shown in a sample, for a person to read.</summary>
    [Fact]
    public void What_is_shown_in_a_sample()
    {
        string text = File.ReadAllText(Repository.PathOf("samples/marlow.hnote")).ReplaceLineEndings("\n");
        string[] lines = text.Split('\n');
        Snapshots.Match(string.Join('\n', LensFeature.In(Cursor.Note(text), FeatureSettings.Default).Select(lens => $"{lens.Range.Start.Line + 1}: {lines[lens.Range.Start.Line].Trim()}  [{lens.Title}]")), "marlow");
    }
}
