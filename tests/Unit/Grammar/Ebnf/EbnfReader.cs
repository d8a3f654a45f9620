using System.Text.RegularExpressions;

namespace HealthNotes.Tests.Grammar.Ebnf;

/// <summary>Reads EBNF: rules <c>name = … ;</c> with <c>, | [ ] { } ( ) "…" ? … ?</c> and comments <c>(* … *)</c>.</summary>
public sealed partial class EbnfReader
{
    private readonly List<string> tokens;
    private int at;

    private EbnfReader(string text)
    {
        string bare = Comments.Replace(text, " ");
        tokens = [.. Tokens.Matches(bare).Select(match => match.Value)];
        string left = Tokens.Replace(bare, "").Trim();
        if (left.Length > 0)
        {
            throw new FormatException($"not EBNF: {left}");
        }
    }

    public static EbnfGrammar Read(string text)
    {
        var reader = new EbnfReader(text);
        var rules = new Dictionary<string, EbnfNode>();
        string start = reader.tokens[0];
        while (reader.at < reader.tokens.Count)
        {
            string name = reader.Take();
            reader.Take("=");
            rules.Add(name, reader.Choice());
            reader.Take(";");
        }

        return new EbnfGrammar(start, rules);
    }

    private EbnfNode Choice()
    {
        List<EbnfNode> alternatives = [Sequence()];
        while (Took("|"))
        {
            alternatives.Add(Sequence());
        }

        return alternatives.Count == 1 ? alternatives[0] : new Choice(alternatives);
    }

    private EbnfNode Sequence()
    {
        List<EbnfNode> items = [Piece()];
        while (Took(","))
        {
            items.Add(Piece());
        }

        return items.Count == 1 ? items[0] : new Sequence(items);
    }

    private EbnfNode Piece()
    {
        string token = Take();
        return token[0] switch
        {
            '"' or '\'' => new Literal(token[1..^1]),
            '?' => new Special(token.Trim('?', ' ')),
            '[' => new Maybe(Closed("]")),
            '{' => new Repeat(Closed("}")),
            '(' => Closed(")"),
            _ when char.IsLetter(token[0]) => new Reference(token),
            _ => throw new FormatException($"`{token}` is not expected before {string.Join(' ', tokens.Skip(at).Take(8))}"),
        };
    }

    private EbnfNode Closed(string end)
    {
        EbnfNode inner = Choice();
        Take(end);
        return inner;
    }

    private string Take() => tokens[at++];

    private void Take(string expected)
    {
        if (!Took(expected))
        {
            throw new FormatException($"expected `{expected}` before {string.Join(' ', tokens.Skip(at).Take(8))}");
        }
    }

    private bool Took(string token)
    {
        bool here = at < tokens.Count && tokens[at] == token;
        at += here ? 1 : 0;
        return here;
    }

    [GeneratedRegex(@"\(\*.*?\*\)", RegexOptions.Singleline)]
    private static partial Regex Comments { get; }

    [GeneratedRegex("""
        "[^"]*"|'[^']*'|\?[^?]*\?|[A-Za-z][A-Za-z0-9-]*|[=;,|\[\]{}()]
        """)]
    private static partial Regex Tokens { get; }
}
