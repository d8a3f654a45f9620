using System.Collections.Immutable;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Features.Tokens;

/// <summary>What each stretch of a note is, for colouring. Blanks and what is not understood have no token.</summary>
public static class TokenFeature
{
    private const int TokensOfALine = 5;

    /// <summary>All tokens, in order, none over another or over a line's end.</summary>
    public static ImmutableArray<SemanticToken> Full(Document document) => Of(document, 0, document.Syntax.Lines.Length - 1);

    /// <summary>The tokens of the lines that a range touches.</summary>
    public static ImmutableArray<SemanticToken> InRange(Document document, PlaceRange range) =>
        Of(document, document.Clamp(range.Start).Line, document.Clamp(range.End).Line);

    private static ImmutableArray<SemanticToken> Of(Document document, int first, int last)
    {
        if (last < first)
        {
            return [];
        }

        ImmutableArray<SemanticToken>.Builder tokens = ImmutableArray.CreateBuilder<SemanticToken>((last - first + 1) * TokensOfALine);
        var levels = new WordLevels(document.Note.Opening);
        for (int index = first; index <= last; index++)
        {
            LineSyntax line = document.Syntax.Lines[index];
            if (line.Kind == LineKind.FreeText)
            {
                MarkdownTokens.Add(line, index, tokens);
                continue;
            }

            foreach (Token mark in line.Marks)
            {
                if (mark.Span.Length > 0 && TypeOf(mark.Kind) is { } type)
                {
                    tokens.Add(new SemanticToken(index, mark.Span.Start, mark.Span.Length, type, ModifiersOf(mark, line, levels)));
                }
            }
        }

        return tokens.DrainToImmutable();
    }

    private static TokenType? TypeOf(TokenKind kind) => kind switch
    {
        TokenKind.Comment => TokenType.Comment,
        TokenKind.LineWord => TokenType.Keyword,
        TokenKind.EntryKind => TokenType.Type,
        TokenKind.Site => TokenType.Property,
        TokenKind.Tag => TokenType.Decorator,
        TokenKind.Date or TokenKind.Time or TokenKind.Value => TokenType.Number,
        TokenKind.State => TokenType.Parameter,
        TokenKind.Describing => TokenType.EnumMember,
        TokenKind.Keyword or TokenKind.QuoteMark => TokenType.Operator,
        TokenKind.Name => TokenType.Variable,
        TokenKind.Text => TokenType.String,
        _ => null,
    };

    private static TokenModifiers ModifiersOf(Token mark, LineSyntax line, WordLevels levels) => mark.Kind switch
    {
        TokenKind.Date when line.Kind == LineKind.EntryHead => TokenModifiers.Declaration,
        TokenKind.Describing => levels.Of(line.Items, mark.Span),
        _ => TokenModifiers.None,
    };
}
