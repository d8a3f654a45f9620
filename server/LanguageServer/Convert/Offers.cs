using HealthNotes.Features.Completion;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Documents;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;
using CompletionItem = HealthNotes.Features.Completion.Items.CompletionItem;
using ItemKind = HealthNotes.LanguageServer.Protocol.CompletionItemKind;

namespace HealthNotes.LanguageServer.Convert;

/// <summary>From what may be written to completion items.</summary>
internal static class Offers
{
    /// <summary>One offer.</summary>
    public static Protocol.CompletionItem Of(Document document, CompletionItem item, ClientProfile client)
    {
        bool snippet = client.Snippets && item.Snippet is not null;
        return new Protocol.CompletionItem(item.Label)
        {
            Kind = KindOf(item.Kind),
            Detail = item.Detail.Length == 0 ? null : item.Detail,
            FilterText = item.FilterText,
            SortText = item.SortKey,
            Preselect = item.Preselect ? true : null,
            InsertTextFormat = snippet ? InsertTextFormat.Snippet : InsertTextFormat.PlainText,
            TextEdit = Edits.Of(document, snippet ? item.Edit with { NewText = item.Snippet! } : item.Edit, client.Encoding),
            Documentation = client.ResolvesDocumentation || item.Key is not { } key || CompletionFeature.Resolve(key) is not { } markdown ? null : Markups.Of(markdown, client.MarkdownInCompletion),
            Data = item.Key is null ? null : new CompletionData(item.Key),
        };
    }

    /// <summary>The small picture an editor shows: the nearest of those the protocol has.</summary>
    public static ItemKind KindOf(CompletionKind kind) => kind switch
    {
        CompletionKind.Fact => ItemKind.Property,
        CompletionKind.Vital => ItemKind.Variable,
        CompletionKind.Part => ItemKind.Field,
        CompletionKind.Finding => ItemKind.Class,
        CompletionKind.Care => ItemKind.Event,
        CompletionKind.Task => ItemKind.Keyword,
        CompletionKind.Site => ItemKind.Struct,
        CompletionKind.Tag => ItemKind.Reference,
        CompletionKind.Unit => ItemKind.Unit,
        CompletionKind.Value => ItemKind.Value,
        CompletionKind.Describing => ItemKind.EnumMember,
        CompletionKind.State => ItemKind.Enum,
        CompletionKind.Medicine => ItemKind.Constant,
        CompletionKind.Comparison => ItemKind.Constant,
        CompletionKind.Date => ItemKind.Value,
        CompletionKind.Joining => ItemKind.Operator,
        CompletionKind.Entry => ItemKind.Keyword,
        CompletionKind.Lines => ItemKind.Snippet,
        _ => ItemKind.Text,
    };
}
