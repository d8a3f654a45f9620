using System.Text.Json.Nodes;

namespace HealthNotes.Protocol.Tests.Support;

/// <summary>
/// A note in the client's editor. Its cursor is drawn in its text as <c>|</c>, or a range with <c>‹</c> and <c>›</c>.
/// </summary>
internal sealed class EditedNote
{
    private readonly Session session;

    private EditedNote(Session session, string uri)
    {
        this.session = session;
        Uri = uri;
    }

    public string Uri { get; }

    public string Text { get; private set; } = "";

    public int Version { get; private set; }

    /// <summary>Where the cursor stands, or the range starts.</summary>
    public int Cursor { get; private set; }

    /// <summary>Where the range ends.</summary>
    public int CursorEnd { get; private set; }

    public JsonObject Identifier => new() { ["uri"] = Uri };

    private LspClient Client => session.Client;

    /// <summary>Opens a text, its cursor taken out.</summary>
    public static EditedNote Open(Session session, string marked, string? uri)
    {
        var note = new EditedNote(session, uri ?? $"file:///notes/{Guid.NewGuid():n}.hnote") { Version = 1 };
        note.Take(marked);
        session.Client.Tell("textDocument/didOpen", new { textDocument = new { uri = note.Uri, languageId = "hnote", version = 1, text = note.Text } });
        return note;
    }

    /// <summary>Replaces characters, and tells so.</summary>
    public void Edit(int start, int length, string text) => Edit([(start, length, text)]);

    /// <summary>Several changes in one message: each counts in the text after the one before.</summary>
    public void Edit(params (int Start, int Length, string Text)[] edits)
    {
        var changes = new JsonArray();
        foreach ((int start, int length, string text) in edits)
        {
            changes.Add(new JsonObject { ["range"] = RangeOf(start, start + length), ["text"] = text });
            Text = Text[..start] + text + Text[(start + length)..];
            Cursor = CursorEnd = start + text.Length;
        }

        Change(changes);
    }

    /// <summary>Types at the cursor.</summary>
    public void Type(string text) => Edit(Cursor, CursorEnd - Cursor, text);

    /// <summary>Types at the cursor, one message a character.</summary>
    public void TypeSlowly(string text)
    {
        foreach (char c in text)
        {
            Type(c.ToString());
        }
    }

    /// <summary>Replaces the first occurrence of a text.</summary>
    public void Replace(string old, string text) => Edit(At(old), old.Length, text);

    /// <summary>Sends the whole text anew.</summary>
    public void ReplaceAll(string marked)
    {
        Take(marked);
        Change([new JsonObject { ["text"] = Text }]);
    }

    /// <summary>Sends changes that are made by hand; the text is as given afterwards.</summary>
    public void ChangeByHand(string after, JsonArray changes)
    {
        Text = after;
        Change(changes);
    }

    /// <summary>Makes an editor's changes of the server's.</summary>
    public void Apply(JsonNode edits)
    {
        foreach ((int start, int end, string text) in edits.AsArray()
            .Select(edit => (Start: OffsetOf(edit!["range"]!["start"]!), End: OffsetOf(edit["range"]!["end"]!), Text: (string)edit["newText"]!))
            .OrderByDescending(edit => edit.Start).ThenByDescending(edit => edit.End).ToArray())
        {
            Edit(start, end - start, text);
        }
    }

    public void Save() => Client.Tell("textDocument/didSave", new { textDocument = new { uri = Uri } });

    public void Close() => Client.Tell("textDocument/didClose", new { textDocument = new { uri = Uri } });

    /// <summary>A request about the note at its cursor.</summary>
    public Task<JsonNode?> AskAsync(string method, JsonObject? more = null) => Client.AskAsync(method, With(more, new JsonObject { ["position"] = PositionOf(Cursor) }));

    /// <summary>A request about the note or a range of it.</summary>
    public Task<JsonNode?> AskAboutAsync(string method, JsonObject? more = null) => Client.AskAsync(method, With(more, []));

    /// <summary>The diagnostics, asked for.</summary>
    public async Task<IReadOnlyList<Shown>> PullAsync()
    {
        JsonNode report = (await AskAboutAsync("textDocument/diagnostic"))!;
        Assert.Equal("full", (string)report["kind"]!);
        return Read(report["items"]!);
    }

