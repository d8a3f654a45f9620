using System.Collections.Immutable;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Features.Hover;

/// <summary>What a word, value, site or date of a note means. It describes and compares; it never says what to do about it.</summary>
public static class HoverFeature
{
    /// <summary>The hover of a place; null where there is nothing to say. Free text and comments say enough for themselves.</summary>
    public static HoverText? At(Document document, Place place, FeatureSettings settings)
    {
        Place there = document.Clamp(place);
        if (TokenAt(document.Syntax.Lines[there.Line].Marks, there.Character) is not { } token)
        {
            return null;
        }

        var at = new HoverLine(document, there.Line, token, ShownIn.Us(document, settings));
        string? text = Text(at);
        return string.IsNullOrEmpty(text) ? null : new HoverText(PlaceRange.Of(there.Line, token.Span), text);
    }

    private static string? Text(HoverLine at) => at.Token.Kind switch
    {
        TokenKind.LineWord => WordHover.At(at),
        TokenKind.Date => DateHover.At(at),
        TokenKind.EntryKind => StateHover.Fixed(at.Text),
        TokenKind.Site => SiteHover.At(at),
        TokenKind.Tag => TagHover.At(at),
        TokenKind.Value => ValueHover.At(at) ?? StateHover.At(at),
        TokenKind.Keyword => ValueHover.At(at),
        TokenKind.State => StateHover.At(at) ?? DescribingHover.At(at),
        TokenKind.Describing => DescribingHover.At(at) ?? StateHover.At(at),
        TokenKind.Name => MedicineHover.At(at),
        _ => null,
    };

    /// <summary>The token that holds the character behind the place, else the one that ends there.</summary>
    private static Token? TokenAt(ImmutableArray<Token> tokens, int character)
    {
        Token? before = null;
        foreach (Token token in tokens)
        {
            if (token.Span.Start <= character && character < token.Span.End)
            {
                return token;
            }

            before = token.Span.End == character ? token : before;
        }

        return before;
    }
}
