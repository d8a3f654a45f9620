using HealthNotes.Features.Actions;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Hints;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Handlers;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;
using HealthNotes.Rendering.Pages;

using Range = HealthNotes.LanguageServer.Protocol.Range;

namespace HealthNotes.LanguageServer.Session;

/// <summary>3.17, Workspace Features, Execute a command. What changes a note is asked of the client and comes back as a change.</summary>
internal sealed class Commands(Client client, ServerEvents events)
{
    /// <summary>Runs a command; the result is what it made, or null.</summary>
    /// <exception cref="RefusedRequestException">There is no such command, or no such note.</exception>
    public Task<string?> RunAsync(Workspace workspace, ExecuteCommandParams parameters, CancellationToken token) => parameters.Command switch
    {
        CommandNames.OpenPage => OpenPageAsync(NoteOf(workspace, parameters)),
        CommandNames.AddCheckToday => AddCheckAsync(NoteOf(workspace, parameters), workspace.Client),
        CommandNames.NextPart => NextPartAsync(NoteOf(workspace, parameters), CommandArguments.Number(parameters.Arguments, 1), workspace.Client),
        CommandNames.Usual => Task.FromResult<string?>(UsualRate.Of(NoteOf(workspace, parameters), CommandArguments.Text(parameters.Arguments, 1) ?? "", CommandArguments.Text(parameters.Arguments, 2) ?? "")),
        CommandNames.ShowUnits => Task.FromResult(ShowUnits(CommandArguments.Text(parameters.Arguments, 0))),
        CommandNames.GoTo => GoToAsync(NoteOf(workspace, parameters), CommandArguments.Number(parameters.Arguments, 1), CommandArguments.Number(parameters.Arguments, 2)),
        _ => throw Refused($"there is no command {parameters.Command}"),
    };

    private async Task<string?> OpenPageAsync(Document document)
    {
        string page = PageFile.Write(document.Uri, VisitPage.Html(document.Analysis, PageFile.OptionsFor(document.Uri)));
        string uri = Uris.Of(page);
        if (!await client.ShowAsync(new ShowDocumentParams(uri, External: true)).ConfigureAwait(false))
        {
            client.Say(MessageType.Info, $"The page is in {page}");
        }

        return uri;
    }

    private Task<string?> AddCheckAsync(Document document, ClientProfile profile) => ChangeAsync(document, CheckEdits.AddCheckForToday(document), "Add a check for today", profile);

    private async Task<string?> NextPartAsync(Document document, int line, ClientProfile profile)
    {
        if (NextPart.After(document, line) is { } next)
        {
            return await ChangeAsync(document, next, "Next part", profile).ConfigureAwait(false);
        }

        client.Say(MessageType.Info, "No part of a check waits behind a # here.");
        return null;
    }

    private async Task<string?> ChangeAsync(Document document, CheckEdit check, string label, ClientProfile profile)
    {
        if (check.Edit is { } edit && !await client.ApplyAsync(label, Edits.InWorkspace(document, [edit], profile)).ConfigureAwait(false))
        {
            client.Say(MessageType.Warning, "Your editor did not make the change.");
            return null;
        }

        // the cursor stands in a line of plain characters, where every encoding counts the same
        return await GoToAsync(document, check.Cursor.Line, check.Cursor.Character).ConfigureAwait(false);
    }

    private async Task<string?> GoToAsync(Document document, int line, int character)
    {
        var cursor = new Position(line, character);
        await client.ShowAsync(new ShowDocumentParams(document.Uri, TakeFocus: true, Selection: new Range(cursor, cursor))).ConfigureAwait(false);
        return document.Uri;
    }

    private string? ShowUnits(string? wanted)
    {
        UnitsShown shown = events.Apply(before => before with { Units = ClientSettings.UnitsOf(wanted) ?? Next(before.Units) }).Units;
        return ClientSettings.NameOf(shown);
    }

    private static UnitsShown Next(UnitsShown units) => units switch
    {
        UnitsShown.AsNoted => UnitsShown.Metric,
        UnitsShown.Metric => UnitsShown.Us,
        _ => UnitsShown.AsNoted,
    };

    private static Document NoteOf(Workspace workspace, ExecuteCommandParams parameters) =>
        CommandArguments.Text(parameters.Arguments, 0) is { } uri && workspace.Find(uri) is { } document
            ? document
            : throw Refused($"{parameters.Command} needs the name of a note that is open");

    private static RefusedRequestException Refused(string message) => new(ErrorCodes.InvalidParams, message);
}
