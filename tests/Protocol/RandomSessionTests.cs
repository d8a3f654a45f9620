using System.Text.Json.Nodes;
using HealthNotes.Protocol.Tests.Support;

namespace HealthNotes.Protocol.Tests;

/// <summary>
/// A long session of random edits. What the server says at its end, and now and then on the way, is what <c>hnote check</c>
/// says of the same text in a file. The session is the same in every run; <c>HNOTE_SEED</c> names another.
/// </summary>
public class RandomSessionTests
{
    private const int Edits = 5_000;
    private const int Looks = 20;
    private const int LongestText = 12_000;

    private static readonly string[] Odd =
    [
        "é", "🐕", "e\u0301", "狗", "\ud83d\udc08\u200d", "\t", "\u00a0", "#", ">", "@low", "~", "<", "/", "-", ".", "99999999999", "2026-02-30", "04/10/2026", "25:70", "18/15q",
        "gumz", "evry", " ", "  ", "\n", "\r\n", "\r", "\n\n", "\u2028", "\ufeff", "\0", "|", "`x`", "1/2", "½", "°C", "ok", "else ok",
    ];

    [Theory]
    [InlineData(1, "utf-16")]
    [InlineData(2, "utf-8")]
    public async Task Five_thousand_edits_end_in_what_check_says(int seed, string encoding)
    {
        if (int.TryParse(Environment.GetEnvironmentVariable("HNOTE_SEED"), out int other))
        {
            seed += other;
        }

        string folder = Directory.CreateTempSubdirectory("hnote-").FullName;
        JsonObject profile = Profiles.Counting(encoding);
        profile["initializationOptions"] = new JsonObject { ["pastFindings"] = true };
        string[] pieces = await PiecesAsync();
        try
        {
            await Session.RunAsync(profile, async session =>
            {
                var random = new Random(seed);
                EditedNote note = session.Open(await File.ReadAllTextAsync(Hnote.PathOf("samples/hazel-puppy.hnote")));
                var before = new Stack<string>();
                for (int i = 1; i <= Edits; i++)
                {
                    Step(note, random, pieces, before);
                    if (i % (Edits / Looks) == 0)
                    {
                        note.Save();
                        await AssertAsCheckAsync(note, Path.Combine(folder, $"{i}.hnote"), $"seed {seed}, after {i} edits");
                    }
                }
            });
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>The command prints one message for each line that was not understood; an editor marks every word of it.</summary>
    [Fact]
    public async Task What_is_shown_unasked_is_what_check_shows_unasked()
    {
        foreach (string sample in Directory.EnumerateFiles(Hnote.PathOf("samples"), "*.hnote"))
        {
            JsonArray problems = JsonNode.Parse(await Hnote.RunAsync("check", "--json", sample, "--today", Hnote.Today))!["files"]![0]!["problems"]!.AsArray();
            await Session.RunAsync(Profiles.Rich, async session =>
            {
                EditedNote note = session.Open(await File.ReadAllTextAsync(sample));
                IReadOnlyList<Shown> shown = await note.PullAsync();
                Assert.NotEmpty(shown);
                IEnumerable<string> printed = problems.Where(one => (bool)one!["shown"]!)
                    .Select(one => (string?)one!["level"] == "error" ? $"{one["line"]} error" : $"{one["line"]}:{one["column"]} {one["rule"]}");
                IEnumerable<string> marked = shown.Select(one => one.Level == "error" ? $"{one.Line + 1} error" : $"{one.Line + 1}:{one.Start + 1} {one.Rule}");
                Assert.Equal(printed.Order(StringComparer.Ordinal), marked.Distinct().Order(StringComparer.Ordinal));
            });
        }
    }

    private static void Step(EditedNote note, Random random, string[] pieces, Stack<string> before)
    {
        int at = Boundary(note.Text, random.Next(note.Text.Length + 1));
        switch (random.Next(note.Text.Length > LongestText ? 4 : 12))
        {
            case 0 or 1:
                Cut(note, at, random.Next(1, 12), before);
                break;
            case 2:
                Cut(note, at, random.Next(40, 900), before);
                break;
            case 3 when before.Count > 0:
                // undo, the way an editor does it when it has lost count: the whole text
                note.ReplaceAll(before.Pop());
                before.Clear();
                break;
            case 4:
                before.Push(note.Text);
                int other = Boundary(note.Text, random.Next(at + 1));
                note.Edit((at, 0, pieces[random.Next(pieces.Length)]), (other, 0, Odd[random.Next(Odd.Length)]));
                break;
            case 5 or 6:
                before.Push(note.Text);
                note.Edit(at, 0, Odd[random.Next(Odd.Length)]);
                break;
            case 7:
                before.Push(note.Text);
                int end = Boundary(note.Text, Math.Min(note.Text.Length, at + random.Next(20)));
                note.Edit(at, Math.Max(0, end - at), pieces[random.Next(pieces.Length)].Trim());
                break;
            default:
                before.Push(note.Text);
                int line = note.Text.LastIndexOf('\n', Math.Max(0, at - 1)) + 1;
                note.Edit(Boundary(note.Text, line), 0, pieces[random.Next(pieces.Length)]);
                break;
        }
    }

    private static void Cut(EditedNote note, int at, int length, Stack<string> before)
    {
        before.Push(note.Text);
        int end = Boundary(note.Text, Math.Min(note.Text.Length, at + length));
        note.Edit(at, Math.Max(0, end - at), "");
    }

    /// <summary>No editor parts the two halves of a character, or of a line break; and none has a place before the byte-order mark.</summary>
    private static int Boundary(string text, int at)
    {
        while (at > 0 && at < text.Length && ((char.IsLowSurrogate(text[at]) && char.IsHighSurrogate(text[at - 1])) || (text[at] == '\n' && text[at - 1] == '\r')))
        {
            at++;
        }

        return at == 0 && text.StartsWith('\ufeff') ? 1 : at;
    }

    private static async Task<string[]> PiecesAsync()
    {
        var pieces = new List<string>();
        foreach (string sample in Directory.EnumerateFiles(Hnote.PathOf("samples"), "*.hnote").Order(StringComparer.Ordinal))
        {
            pieces.AddRange((await File.ReadAllTextAsync(sample)).TrimStart('\ufeff').ReplaceLineEndings("\n").Split('\n').Where(line => line.Length < 200).Select(line => line + "\n"));
        }

        return [.. pieces];
    }

    private static async Task AssertAsCheckAsync(EditedNote note, string path, string when)
    {
        await File.WriteAllTextAsync(path, note.Text);
        JsonArray problems = JsonNode.Parse(await Hnote.RunAsync("check", "--json", path, "--today", Hnote.Today))!["files"]![0]!["problems"]!.AsArray();
        var utf16 = new Units("utf-16");
        string[] expected = [.. problems.Select(one =>
            $"{(int)one!["line"]! - 1}:{(int)one["column"]! - 1}-{(int)one["endColumn"]! - 1} {one["level"]} {one["rule"]} {one["message"]} [{string.Join(' ', one["evidence"]!.AsArray().Select(line => (int)line! - 1).Where(line => line != (int)one["line"]! - 1).TakeLast(10))}]")];
        string[] said = [.. (await note.PullAsync()).Select(one =>
        {
            int mark = one.Line == 0 && note.Text.StartsWith('\ufeff') ? 1 : 0;
            JsonObject start = utf16.PositionOf(note.Text, note.OffsetOf(one.Json["range"]!["start"]!));
            JsonObject end = utf16.PositionOf(note.Text, note.OffsetOf(one.Json["range"]!["end"]!));
            string message = one.Level == "urgent" ? one.Message["Phone now: ".Length..] : one.Message;
            return $"{start["line"]}:{(int)start["character"]! - mark}-{(int)end["character"]! - mark} {one.Level} {one.Rule} {message} [{string.Join(' ', one.Evidence)}]";
        })];
        // the server has the gravest of a line last
        if (!expected.Order(StringComparer.Ordinal).SequenceEqual(said.Order(StringComparer.Ordinal)))
        {
            string kept = Path.Combine(Path.GetTempPath(), $"hnote-random-{Path.GetFileName(path)}");
            File.Copy(path, kept, overwrite: true);
            string differ = string.Join('\n', expected.Except(said).Select(line => "- " + line).Concat(said.Except(expected).Select(line => "+ " + line)).Take(20));
            Assert.Fail($"{when}: check (-) and the server (+) differ; the text is in {kept}\n{differ}");
        }
    }
}
