using System.Runtime.InteropServices;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>
/// Where reading stands in a line, and what its observation holds so far. Slots read from it and fill it. One cursor serves one
/// reader and is started anew for each observation, which saves most of the garbage.
/// </summary>
internal sealed class Cursor(NoteVocabulary vocabulary)
{
    private const int LongestPhrase = 80;
    private readonly List<SlotValue> filled = new(8);

    public NoteVocabulary Vocabulary => vocabulary;

    /// <summary>The line.</summary>
    public string Line { get; private set; } = "";

    /// <summary>The line as words are looked up in it: the same, with straight quotes for a phone's curly ones.</summary>
    private string Plain { get; set; } = "";

    /// <summary>Where its content ends.</summary>
    public int End { get; private set; }

    /// <summary>The parts that are read, without those that are its word.</summary>
    public ArraySegment<Part> Parts { get; private set; } = ArraySegment<Part>.Empty;

    /// <summary>The index of the part that is read next.</summary>
    public int At { get; set; }

    /// <summary>The tokens of the line, in reading order.</summary>
    public List<Token> Tokens { get; } = new(16);

    /// <summary>What could not be read.</summary>
    public List<Problem> Problems { get; } = [];

    /// <summary>The word of the observation.</summary>
    public LineWord Word { get; private set; } = null!;

    /// <summary>Where that word stands.</summary>
    public TextSpan HeadSpan { get; private set; }

    /// <summary>Times of day found behind the word; several doses may stand in one line.</summary>
    public List<TimeOnly> Times { get; } = [];

    /// <summary>What the observation holds so far.</summary>
    public IReadOnlyList<SlotValue> Filled => filled;

    /// <summary>The same, to be looked through without garbage; it holds until the next value is added.</summary>
    public ReadOnlySpan<SlotValue> Values => CollectionsMarshal.AsSpan(filled);

    /// <summary>True when the observation holds more than a place and a name.</summary>
    public bool SaysSomething => filled.Exists(slot => slot.Kind is not (SlotKind.Site or SlotKind.Tag));

    /// <summary>Where the words stand that have no meaning here.</summary>
    public List<TextSpan> Remark { get; } = [];

    /// <summary>True behind words that have no meaning here: a number there belongs to the remark.</summary>
    public bool InRemark { get; set; }

    /// <summary>A negation or an end that waits for its word.</summary>
    public Pending? Pending { get; set; }

    /// <summary>True while a negation waits for a sign, so that nothing else may come.</summary>
    public bool Blocked => Pending is { OfHead: false };

    /// <summary>The index of the part behind the last sign: only there may <c>gone</c> or <c>none</c> belong to it. -1 when there is none.</summary>
    public int BehindSign { get; set; }

    /// <summary>Why the last number was refused, when it could not be a number at all.</summary>
    public string? NumberRefusal { get; private set; }

    /// <summary>True while parts are left.</summary>
    public bool HasPart => At < Parts.Count;

    /// <summary>The part that is read next.</summary>
    public Part Part => Parts[At];

    /// <summary>The word whose states, units and signs count: the vital in <c>usual rr</c>, the part in <c>expect wound</c>, else the observation's own.</summary>
    public LineWord Subject => (Word.Has(SlotKind.Vital) || (Word.Has(SlotKind.Item) && Word.Has(SlotKind.Words))) && About is { } about ? about : Word;

    /// <summary>The word that the line is about, where it names another.</summary>
    public LineWord? About => First<LineWord>();

    /// <summary>Starts with a line.</summary>
    public void StartLine(string line, int end)
    {
        Line = line;
        Plain = line.AsSpan().IndexOfAny('’', '‘', 'ʼ') < 0 ? line : line.Replace('’', '\'').Replace('‘', '\'').Replace('ʼ', '\'');
        End = end;
        Tokens.Clear();
        Problems.Clear();
        Word = null!;
        Parts = ArraySegment<Part>.Empty;
        At = 0;
    }

    /// <summary>Starts with the parts of a line.</summary>
    public void StartParts(ArraySegment<Part> parts)
    {
        Parts = parts;
        At = 0;
    }

