using System.Collections.Immutable;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Tokens;
using HealthNotes.LanguageServer.Protocol;

namespace HealthNotes.LanguageServer.Convert;

/// <summary>From tokens to the protocol's numbers, five a token: each token is placed from the one before it.</summary>
internal static class Tokens
{
    private const int Numbers = 5;

    /// <summary>The numbers of these tokens.</summary>
    public static int[] Encode(Document document, ImmutableArray<SemanticToken> tokens, PositionEncoding encoding)
    {
        int[] data = new int[tokens.Length * Numbers];
        Position before = default;
        for (int i = 0; i < tokens.Length; i++)
        {
            SemanticToken token = tokens[i];
            Position start = Positions.Of(document, new Place(token.Line, token.Start), encoding);
            Position end = Positions.Of(document, new Place(token.Line, token.Start + token.Length), encoding);
            int at = i * Numbers;
            data[at] = start.Line - before.Line;
            data[at + 1] = start.Line == before.Line ? start.Character - before.Character : start.Character;
            data[at + 2] = end.Character - start.Character;
            data[at + 3] = (int)token.Type;
            data[at + 4] = (int)token.Modifiers;
            before = start;
        }

        return data;
    }
}
