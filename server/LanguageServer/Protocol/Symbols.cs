namespace HealthNotes.LanguageServer.Protocol;

/// <summary>
/// 3.17, Language Features, Document Symbols Request, DocumentSymbol and SymbolInformation in one: the first has ranges and
/// children, the second, for clients without a tree, a location.
/// </summary>
internal sealed record DocumentSymbol(string Name, SymbolKind Kind)
{
    public string? Detail { get; init; }

    public Range? Range { get; init; }

    public Range? SelectionRange { get; init; }

    public DocumentSymbol[]? Children { get; init; }

    public Location? Location { get; init; }

    public string? ContainerName { get; init; }
}

/// <summary>3.17, Workspace Features, Workspace Symbols Request, SymbolInformation.</summary>
internal sealed record SymbolInformation(string Name, SymbolKind Kind, Location Location, string? ContainerName = null);

/// <summary>3.17, Language Features, Document Symbols Request, SymbolKind: those used.</summary>
internal enum SymbolKind
{
    File = 1,
    Module = 2,
    Namespace = 3,
    Class = 5,
    Property = 7,
    Field = 8,
    Enum = 10,
    Variable = 13,
    Constant = 14,
    String = 15,
    Number = 16,
    Array = 18,
    Object = 19,
    Key = 20,
    EnumMember = 22,
    Event = 24,
}

/// <summary>3.17, Workspace Features, Workspace Symbols Request.</summary>
internal sealed record WorkspaceSymbolParams(string? Query = null);

/// <summary>3.17, Language Features, Folding Range Request, FoldingRange.</summary>
internal sealed record FoldingRange(int StartLine, int EndLine)
{
    public int? StartCharacter { get; init; }

    public int? EndCharacter { get; init; }

    public string? Kind { get; init; }
}

/// <summary>3.17, Language Features, Folding Range Request, FoldingRangeKind.</summary>
internal static class FoldingRangeKind
{
    public const string Comment = "comment";
    public const string Region = "region";
}
