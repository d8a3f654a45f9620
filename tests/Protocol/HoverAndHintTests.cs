using System.Text.Json.Nodes;
using HealthNotes.Protocol.Tests.Support;

namespace HealthNotes.Protocol.Tests;

/// <summary>3.17, Hover Request, Inlay Hint Request and Code Lens Request: what is worked out, shown beside what was written.</summary>
public class HoverAndHintTests
{
    private const string Note = """
        pet Marlow
        species dog
        born 2017-03
        adult-weight 27kg
        med benazepril 5mg every 24h
        2026-11-20 log
          ate all
        2026-11-20 check
          hr 18/15s
          temp 101.5F
          weight 83.2-55.9kg
          lump L-flank like pea
          gums pink
        2026-11-23 log
          gave benazepril 5mg

        """;

    [Theory]
    [InlineData("hr")]
    [InlineData("18/15s")]
    [InlineData("flank")]
    [InlineData("pink")]
    [InlineData("benazepril")]
    [InlineData("101.5F")]
    public Task A_word_or_value_is_explained(string word) => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Note).After(word[..1]);
        JsonNode hover = (await session.Client.AskAsync("textDocument/hover", new JsonObject { ["textDocument"] = note.Identifier, ["position"] = note.PositionOf(note.At(word) + 1) }))!;
        Assert.Equal("markdown", (string?)hover["contents"]!["kind"]);
        Assert.True(((string)hover["contents"]!["value"]!).Length > 10);
        Assert.Contains(word, note.TextOf(hover["range"]!), StringComparison.Ordinal);
    });

    [Fact]
    public Task A_count_is_explained_with_its_rate_and_its_normal_range() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Note).After("hr 18");
        string said = (string)(await note.AskAsync("textDocument/hover"))!["contents"]!["value"]!;
        Assert.Contains("72", said, StringComparison.Ordinal);
        Assert.Contains("60", said, StringComparison.Ordinal);
    });

    [Fact]
    public Task Plain_text_for_those_who_know_no_Markdown() => Session.RunAsync(Profiles.Sparse, async session =>
    {
        EditedNote note = session.Open(Note).After("hr 18");
        Assert.Equal("plaintext", (string?)(await note.AskAsync("textDocument/hover"))!["contents"]!["kind"]);
    });

    [Fact]
    public Task Nothing_is_said_about_nothing() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open("\n|\n");
        Assert.Null(await note.AskAsync("textDocument/hover"));
    });

    [Theory]
    [InlineData("hr 18/15s", "= 72/min")]
    [InlineData("temp 101.5F", "= 38.6")]
    [InlineData("weight 83.2-55.9kg", "= 27.3")]
    [InlineData("lump L-flank like pea", "≈ ")]
    [InlineData("gave benazepril 5mg", "mg/kg")]
    [InlineData("2026-11-23", "3 d after")]
    public Task A_value_is_worked_out_behind_it(string line, string expected) => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Note);
        int number = (int)note.PositionOf(note.At(line))["line"]!;
        JsonNode hint = Assert.Single(
            await HintsAsync(note), one => (int)one!["position"]!["line"]! == number && LabelOf(one).Contains(expected, StringComparison.Ordinal))!;
        Assert.NotNull(hint["tooltip"]);
    });

    [Theory]
    [InlineData("rates", "/min")]
    [InlineData("sizes", "≈")]
    [InlineData("conversions", "38.6")]
    [InlineData("differences", "27.3")]
    [InlineData("doses", "mg/kg")]
    [InlineData("days", "d after")]
    public Task Each_kind_can_be_switched_off(string kind, string label) => Session.RunAsync(Profiles.Rich, new JsonObject { ["hints"] = new JsonObject { [kind] = false } }, async session =>
    {
        EditedNote note = session.Open(Note);
        await session.Client.HearAsync("workspace/inlayHint/refresh");
        JsonArray hints = await HintsAsync(note);
        Assert.NotEmpty(hints);
        Assert.DoesNotContain(hints, one => LabelOf(one!).Contains(label, StringComparison.Ordinal));
    });

    [Fact]
    public Task Only_the_lines_that_are_seen() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Note);
        JsonNode hint = Assert.Single((await note.AskAboutAsync("textDocument/inlayHint", new JsonObject { ["range"] = note.RangeOf("hr 18/15s") }))!.AsArray())!;
        Assert.Contains("72", LabelOf(hint), StringComparison.Ordinal);
    });

    [Fact]
    public Task How_far_a_check_has_come_stands_over_it() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Note);
        JsonArray lenses = (await note.AskAboutAsync("textDocument/codeLens"))!.AsArray();
        Assert.Contains(lenses, lens => ((string?)lens!["command"]?["title"] ?? "").Contains(" of ", StringComparison.Ordinal) && (int)lens["range"]!["start"]!["line"]! == 7);
    });

    private static async Task<JsonArray> HintsAsync(EditedNote note) => (await note.AskAboutAsync("textDocument/inlayHint", new JsonObject { ["range"] = note.Whole }))!.AsArray();

    private static string LabelOf(JsonNode hint) => hint["label"] is JsonArray parts ? string.Concat(parts.Select(part => (string?)part!["value"])) : (string)hint["label"]!;
}
