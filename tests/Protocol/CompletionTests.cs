using System.Text.Json.Nodes;
using HealthNotes.Protocol.Tests.Support;

namespace HealthNotes.Protocol.Tests;

/// <summary>3.17, Completion Request: the words for the place where the cursor stands.</summary>
public class CompletionTests
{
    private const string Opening = "pet Marlow\nspecies dog\nborn 2017-03\nadult-weight 27kg\nmed benazepril 5mg every 24h\n";

    [Theory]
    [InlineData("spe|", "species")]
    [InlineData(Opening + "2026-11-25 check\n  gum|", "gums")]
    [InlineData(Opening + "2026-11-25 check\n  lump stif|", "knee")]
    [InlineData(Opening + "2026-11-20 check\n  lump L-flank @low 8mm\n2026-11-25 check\n  lump L-flank @|", "@low")]
    [InlineData(Opening + "2026-11-25 check\n  weight 27|", "kg")]
    [InlineData(Opening + "2026-11-25 check\n  gums pi|", "pink")]
    [InlineData(Opening + "2026-11-25 log\n  gave ben|", "benazepril")]
    [InlineData(Opening + "2026-11-25 check\n  lump L-flank like p|", "pea")]
    public Task The_word_for_the_place(string marked, string expected) => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(marked);
        JsonArray items = await ItemsAsync(note);
        Assert.Contains(items, item => ((string)item!["label"]!).Contains(expected, StringComparison.Ordinal) || TextOf(item).Contains(expected, StringComparison.Ordinal));
    });

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public Task What_is_taken_fits_where_it_is_put(bool rich) => Session.RunAsync(rich ? Profiles.Rich : Profiles.Sparse, async session =>
    {
        EditedNote note = session.Open(Opening + "2026-11-25 check\n  🐕 gums\n  gums pi|\n");
        JsonNode pink = (await ItemsAsync(note)).First(item => (string?)item!["label"] == "pink")!;
        note.Apply(new JsonArray(pink["textEdit"]!.DeepClone()));
        Assert.Contains("  gums pink", note.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(await note.PullAsync(), shown => shown.Line == 7);
    });

    [Fact]
    public Task Snippets_only_for_those_who_know_them() => Session.RunAsync(Profiles.Sparse, async session =>
    {
        foreach (string marked in new[] { Opening + "2026-11-25 check\n  |", Opening + "\n|", "|" })
        {
            EditedNote note = session.Open(marked);
            Assert.All(await ItemsAsync(note), item =>
            {
                Assert.NotEqual(2, (int?)item!["insertTextFormat"] ?? 1);
                Assert.DoesNotContain("${", TextOf(item), StringComparison.Ordinal);
            });
        }
    });

    [Fact]
    public Task What_the_check_still_lacks_comes_first() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Opening + "2026-11-25 check\n  alert bright\n  |\n");
        string[] order = [.. (await ItemsAsync(note)).OrderBy(item => (string?)item!["sortText"] ?? (string)item!["label"]!, StringComparer.Ordinal).Select(item => (string)item!["label"]!)];
        Assert.True(Array.IndexOf(order, "gums") >= 0, "gums are offered");
        Assert.True(Array.IndexOf(order, "gums") < Array.IndexOf(order, "alert") || !order.Contains("alert"), "what is there already comes last");
    });

    [Fact]
    public Task An_offer_is_explained_when_asked() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Opening + "2026-11-25 check\n  gums pi|\n");
        JsonNode pink = (await ItemsAsync(note)).First(item => (string?)item!["label"] == "pink")!;
        JsonNode resolved = (await session.Client.AskAsync("completionItem/resolve", pink))!;
        Assert.Equal("pink", (string?)resolved["label"]);
        Assert.NotEqual("", (string?)resolved["documentation"]!["value"]);
        Assert.Equal("markdown", (string?)resolved["documentation"]!["kind"]);
        Assert.Equal(pink["textEdit"]!.ToJsonString(), resolved["textEdit"]!.ToJsonString());
    });

    [Fact]
    public Task An_offer_brings_its_explanation_to_a_client_that_cannot_ask_for_it() => Session.RunAsync(Profiles.Sparse, async session =>
    {
        JsonNode pink = (await ItemsAsync(session.Open(Opening + "2026-11-25 check\n  gums pi|\n"))).First(item => (string?)item!["label"] == "pink")!;
        Assert.Contains("Written as: gums pink", (string?)pink["documentation"]!["value"], StringComparison.Ordinal);
        Assert.Equal("plaintext", (string?)pink["documentation"]!["kind"]);
    });

    [Fact]
    public Task An_offer_is_short_for_a_client_that_can_ask() => Session.RunAsync(Profiles.Rich, async session =>
        Assert.All(await ItemsAsync(session.Open(Opening + "2026-11-25 check\n  gums |\n")), item => Assert.Null(item!["documentation"])));

    [Theory]
    [InlineData("  weight |", "a weight such as 21.4kg, 47lb 3oz or 83.2-55.9kg")]
    [InlineData("  rr asleep |", "a count such as 18/15s, or a rate such as 72")]
    [InlineData("  photo |", "a file name, such as left-ear.jpg")]
    [InlineData("  recheck |", "what it is about, such as ear")]
    public Task What_a_line_still_needs(string line, string needed) => Session.RunAsync(Profiles.Rich, async session =>
    {
        JsonNode help = (await SignatureAsync(session.Open(Opening + "2026-11-25 check\n" + line), triggerKind: 2))!;
        JsonNode signature = Assert.Single(help["signatures"]!.AsArray())!;
        string active = (string)signature["parameters"]![(int)help["activeParameter"]!]!["label"]!;
        Assert.Equal(needed, active);
        Assert.Contains(active, (string?)signature["label"], StringComparison.Ordinal);
        Assert.Contains($"**{line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[0]}**", (string?)signature["documentation"]!["value"], StringComparison.Ordinal);
    });

    [Theory]
    [InlineData("  weight 20kg |", true)]
    [InlineData("  gums pink |", true)]
    [InlineData("  > weight |", false)]
    [InlineData("  |weight", false)]
    public Task A_complete_line_is_not_covered(string line, bool whenAsked) => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Opening + "2026-11-25 check\n" + line);
        Assert.Null(await SignatureAsync(note, triggerKind: 3));
        Assert.Equal(whenAsked, await SignatureAsync(note, triggerKind: 1) is not null);
    });

    private static Task<JsonNode?> SignatureAsync(EditedNote note, int triggerKind) =>
        note.AskAsync("textDocument/signatureHelp", new JsonObject { ["context"] = new JsonObject { ["triggerKind"] = triggerKind, ["isRetrigger"] = triggerKind == 3 } });

    [Theory]
    [InlineData("  > a remark ab|out gums\n")]
    [InlineData("  # a comment gu|ms\n")]
    public Task Nothing_in_free_text(string line) => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Opening + "2026-11-25 check\n" + line);
        Assert.Empty(await ItemsAsync(note));
    });

    private static async Task<JsonArray> ItemsAsync(EditedNote note)
    {
        JsonNode? list = await note.AskAsync("textDocument/completion", new JsonObject { ["context"] = new JsonObject { ["triggerKind"] = 1 } });
        return list as JsonArray ?? list?["items"]?.AsArray() ?? [];
    }

    private static string TextOf(JsonNode item) => (string?)item["textEdit"]?["newText"] ?? (string?)item["insertText"] ?? "";
}