    /// <summary>Starts with an observation of the line.</summary>
    public void StartItem(LineWord word, TextSpan head)
    {
        Word = word;
        HeadSpan = head;
        filled.Clear();
        Times.Clear();
        InRemark = false;
        Remark.Clear();
        Pending = null;
        BoundInWords = Bound.Exact;
        BehindSign = -1;
        NumberRefusal = null;
    }

    /// <summary>What has been found, as it stands now.</summary>
    public ItemBody Body() => filled.Count == 0 ? ItemBody.Empty : new ItemBody([.. filled]);

    public bool Holds(SlotKind kind)
    {
        foreach (SlotValue slot in filled)
        {
            if (slot.Kind == kind)
            {
                return true;
            }
        }

        return false;
    }

    public T? Get<T>(SlotKind kind)
        where T : class
    {
        foreach (SlotValue slot in filled)
        {
            if (slot.Kind == kind)
            {
                return slot.Value as T;
            }
        }

        return null;
    }

    public T? First<T>()
        where T : class
    {
        foreach (SlotValue slot in filled)
        {
            if (slot.Value is T found && slot.Kind != SlotKind.StrengthOfOne)
            {
                return found;
            }
        }

        return null;
    }

    /// <summary>Puts something more into a slot.</summary>
    public void Add(SlotKind kind, object value) => filled.Add(new SlotValue(kind, value));

    /// <summary>Empties a slot.</summary>
    public void Remove(SlotKind kind) => filled.RemoveAll(slot => slot.Kind == kind);

    /// <summary>Puts something into a slot in place of what it held.</summary>
    public void Set(SlotKind kind, object value)
    {
        int index = filled.FindIndex(slot => slot.Kind == kind);
        if (index < 0)
        {
            Add(kind, value);
        }
        else
        {
            filled[index] = new SlotValue(kind, value);
        }
    }

    /// <summary>Exchanges the last sign for what became of it.</summary>
    public void ReplaceLast(Described sign)
    {
        int index = filled.FindLastIndex(slot => slot.Value is Described);
        filled[index] = new SlotValue(SlotKind.Words, sign);
    }

    /// <summary>Exchanges a sign for what became of it, and takes away the word that said so.</summary>
    public void Exchange(Described sign, Described became, Described by)
    {
        filled[filled.FindIndex(slot => ReferenceEquals(slot.Value, sign))] = new SlotValue(SlotKind.Words, became);
        filled.RemoveAll(slot => ReferenceEquals(slot.Value, by));
    }

    /// <summary>Goes back to what was held and marked before something was tried.</summary>
    public void Restore((int At, int Tokens, int Problems, int Filled) before)
    {
        At = before.At;
        Tokens.RemoveRange(before.Tokens, Tokens.Count - before.Tokens);
        Problems.RemoveRange(before.Problems, Problems.Count - before.Problems);
        filled.RemoveRange(before.Filled, Math.Max(0, filled.Count - before.Filled));
    }

    /// <summary>Where things stand, to come back to.</summary>
    public (int At, int Tokens, int Problems, int Filled) Here => (At, Tokens.Count, Problems.Count, filled.Count);

    public ReadOnlySpan<char> TextOf(Part part) => part.Span.In(Plain);

    public ReadOnlySpan<char> TextAt(int index) => Parts[index].Span.In(Plain);

    public bool IsWord(int index) => (uint)index < (uint)Parts.Count && Parts[index].Kind == PartKind.Word;

    public bool Is(int index, ReadOnlySpan<char> word) => (uint)index < (uint)Parts.Count && Parts[index] is { Kind: PartKind.Word } part
        && part.Span.Length == word.Length && TextOf(part).Equals(word, StringComparison.OrdinalIgnoreCase);

    public void Mark(TokenKind kind, TextSpan span) => Tokens.Add(new Token(kind, span));

    /// <summary>Marks and takes the current part.</summary>
    public bool Taken(TokenKind kind) => Taken(kind, Part.Span);

