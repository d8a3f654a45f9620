using System.Text;

namespace HealthNotes.Tests.Grammar.Ebnf;

/// <summary>
/// Writes random text that an EBNF allows. Between the pieces of a rule in small letters stands a blank, sometimes a comma
/// or more blanks; between those of a rule in capitals nothing.
/// </summary>
public sealed class EbnfWriter(EbnfGrammar grammar, Random random)
{
    private const int MostRepeats = 4;
    private readonly StringBuilder text = new();
    private string word = "";
    private bool lastWasSpecial;

    /// <summary>The rules' alternatives that were written, as <c>rule/index</c>.</summary>
    public HashSet<string> Used { get; } = [];

    public string Write(string rule)
    {
        text.Clear();
        Rule(rule, glued: true);
        return text.ToString();
    }

    private void Rule(string rule, bool glued)
    {
        bool characters = EbnfGrammar.IsOfCharacters(rule);
        IReadOnlyList<EbnfNode> alternatives = grammar.Alternatives(rule);
        int index = random.Next(alternatives.Count);
        Used.Add($"{rule}/{index}");
        if (characters && !glued && rule != "NEWLINE")
        {
            Gap(mayJoin: true);
        }

        Node(alternatives[index], glued: characters);
    }

    private void Node(EbnfNode node, bool glued)
    {
        switch (node)
        {
            case Literal literal:
                Put(literal.Text, glued, special: false);
                if (Words.IsLineWord(literal.Text) && !glued)
                {
                    word = literal.Text;
                }

                break;
            case Special special:
                Put(Specials.Resolve(special.Text, word, random), glued, special: true);
                break;
            case Reference reference:
                Rule(reference.Rule, glued);
                break;
            case Sequence sequence:
                foreach (EbnfNode item in sequence.Items)
                {
                    Node(item, glued);
                }

                break;
            case Choice choice:
                Node(choice.Alternatives[random.Next(choice.Alternatives.Count)], glued);
                break;
            case Maybe maybe when random.Next(2) == 0:
                Node(maybe.Inner, glued);
                break;
            case Repeat repeat:
                for (int left = random.Next(MostRepeats); left > 0; left--)
                {
                    Node(repeat.Inner, glued);
                }

                break;
            default:
                break;
        }
    }

    private void Put(string piece, bool glued, bool special)
    {
        if (!glued)
        {
            Gap(mayJoin: special);
        }

        text.Append(piece);
        lastWasSpecial = special;
    }

    private void Gap(bool mayJoin)
    {
        if (text.Length == 0 || text[^1] == '\n')
        {
            text.Append(' ', random.Next(4));
        }
        else if (mayJoin && lastWasSpecial)
        {
            // two words of the vocabulary side by side may spell a third: a comma keeps them apart
            text.Append(", ");
        }
        else
        {
            bool denies = text.Length >= 3 && char.IsWhiteSpace(text[^3]) && text.ToString(text.Length - 2, 2).Equals("no", StringComparison.OrdinalIgnoreCase);
            text.Append(random.Next(10) switch { 0 when !denies => ", ", 1 => "  ", 2 => "\t", _ => " " });
        }

        lastWasSpecial = false;
    }
}
