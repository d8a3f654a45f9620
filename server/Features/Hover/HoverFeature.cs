using System.Collections.Immutable;
using HealthNotes.Features.Checks;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Features.Hover;

/// <summary>What a word, value, site or date of a note means. It describes and compares; it never says what to do about it.</summary>
public static class HoverFeature
{
    /// <summary>The hover of a place; null where there is nothing to say. Free text and most comments say enough for themselves.</summary>
    public static HoverText? At(Document document, Place place, FeatureSettings settings)
    {
        Place there = document.Clamp(place);
        if (document.Syntax.Lines[there.Line].Kind == LineKind.Comment)
        {
            return Waiting(document, there);
        }

        if (TokenAt(document.Syntax.Lines[there.Line].Marks, there.Character) is not { } token)
        {
            return null;
        }

        var at = new HoverLine(document, there.Line, token, ShownIn.Us(document, settings));
        string? text = Text(at);
        return string.IsNullOrEmpty(text) ? null : new HoverText(PlaceRange.Of(there.Line, token.Span), text);
    }

    /// <summary>What a check still asks for behind a <c>#</c> is explained as if it were written.</summary>
    private static HoverText? Waiting(Document document, Place there)
    {
        if (document.Note.EntryAt(there.Line) is not { Head.Kind: "check" } || WaitingLine.At(document, there.Line) is not { } waiting)
        {
            return null;
        }

        string line = document.Syntax.Lines[there.Line].Text;
        int start = line.IndexOf(waiting.Text, StringComparison.Ordinal);
        return there.Character < start ? null : new HoverText(PlaceRange.Of(there.Line, new TextSpan(start, waiting.Text.Length)), WordHover.Waiting(waiting.Word, document.Record.Pet.Species));
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
