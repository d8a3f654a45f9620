using System.Text.Json;
using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Documents;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.Tests.LanguageServer;

/// <summary>What goes over the wire, one direction at a time.</summary>
public class ConvertTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);
    private static readonly Workspace Plain = new(Today);

    private static Diagnostic[] DiagnosticsOf(string text, ClientProfile? client = null) =>
        Findings.Of(Document.Open("file:///n.hnote", 1, text, Today), null, Plain with { Client = client ?? ClientProfile.Plain });

    [Theory]
    [InlineData(FindingLevel.Error, 2)]
    [InlineData(FindingLevel.Urgent, 1)]
    [InlineData(FindingLevel.Call, 1)]
    [InlineData(FindingLevel.Watch, 3)]
    [InlineData(FindingLevel.Info, 4)]
    public void Severities(FindingLevel level, int severity) => Assert.Equal(severity, (int)Findings.SeverityOf(level));

    [Fact]
    public void A_reason_to_phone_stands_above_a_slip_and_the_urgent_says_so()
    {
        Diagnostic[] diagnostics = DiagnosticsOf("pet M\nspecies dog\nborn 2020\n2026-11-20 check\n  gums blue\n  coat glosy\n");
        Diagnostic urgent = Assert.Single(diagnostics, d => d.Code == "gum-colour");
        Assert.Equal((DiagnosticSeverity.Error, "urgent"), (urgent.Severity, urgent.Data!.Level));
        Assert.StartsWith("Phone now: ", urgent.Message, StringComparison.Ordinal);
        Diagnostic error = Assert.Single(diagnostics, d => d.Code == "unknown-word");
        Assert.Equal((DiagnosticSeverity.Warning, "error", "glossy"), (error.Severity, error.Data!.Level, error.Data.Nearest));
        Assert.All(diagnostics, d => Assert.Equal("hnote", d.Source));
    }

    [Fact]
    public void The_gravest_of_a_line_is_last()
    {
        Diagnostic[] diagnostics = DiagnosticsOf("pet M\nspecies dog\nborn 2020\n2026-11-20 check\n  eye L red, gums blue\n  gums pale\n");
        Diagnostic[] ofGait = [.. diagnostics.Where(d => d.Range.Start.Line == 4)];
        Assert.True(ofGait.Length > 1);
        Assert.Equal(DiagnosticSeverity.Error, ofGait[^1].Severity);
        Assert.Equal(diagnostics.Select(d => d.Range.Start.Line).Order(), diagnostics.Select(d => d.Range.Start.Line));
    }

    [Fact]
    public void Evidence_is_sent_to_clients_that_show_it_and_names_other_lines_only()
    {
        const string Text = "pet M\nspecies dog\nborn 2020\n2026-10-20 check\n  lump L-flank 10mm\n2026-11-20 check\n  lump L-flank 30mm\n";
        Diagnostic grown = Assert.Single(DiagnosticsOf(Text, new ClientProfile { RelatedInformation = true }), d => d.RelatedInformation is not null);
        Assert.Equal(["lump L-flank 10mm"], grown.RelatedInformation!.Select(related => related.Message));
        Assert.Equal(4, grown.RelatedInformation![0].Location.Range.Start.Line);
        Assert.All(DiagnosticsOf(Text), d => Assert.Null(d.RelatedInformation));
    }

    [Fact]
    public void Fingerprints_differ_when_anything_shown_differs()
    {
        Diagnostic one = new(default, DiagnosticSeverity.Error, "a", "hnote", "m") { Data = new DiagnosticData("error") };
        Diagnostic[] others =
        [
            one with { Message = "n" }, one with { Code = "b" }, one with { Severity = DiagnosticSeverity.Hint }, one with { Data = new DiagnosticData("urgent") },
            one with { Range = new HealthNotes.LanguageServer.Protocol.Range(new Position(0, 0), new Position(0, 1)) },
            one with { RelatedInformation = [new DiagnosticRelatedInformation(new Location("u", default), "m")] },
            one with { Code = "", Message = "am" },
        ];
        Assert.Equal(Fingerprint.Of([one]), Fingerprint.Of([one with { }]));
        Assert.Equal(others.Length + 2, others.Append(one).Select(d => Fingerprint.Of([d])).Append(Fingerprint.Of([])).Distinct().Count());
    }

    [Theory]
    [InlineData("""{"units":"us"}""", UnitsShown.Us, true, false)]
    [InlineData("""{"hnote":{"units":"metric","pastFindings":true}}""", UnitsShown.Metric, true, true)]
    [InlineData("""{"hints":{"rates":false}}""", UnitsShown.AsNoted, false, false)]
    [InlineData("""{"hints":false}""", UnitsShown.AsNoted, false, false)]
    [InlineData("""{"units":5,"hints":{"rates":"no"},"pastFindings":null,"other":[]}""", UnitsShown.AsNoted, true, false)]
    [InlineData("null", UnitsShown.AsNoted, true, false)]
    [InlineData("[1]", UnitsShown.AsNoted, true, false)]
    [InlineData("""{"hnote":null}""", UnitsShown.AsNoted, true, false)]
    public void Settings_take_what_fits_and_pass_over_the_rest(string json, UnitsShown units, bool rates, bool past)
    {
        using var document = JsonDocument.Parse(json);
        FeatureSettings settings = ClientSettings.Of(document.RootElement, FeatureSettings.Default);
        Assert.Equal((units, rates, past), (settings.Units, settings.Hints.Rates, settings.PastFindings));
    }

    [Fact]
    public void No_settings_are_no_change() => Assert.Equal(FeatureSettings.Default, ClientSettings.Of(null, FeatureSettings.Default));

    [Theory]
    [InlineData("file:///home/a/My%20pets/m.hnote", "/home/a/My pets/m.hnote")]
    [InlineData("file:///home/a/%C3%A9.hnote", "/home/a/é.hnote")]
    [InlineData("file:///c%3A/pets/m.hnote", "c:/pets/m.hnote")]
    [InlineData("untitled:Untitled-1", null)]
    [InlineData("vscode-remote://host/m.hnote", null)]
    [InlineData("not a uri", null)]
    [InlineData("", null)]
    [InlineData(null, null)]
    public void Paths_of_names(string? uri, string? path) => Assert.Equal(path, Uris.PathOf(uri)?.Replace('\\', '/'));

    [Theory]
    [InlineData("/home/a/My pets/é #1.hnote")]
    [InlineData("/home/a/%41.hnote")]
    [InlineData("/home/a/100%/%2541?.hnote")]
    public void Names_of_paths_come_back(string path) => Assert.Equal(path, Uris.PathOf(Uris.Of(path)));

    [Theory]
    [InlineData("{}")]
    [InlineData("""{"capabilities":null,"processId":null,"rootUri":null,"workspaceFolders":null,"initializationOptions":null,"trace":null}""")]
    [InlineData("""{"capabilities":{"textDocument":null,"workspace":{"codeLens":null,"workspaceEdit":null},"general":{"positionEncodings":null},"window":{"showDocument":null}},"locale":"en","x":{}}""")]
    public void Missing_null_and_unknown_fields_of_initialize_are_normal(string json)
    {
        InitializeParams parameters = JsonSerializer.Deserialize(json, ProtocolJson.Default.InitializeParams)!;
        Assert.Equal(ClientProfile.Plain, ClientProfile.Of(parameters.Capabilities));
        Assert.Empty(Folders.Of(parameters));
    }

    [Fact]
    public void Folders_come_from_whichever_field_is_there()
    {
        Assert.Equal(["/a", "/b"], Folders.Of(new InitializeParams(RootUri: "file:///c", WorkspaceFolders: [new WorkspaceFolder("file:///a"), new WorkspaceFolder("file:///b"), new WorkspaceFolder("http://x/")])).AsEnumerable());
        Assert.Equal(["/c"], Folders.Of(new InitializeParams(RootUri: "file:///c", RootPath: "/d")).AsEnumerable());
        Assert.Equal(["/d"], Folders.Of(new InitializeParams(RootPath: "/d")).AsEnumerable());
        Assert.Equal(["/b", "/e"], Folders.After(["/a", "/b"], new WorkspaceFoldersChangeEvent([new WorkspaceFolder("file:///e"), new WorkspaceFolder("file:///b")], [new WorkspaceFolder("file:///a")])).AsEnumerable());
    }

    [Theory]
    [InlineData("**Gums** are `pink`.", "Gums are pink.")]
    [InlineData("## Range\n\\*1 to 2\\* s", "Range\n*1 to 2* s")]
    [InlineData("tag #1", "tag #1")]
    public void Plain_text_of_markdown(string markdown, string text) => Assert.Equal(text, Markups.Plain(markdown));

    [Theory]
    [InlineData("quickfix", "quickfix", true)]
    [InlineData("refactor", "refactor.rewrite", true)]
    [InlineData("source", "source.fixAll.hnote", true)]
    [InlineData("source.fixAll", "source.fixAll.hnote", true)]
    [InlineData("source.organizeImports", "source.fixAll.hnote", false)]
    [InlineData("quick", "quickfix", false)]
    [InlineData("", "quickfix", true)]
    public void Kinds_of_action_are_a_tree(string only, string kind, bool wanted) => Assert.Equal(wanted, HealthNotes.LanguageServer.Convert.Actions.Wants(new CodeActionContext([only]), kind));
}
