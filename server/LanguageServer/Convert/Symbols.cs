using System.Collections.Immutable;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Symbols;
using HealthNotes.LanguageServer.Protocol;
using Range = HealthNotes.LanguageServer.Protocol.Range;

namespace HealthNotes.LanguageServer.Convert;

/// <summary>From outlines and growing selections to the client's.</summary>
internal static class Symbols
{
    /// <summary>A line of the outline with what it holds.</summary>
    public static DocumentSymbol Tree(Document document, OutlineSymbol symbol, PositionEncoding encoding) => new(symbol.Name, KindOf(symbol.Sort))
    {
        Detail = symbol.Detail,
        Range = Positions.Of(document, symbol.Range, encoding),
        SelectionRange = Positions.Of(document, symbol.Selection, encoding),
        Children = symbol.Children.IsEmpty ? null : [.. symbol.Children.Select(child => Tree(document, child, encoding))],
    };

    /// <summary>A line of the outline, followed by what it holds.</summary>
    public static IEnumerable<DocumentSymbol> List(Document document, OutlineSymbol symbol, string? container, PositionEncoding encoding) =>
        symbol.Children.SelectMany(child => List(document, child, symbol.Name, encoding)).Prepend(new DocumentSymbol(symbol.Name, KindOf(symbol.Sort))
        {
            Location = new Location(document.Uri, Positions.Of(document, symbol.Range, encoding)),
            ContainerName = container,
        });

    /// <summary>The protocol's kinds are those of programs; the nearest are taken.</summary>
    public static SymbolKind KindOf(SymbolSort sort) => sort switch
    {
        SymbolSort.Pet => SymbolKind.Class,
        SymbolSort.Fact => SymbolKind.Property,
        SymbolSort.Medicine => SymbolKind.Constant,
        SymbolSort.Entry => SymbolKind.Namespace,
        SymbolSort.Reading => SymbolKind.Number,
        SymbolSort.Exam => SymbolKind.Field,
        SymbolSort.Finding => SymbolKind.Object,
        SymbolSort.Care => SymbolKind.Event,
        SymbolSort.Task => SymbolKind.EnumMember,
        SymbolSort.Photo => SymbolKind.File,
        _ => SymbolKind.String,
    };

    /// <summary>The ranges, smallest first, as a chain from the smallest outwards.</summary>
    public static SelectionRange Selection(Document document, Position position, ImmutableArray<PlaceRange> ranges, PositionEncoding encoding)
    {
        SelectionRange? outer = null;
        for (int i = ranges.Length - 1; i >= 0; i--)
        {
            outer = new SelectionRange(Positions.Of(document, ranges[i], encoding), outer);
        }

        return outer ?? new SelectionRange(new Range(position, position));
    }
}
