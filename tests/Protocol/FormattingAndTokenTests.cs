using System.Text.Json.Nodes;
using HealthNotes.Protocol.Tests.Support;

namespace HealthNotes.Protocol.Tests;

/// <summary>3.17, Formatting requests and Semantic Tokens.</summary>
public class FormattingAndTokenTests
{
    private const string Unformatted = "pet   Marlow\nspecies dog\n2026-11-20 check\ngums    PINK\n   hr 18 / 15 s\n";

    [Fact]
    public async Task A_note_is_formatted_as_the_command_does()
    {
        string path = Path.Combine(Path.GetTempPath(), $"hnote-{Guid.NewGuid():n}.hnote");
        await File.WriteAllTextAsync(path, Unformatted);
        try
        {
            await Hnote.RunAsync("format", "--write", path);
            string formatted = await File.ReadAllTextAsync(path);
            await Session.RunAsync(Profiles.Rich, async session =>
            {
                EditedNote note = session.Open(Unformatted);
                note.Apply((await note.AskAboutAsync("textDocument/formatting", Options()))!);
                Assert.Equal(formatted, note.Text);
                Assert.NotEqual(Unformatted, note.Text);
                JsonNode? again = await note.AskAboutAsync("textDocument/formatting", Options());
                Assert.True(again is null || again.AsArray().Count == 0);
            });
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public Task Only_the_lines_that_are_chosen() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Unformatted);
        JsonObject options = Options();
        options["range"] = note.RangeOf("gums    PINK");
        note.Apply((await note.AskAboutAsync("textDocument/rangeFormatting", options))!);
        Assert.StartsWith("pet   Marlow\n", note.Text, StringComparison.Ordinal);
        Assert.Contains("\n  gums pink\n", note.Text, StringComparison.Ordinal);
    });

    [Fact]
    public Task A_new_line_in_an_entry_is_indented() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open("pet Marlow\n2026-11-20 check\n|");
        JsonObject options = Options();
        options["ch"] = "\n";
        note.Apply((await note.AskAsync("textDocument/onTypeFormatting", options))!);
        Assert.Equal("pet Marlow\n2026-11-20 check\n  ", note.Text);
    });

    [Fact]
    public Task Every_token_is_where_the_editor_draws_it() => Session.RunAsync(Profiles.Counting("utf-8"), async session =>
    {
        EditedNote note = session.Open("pet 🐕 Marlow\nspecies dog\n2026-11-20 check\n  hr 18/15s # é\n  lump L-flank @low 8mm\n");
        string[] types = [.. session.Capabilities["semanticTokensProvider"]!["legend"]!["tokenTypes"]!.AsArray().Select(type => (string)type!)];
        JsonNode answer = (await note.AskAboutAsync("textDocument/semanticTokens/full"))!;
        List<(string Text, string Type)> tokens = Read(note, answer["data"]!.AsArray(), types);
        string[] words = [.. tokens.Select(token => token.Text.Trim())];
        Assert.Contains("hr", words);
        Assert.Contains("2026-11-20", words);
        Assert.Contains("# é", words);
        Assert.Contains(words, word => word.Contains("low", StringComparison.Ordinal));
    });

    [Fact]
    public Task Tokens_of_a_range_and_their_changes() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open("pet Marlow\nspecies dog\n2026-11-20 check\n  hr 18/15s\n  gums pink\n");
        JsonNode full = (await note.AskAboutAsync("textDocument/semanticTokens/full"))!;
        JsonNode part = (await note.AskAboutAsync("textDocument/semanticTokens/range", new JsonObject { ["range"] = note.RangeOf("hr 18/15s") }))!;
        Assert.InRange(part["data"]!.AsArray().Count, 5, full["data"]!.AsArray().Count - 5);
        note.Replace("  gums pink\n", "  crt 1s\n  gums pale\n");
        JsonNode delta = (await note.AskAboutAsync("textDocument/semanticTokens/full/delta", new JsonObject { ["previousResultId"] = (string?)full["resultId"] }))!;
        List<int> numbers = [.. full["data"]!.AsArray().Select(number => (int)number!)];
        foreach (JsonNode? edit in delta["edits"]!.AsArray().OrderByDescending(edit => (int)edit!["start"]!))
        {
            numbers.RemoveRange((int)edit!["start"]!, (int)edit["deleteCount"]!);
            numbers.InsertRange((int)edit["start"]!, (edit["data"] as JsonArray ?? []).Select(number => (int)number!));
        }

        JsonNode after = (await note.AskAboutAsync("textDocument/semanticTokens/full"))!;
        Assert.Equal(after["data"]!.AsArray().Select(number => (int)number!), numbers);
    });

    private static JsonObject Options() => new() { ["options"] = new JsonObject { ["tabSize"] = 2, ["insertSpaces"] = true } };

    /// <summary>Reads the relative numbers as an editor does (3.17, Semantic Tokens, Integer Encoding for Tokens).</summary>
    private static List<(string Text, string Type)> Read(EditedNote note, JsonArray data, string[] types)
    {
        var tokens = new List<(string, string)>();
        int line = 0;
        int start = 0;
        for (int i = 0; i < data.Count; i += 5)
        {
            int down = (int)data[i]!;
            line += down;
            start = down == 0 ? start + (int)data[i + 1]! : (int)data[i + 1]!;
            var range = new JsonObject
            {
                ["start"] = new JsonObject { ["line"] = line, ["character"] = start },
                ["end"] = new JsonObject { ["line"] = line, ["character"] = start + (int)data[i + 2]! },
            };
            tokens.Add((note.TextOf(range), types[(int)data[i + 3]!]));
        }

        return tokens;
    }
}