    /// <summary>Waits for diagnostics that are pushed and fit.</summary>
    public async Task<IReadOnlyList<Shown>> HearAsync(Func<IReadOnlyList<Shown>, bool> fits, int sinceVersion = 0)
    {
        JsonNode published = (await Client.HearAsync("textDocument/publishDiagnostics", said =>
            (string?)said!["uri"] == Uri && (int?)said["version"] is var version && (version is null || version >= sinceVersion) && fits(Read(said["diagnostics"]!))))!;
        return Read(published["diagnostics"]!);
    }

    /// <summary>Everything that was published about the note.</summary>
    public IReadOnlyList<JsonNode> Published =>
        [.. Client.Heard.Where(said => (string?)said["method"] == "textDocument/publishDiagnostics" && (string?)said["params"]!["uri"] == Uri).Select(said => said["params"]!)];

    public JsonObject PositionOf(int offset) => session.Units.PositionOf(Text, offset);

    public int OffsetOf(JsonNode position) => session.Units.OffsetOf(Text, position);

    public JsonObject RangeOf(int start, int end) => new() { ["start"] = PositionOf(start), ["end"] = PositionOf(end) };

    /// <summary>The range of the first occurrence of a text.</summary>
    public JsonObject RangeOf(string text) => RangeOf(At(text), At(text) + text.Length);

    /// <summary>The range that is drawn.</summary>
    public JsonObject Selected => RangeOf(Cursor, CursorEnd);

    /// <summary>The range of the whole note.</summary>
    public JsonObject Whole => RangeOf(0, Text.Length);

    /// <summary>The characters of a range.</summary>
    public string TextOf(JsonNode range) => Text[OffsetOf(range["start"]!)..OffsetOf(range["end"]!)];

    /// <summary>Where a text stands first.</summary>
    public int At(string text)
    {
        int at = Text.IndexOf(text, StringComparison.Ordinal);
        Assert.True(at >= 0, $"there is no {text} in the note");
        return at;
    }

    /// <summary>Puts the cursor after the first occurrence of a text.</summary>
    public EditedNote After(string text)
    {
        Cursor = CursorEnd = At(text) + text.Length;
        return this;
    }

    private static IReadOnlyList<Shown> Read(JsonNode diagnostics) => [.. diagnostics.AsArray().Select(one => new Shown(one!))];

    private JsonObject With(JsonObject? more, JsonObject place)
    {
        JsonObject parameters = more ?? [];
        parameters["textDocument"] = Identifier;
        foreach ((string name, JsonNode? value) in place)
        {
            parameters.TryAdd(name, value?.DeepClone());
        }

        return parameters;
    }

    private void Take(string marked)
    {
        int bar = marked.IndexOf('|', StringComparison.Ordinal);
        int start = marked.IndexOf('‹', StringComparison.Ordinal);
        (Cursor, CursorEnd) = bar >= 0 ? (bar, bar) : start >= 0 ? (start, marked.IndexOf('›', StringComparison.Ordinal) - 1) : (marked.Length, marked.Length);
        Text = marked.Replace("|", "", StringComparison.Ordinal).Replace("‹", "", StringComparison.Ordinal).Replace("›", "", StringComparison.Ordinal);
    }

    private void Change(JsonArray changes) =>
        Client.Tell("textDocument/didChange", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = Uri, ["version"] = ++Version }, ["contentChanges"] = changes });
}

/// <summary>A diagnostic as the client shows it.</summary>
internal sealed record Shown(JsonNode Json)
{
    public int Line => (int)Json["range"]!["start"]!["line"]!;

    public int Start => (int)Json["range"]!["start"]!["character"]!;

    public int End => (int)Json["range"]!["end"]!["character"]!;

    public string Rule => (string)Json["code"]!;

    public int Severity => (int)Json["severity"]!;

    public string Message => (string)Json["message"]!;

    public string Level => (string)Json["data"]!["level"]!;

    /// <summary>The lines it rests on besides its own.</summary>
    public IReadOnlyList<int> Evidence => [.. (Json["relatedInformation"] as JsonArray ?? []).Select(related => (int)related!["location"]!["range"]!["start"]!["line"]!)];
}
