using HealthNotes.Features.Completion;
using HealthNotes.Features.Documents;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;
using CompletionItem = HealthNotes.LanguageServer.Protocol.CompletionItem;
using CompletionList = HealthNotes.LanguageServer.Protocol.CompletionList;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>3.17, Language Features, Completion Request and Completion Item Resolve Request.</summary>
internal static class CompletionHandler
{
    /// <summary>After these the list opens by itself: a word is over, a side is named, a tag begins, a number may need its unit.</summary>
    public static CompletionOptions Options { get; } = new([" ", "-", "@", .. "0123456789".Select(digit => digit.ToString())], ResolveProvider: true);

    /// <summary>What may be written at the place.</summary>
    public static CompletionList? At(Workspace workspace, TextDocumentPositionParams parameters, CancellationToken token)
    {
        if (workspace.Find(parameters.TextDocument.Uri) is not { } document)
        {
            return null;
        }

        Place place = Places.Of(document, parameters.Position, workspace.Client.Encoding);
        Features.Completion.Items.CompletionList found = CompletionFeature.At(document, place, workspace.Settings, new Surroundings(Clock.Now, () => PageFile.PicturesBeside(document.Uri)));
        return new CompletionList(found.IsIncomplete, [.. found.Items.Select(item => Offers.Of(document, item, workspace.Client))]);
    }

    /// <summary>The offer with its explanation.</summary>
    public static CompletionItem Resolve(Workspace workspace, CompletionItem item, CancellationToken token) =>
        item.Data is { } data && CompletionFeature.Resolve(data.Key) is { } markdown
            ? item with { Documentation = Markups.Of(markdown, workspace.Client.MarkdownInCompletion) }
            : item;
}
