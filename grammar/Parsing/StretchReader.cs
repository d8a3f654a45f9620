using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>
/// Reads a line that no way reads whole by its stretches between commas, each as if it stood alone: <c>nails too long, back paws
/// scraping on the road</c>. A stretch of ordinary words is a remark of the observation beside it.
/// </summary>
internal sealed class StretchReader(NoteVocabulary vocabulary, Func<TextSpan, LineSyntax> readAlone)
{
    /// <summary>Shorter words are one letter from too many signs: the tiles of <c>slipped on tiles</c>.</summary>
    private const int ShortestSlip = 6;

    /// <summary>Each stretch may be read twice, so a line of many commas is left to its message.</summary>
    private const int MostStretches = 6;

    private const int LongestPhrase = 3;

    /// <summary>Words with which a stretch tells of another day, another animal or a condition: the stretches beside it may hang on them.</summary>
    private static readonly ImmutableArray<string> Tying = ["other-day", "other-animal", "condition", "exception", "said"];

    /// <summary>The line with what its stretches say; null where one of them has a meaning that is not read, or may reach into another.</summary>
    public LineSyntax? Read(string text, string ending, int start, int end)
    {
        List<TextSpan> stretches = Split(text, start, end);
        if (stretches.Count is < 2 or > MostStretches)
        {
            return null;
        }

        List<NoteItem> items = [];
        List<Token> tokens = [];
        List<TextSpan> asides = [];
        for (int index = 0; index < stretches.Count; index++)
        {
            TextSpan stretch = stretches[index];
            string[] words = stretch.In(text).ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries);
            TextSpan rest = TextSpan.Between(stretch.Start, end);
            if (vocabulary.Small.Find(words[0]) is not null)
            {
                return null;
            }

            if (index > 0 && IsRead(readAlone(rest), out LineSyntax read))
            {
                index = stretches.Count;
            }
            else if (Joins.StartsWithNegation(vocabulary, words))
            {
                // "no cough, limping": whether the negation reaches on, only the whole line can tell
                return null;
            }
            else if (!IsRead(readAlone(stretch), out read))
            {
                if (!IsAside(text, stretch, words))
                {
                    return null;
                }

                tokens.Add(new Token(TokenKind.Text, stretch));
                asides.Add(stretch);
                continue;
            }

            if (read.Items.Any(item => item.Word.Has(SlotKind.Medicine) && vocabulary.Medicines.Find(item.Name?.Text) is null))
            {
                // "drops in am, forgot pm one": a dose whose medicine the rest of the line tells
                return null;
            }

            items.AddRange(read.Items);
            tokens.AddRange(read.Marks);
        }

        return items.Count > 0 && WithAsides(text, items, asides) ? new LineSyntax(LineKind.Item, text, ending, [.. tokens], [.. items], null, []) : null;
    }

    private static bool IsRead(LineSyntax line, out LineSyntax read) => (read = line) is { Kind: LineKind.Item, Problems.IsEmpty: true };

    /// <summary>The stretches between commas, semicolons and full stops, without those inside of a number.</summary>
    private static List<TextSpan> Split(string text, int start, int end)
    {
        List<TextSpan> stretches = [];
        int from = start;
        for (int index = start; index <= end; index++)
        {
            bool parts = index == end || (text[index] is ',' or ';' or '.' && (index + 1 == end || Scanners.IsBlank(text[index + 1])));
            if (!parts)
            {
                continue;
            }

            while (from < index && Scanners.IsBlank(text[from]))
            {
                from++;
            }

            if (index > from)
            {
                stretches.Add(TextSpan.Between(from, index));
            }

            from = index + 1;
        }

        return stretches;
    }

    /// <summary>True for ordinary words and places, without a sign, a medicine, a measure or a word that is nearly one.</summary>
    private bool IsAside(string text, TextSpan stretch, string[] words)
    {
        for (int index = 0; index < words.Length; index++)
        {
            for (int count = 1; count <= Math.Min(LongestPhrase, words.Length - index); count++)
            {
                string phrase = string.Join(' ', words[index..(index + count)]);
                if (Tying.Any(list => vocabulary.Fixed(list).Find(phrase) is not null) || vocabulary.Before.Find(phrase) is not null || vocabulary.Leads.Find(phrase) is not null)
                {
                    return false;
                }
            }
        }

        int read = 0;
        foreach (Part part in PartReader.Read(text, stretch.End, blanksInNumbers: false).Where(part => part.Span.Start >= stretch.Start))
        {
            string word = part.Span.In(text).ToString();
            read++;
            bool plain = part switch
            {
                NumberPart { Second.Exists: false } number => number.First.Unit.In(text) is "" or "x" || vocabulary.Units.Find(number.First.Unit.In(text)) is { Quantity: Quantity.Time },
                { Kind: PartKind.Word } => !vocabulary.MeansSomething(word) || IsPlace(word) || vocabulary.NumberWords.Find(word) is not null,
                _ => false,
            };
            if (!plain || (word.Length >= ShortestSlip && !vocabulary.IsNoSlip(word) && NearestWord.Find(word, vocabulary.Signs, most: 1) is not null))
            {
                return false;
            }
        }

        return read > 0;
    }

    private bool IsPlace(string word) => !vocabulary.IsDescribing(word) && vocabulary.Medicines.Find(word) is null && vocabulary.Leads.Find(word) is null
        && (vocabulary.LineWords.Find(word) is { Kind: WordKind.Exam } || vocabulary.Regions.Find(word) is not null || vocabulary.Sides.Find(word) is not null);

    /// <summary>The line with the words before its first observation as a remark of that one; null where it takes none.</summary>
    public static LineSyntax? WithAside(LineSyntax line, TextSpan aside)
    {
        List<NoteItem> items = [.. line.Items];
        return WithAsides(line.Text, items, [aside]) ? line with { Items = [.. items], Marks = line.Marks.Insert(0, new Token(TokenKind.Text, aside)) } : null;
    }

    /// <summary>Gives each aside to the observation before it, or the first one; false where that takes no remark.</summary>
    private static bool WithAsides(string text, List<NoteItem> items, List<TextSpan> asides)
    {
        foreach (TextSpan aside in asides)
        {
            int index = Math.Max(0, items.FindLastIndex(item => item.Head.Span.Start < aside.Start));
            NoteItem item = items[index];
            if (!item.Word.Has(SlotKind.Note))
            {
                return false;
            }

            FreeWords own = new(aside, aside.In(text).ToString());
            FreeWords[] both = item.Note is { } note ? [.. ((FreeWords[])[note, own]).OrderBy(piece => piece.Span.Start)] : [own];
            var all = new FreeWords(TextSpan.Between(both[0].Span.Start, both[^1].Span.End), string.Join(", ", both.Select(piece => piece.Text)));
            items[index] = item with { Body = new ItemBody([.. item.Body.Filled.Where(slot => slot.Kind != SlotKind.Note), new SlotValue(SlotKind.Note, all)]) };
        }

        return true;
    }
}
