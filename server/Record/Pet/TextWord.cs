using System.Collections.Immutable;
using System.Text;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Record.Pet;

/// <summary>A word of a text: in small letters, without apostrophes.</summary>
/// <param name="Text">The word.</param>
/// <param name="Span">Where it stands.</param>
/// <param name="Sentence">The number of its sentence.</param>
/// <param name="Part">The number of its part between commas.</param>
public readonly record struct TextWord(string Text, TextSpan Span, int Sentence, int Part)
{
    /// <summary>Cuts a text into words.</summary>
    public static ImmutableArray<TextWord> Split(string text)
    {
        ImmutableArray<TextWord>.Builder found = ImmutableArray.CreateBuilder<TextWord>();
        int sentence = 0;
        int part = 0;
        int start = -1;
        for (int index = 0; index <= text.Length; index++)
        {
            char c = index < text.Length ? text[index] : ' ';
            if (char.IsLetterOrDigit(c) || (IsApostrophe(c) && start >= 0))
            {
                start = start < 0 ? index : start;
                continue;
            }

            if (start >= 0)
            {
                string word = text[start..index].ToLowerInvariant();
                word = word.Any(IsApostrophe) ? string.Concat(word.Where(letter => !IsApostrophe(letter))) : word;
                found.Add(new TextWord(word, TextSpan.Between(start, index), sentence, part));
                start = -1;
            }

            // a point inside a number ends nothing
            bool ends = c is ';' or '!' or '?' or '\n' or '>' || (c == '.' && (index + 1 >= text.Length || !char.IsDigit(text[index + 1])));
            sentence += ends ? 1 : 0;
            part += ends || c is ',' or '(' or ')' or ':' or '\u2013' or '\u2014' ? 1 : 0;
        }

        return found.DrainToImmutable();
    }

    /// <summary>The words of a text with a blank before, between and behind them: one text has the words of another where it contains it.</summary>
    public static string Plain(string text)
    {
        var plain = new StringBuilder(" ", text.Length + 2);
        foreach (char c in text)
        {
            if (char.IsLetterOrDigit(c))
            {
                plain.Append(char.ToLowerInvariant(c));
            }
            else if (!IsApostrophe(c) && plain[^1] != ' ')
            {
                plain.Append(' ');
            }
        }

        return plain.Length > 1 && plain[^1] == ' ' ? plain.ToString() : plain.Append(' ').ToString();
    }

    private static bool IsApostrophe(char c) => c is '\'' or '\u2019' or '\u2018';
}