    /// <summary>Marks a stretch that ends with the current part, and takes that part.</summary>
    public bool Taken(TokenKind kind, TextSpan span)
    {
        Mark(kind, span);
        At++;
        return true;
    }

    public void Report(Problem problem) => Problems.Add(problem);

    /// <summary>Takes the current part as not understood, and says why.</summary>
    public bool Refuse(TextSpan span, string rule, string message, string? nearest = null)
    {
        Report(new Problem(rule, span, message, nearest));
        return Taken(TokenKind.Unknown, span);
    }

    /// <summary>Reports that <paramref name="span"/> repeats what the observation holds already.</summary>
    public void SaidTwice(TextSpan span, string? already = null)
    {
        Tokens.RemoveAll(token => token.Span.Start >= span.Start && token.Span.End <= span.End);
        Mark(TokenKind.Unknown, span);
        Report(new Problem(ProblemRules.SaidTwice, span,
            already is null ? $"`{span.In(Line)}` is one too many. Write one observation a line."
                : $"`{span.In(Line)}` comes after `{already}`. Write one observation a line."));
    }

    /// <summary>The digits as a number; null where they cannot be one, with the reason in <see cref="NumberRefusal"/>.</summary>
    public decimal? Digits(TextSpan digits)
    {
        bool read = NumberText.TryRead(digits.In(Line), out decimal number, out string? refusal);
        NumberRefusal = refusal;
        return read ? number : null;
    }

    /// <summary>A bound in words before the number: <c>under 2 seconds</c>.</summary>
    public Bound BoundInWords { get; set; }

    public Bound BoundOf(NumberPart part) => part.BoundSpan.Length == 0 ? BoundInWords : Line[part.BoundSpan.Start] switch
    {
        '<' or '≤' => Bound.Below,
        '>' or '≥' => Bound.Above,
        _ => Bound.About,
    };

