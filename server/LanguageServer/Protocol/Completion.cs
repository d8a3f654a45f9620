namespace HealthNotes.LanguageServer.Protocol;

/// <summary>3.17, Language Features, Completion Request, CompletionList.</summary>
internal sealed record CompletionList(bool IsIncomplete, CompletionItem[] Items);

/// <summary>3.17, Language Features, Completion Request, CompletionItem. It comes back as it was sent when the client wants it resolved.</summary>
internal sealed record CompletionItem(string Label)
{
    public CompletionItemLabelDetails? LabelDetails { get; init; }

    public CompletionItemKind? Kind { get; init; }

    public string? Detail { get; init; }

    public MarkupContent? Documentation { get; init; }

    public bool? Preselect { get; init; }

    public string? SortText { get; init; }

    public string? FilterText { get; init; }

    public InsertTextFormat? InsertTextFormat { get; init; }

    public TextEdit? TextEdit { get; init; }

    public CompletionData? Data { get; init; }
}

/// <summary>What names an offer when it is to be resolved.</summary>
internal sealed record CompletionData(string Key);

/// <summary>3.17, Language Features, Completion Request, CompletionItemLabelDetails.</summary>
internal sealed record CompletionItemLabelDetails(string? Detail = null, string? Description = null);

/// <summary>3.17, Language Features, Completion Request, InsertTextFormat.</summary>
internal enum InsertTextFormat
{
    PlainText = 1,
    Snippet = 2,
}

/// <summary>3.17, Language Features, Completion Request, CompletionItemKind: those used.</summary>
internal enum CompletionItemKind
{
    Text = 1,
    Field = 5,
    Variable = 6,
    Class = 7,
    Property = 10,
    Unit = 11,
    Value = 12,
    Enum = 13,
    Keyword = 14,
    Snippet = 15,
    Reference = 18,
    EnumMember = 20,
    Constant = 21,
    Struct = 22,
    Event = 23,
    Operator = 24,
}