    /// <summary>True when nothing but blanks stands between the parts: a comma ends a phrase (<c>pale, yellow</c> is two words).</summary>
    public bool OnlyBlanks(int first, int count)
    {
        for (int index = first + 1; index < first + count; index++)
        {
            if (!TextSpan.Between(Parts[index - 1].Span.End, Parts[index].Span.Start).In(Line).IsWhiteSpace())
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>True when a comma, a semicolon, a full stop or another mark stands before the part, or nothing does.</summary>
    public bool StartsSegment(int index)
    {
        int before = index > 0 ? Parts[index - 1].Span.End : HeadSpan.End;
        int start = Parts[index].Span.Start;
        return index > 0 || before <= start ? !TextSpan.Between(before, start).In(Line).IsWhiteSpace() : false;
    }

    /// <summary>The parts from <paramref name="first"/> to <paramref name="last"/> with one blank between them.</summary>
    public string Spaced(int first, int last) => first == last
        ? TextAt(first).ToString()
        : string.Join(' ', Parts.Slice(first, last - first + 1).Select(part => TextOf(part).ToString()));

    public TextSpan SpanOf(int first, int count) => TextSpan.Between(Parts[first].Span.Start, Parts[first + count - 1].Span.End);

    /// <summary>How many parts from <paramref name="index"/> on make up the longest spelling of <paramref name="scope"/>; 0 when none starts there.</summary>
    public int Phrase<T>(Scope<T> scope, int index, out T? term)
        where T : class, ITerm
    {
        term = null;
        if (index >= Parts.Count)
        {
            return 0;
        }

        Part part = Parts[index];
        if (part.Starts == 0)
        {
            part.Starts = vocabulary.Starts(TextOf(part));
        }

        if ((part.Starts & scope.Bit) == 0)
        {
            return 0;
        }

        T? single = scope.Find(TextAt(index), out int longest);
        int parts = longest == 1 ? 1 : Math.Min(longest, Parts.Count - index);
        if (parts > 1)
        {
            // the phrase with single blanks, and where each of its words ends
            Span<char> text = stackalloc char[LongestPhrase];
            Span<int> ends = stackalloc int[parts];
            int length = 0;
            int last = 0;
            for (; last < parts && (last == 0 || OnlyBlanks(index + last - 1, 2)); last++)
            {
                ReadOnlySpan<char> word = TextAt(index + last);
                if (length + word.Length + 1 > LongestPhrase)
                {
                    break;
                }

                length += last == 0 ? 0 : 1;
                text[Math.Max(0, length - 1)] = ' ';
                word.CopyTo(text[length..]);
                length += word.Length;
                ends[last] = length;
            }

            for (int count = last; count > 1; count--)
            {
                if (scope.Find(text[..ends[count - 1]]) is { } phrase)
                {
                    term = phrase;
                    return count;
                }
            }

            if (WithoutArticles(scope, index, longest, out int taken) is { } spoken)
            {
                term = spoken;
                return taken;
            }
        }

        term = single;
        return term is null ? 0 : 1;
    }

    /// <summary>A phrase in which an owner's article stands that its spelling does not have: <c>between her shoulder blades</c>; null where none stands.</summary>
    private T? WithoutArticles<T>(Scope<T> scope, int index, int longest, out int taken)
        where T : class, ITerm
    {
        taken = 0;
        int article = index + 1;
        while (article < Math.Min(index + longest, Parts.Count) && !(IsArticle(article) && article > index))
        {
            article++;
        }

        if (article >= Math.Min(index + longest, Parts.Count) || !IsWord(article + 1))
        {
            return null;
        }

        string phrase = Spaced(index, article - 1);
        T? found = null;
        int words = article - index;
        for (int next = article; next < Parts.Count && words < longest && IsWord(next) && OnlyBlanks(next - 1, 2); next++)
        {
            if (IsArticle(next))
            {
                continue;
            }

            phrase = $"{phrase} {TextAt(next)}";
            words++;
            if (scope.Find(phrase) is { } term)
            {
                (found, taken) = (term, next + 1 - index);
            }
        }

        return found;
    }

    private bool IsArticle(int index) => TextAt(index) is { Length: <= 5 } text
        && (text.Equals("his", StringComparison.OrdinalIgnoreCase) || text.Equals("her", StringComparison.OrdinalIgnoreCase) || text.Equals("its", StringComparison.OrdinalIgnoreCase)
            || text.Equals("the", StringComparison.OrdinalIgnoreCase) || text.Equals("their", StringComparison.OrdinalIgnoreCase) || text.Equals("my", StringComparison.OrdinalIgnoreCase));

    /// <summary>Takes the longest spelling of <paramref name="scope"/> that starts at the current part.</summary>
    public bool TakePhrase<T>(Scope<T> scope, TokenKind kind, out T? term, out TextSpan span)
        where T : class, ITerm
    {
        int count = Phrase(scope, At, out term);
        span = count == 0 ? default : SpanOf(At, count);
        if (count > 0)
        {
            Mark(kind, span);
            At += count;
        }

        return count > 0;
    }

    /// <summary>The words of <paramref name="span"/> as written, with single blanks between them.</summary>
    public string WithSingleBlanks(TextSpan span)
    {
        ReadOnlySpan<char> text = span.In(Line);
        bool plain = true;
        for (int index = 0; index < text.Length && plain; index++)
        {
            plain = !char.IsWhiteSpace(text[index]) || (text[index] == ' ' && index + 1 < text.Length && !char.IsWhiteSpace(text[index + 1]));
        }

        return plain ? text.ToString() : string.Join(' ', text.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }

    /// <summary>The owner's form of a word; the vocabulary's own string where they are the same, which saves one.</summary>
    public string Written(TextSpan span, string word) => span.In(Line).Equals(word, StringComparison.OrdinalIgnoreCase) ? word : WithSingleBlanks(span);
}

/// <summary>What turns the next word into its opposite, and where it stands.</summary>
/// <param name="Modifier">The negation or end.</param>
/// <param name="Span">Where it stands.</param>
/// <param name="OfHead">True when it stood before the observation's own word: <c>no cough</c>.</param>
internal sealed record Pending(ModifierWord Modifier, TextSpan Span, bool OfHead = false)
{
    public Sense Sense => Modifier.Kind == ModifierKind.Ended ? Sense.Ended : Sense.Absent;
}
