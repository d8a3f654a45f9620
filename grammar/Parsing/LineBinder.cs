using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>
/// Gives the parts of one line their meaning: each part goes to the slot of the line's word that it fits, in any order.
/// What fits none is a problem at exactly its characters, or the start of the remark where the word takes one.
/// One binder serves one line at a time; <see cref="Start"/> makes it ready for the next, which saves most of the garbage.
/// </summary>
internal sealed partial class LineBinder
{
    private readonly NoteVocabulary vocabulary;
    private readonly List<Token> tokens;
    private readonly List<Problem> problems = [];
    private string line = "";
    private int end;
    private ItemHead head = null!;
    private ArraySegment<Part> parts = ArraySegment<Part>.Empty;
    private int at;

    // What has been found so far in the line, a field a slot.
    private readonly List<StateWord> manner = [];
    private readonly List<Described> words = [];
    private NoteValue? value;
    private NoteValue? amount;
    private Site? site;
    private FindingTag? tag;
    private StateWord? state;
    private StateWord? place;
    private bool ok;
    private int? times;
    private Bound timesBound;
    private Amount? duration;
    private Amount? distance;
    private PartialDate? birth;
    private Species? species;
    private TextSpan speciesSpan;
    private bool? male;
    private bool? neutered;
    private FixedWord? units;
    private LineWord? about;
    private FreeWords? name;
    private FreeWords? note;
    private Attribution? per;
    private Schedule schedule = Schedule.None;

    /// <summary>A binder that adds what it finds to <paramref name="tokens"/>.</summary>
    public LineBinder(NoteVocabulary vocabulary, List<Token> tokens)
    {
        this.vocabulary = vocabulary;
        this.tokens = tokens;
    }

    /// <summary>What could not be read in the line.</summary>
    public ImmutableArray<Problem> Problems => [.. problems];

    private LineWord Word => head.Word;

    /// <summary>The word whose states and units count: the vital in <c>usual rr</c>, else the line's own.</summary>
    private LineWord Subject => about is not null && Word.Has(SlotKind.Vital) ? about : Word;

    /// <summary>Forgets the line before and starts with another: its text, where its content ends, and its first word.</summary>
    public void Start(string text, int contentEnd, ItemHead itemHead)
    {
        line = text;
        end = contentEnd;
        head = itemHead;
        parts = ArraySegment<Part>.Empty;
        at = 0;
        problems.Clear();
        manner.Clear();
        words.Clear();
        value = amount = null;
        site = null;
        tag = null;
        state = place = null;
        ok = false;
        times = null;
        timesBound = Bound.Exact;
        duration = distance = null;
        birth = null;
        species = null;
        male = neutered = null;
        units = null;
        about = null;
        name = note = null;
        per = null;
        schedule = Schedule.None;
        numberRefusal = null;
    }

    public void Report(Problem problem) => problems.Add(problem);

    /// <summary>Reads what stands after the word. <paramref name="implied"/> are the words its abbreviation stands for as well.</summary>
    public NoteItem? Bind(int wordEnd, string? implied)
    {
        if (Word.Has(SlotKind.Text))
        {
            name = Rest(wordEnd, TokenKind.Text);
        }
        else if (Word.Has(SlotKind.File))
        {
            BindFile(wordEnd);
        }
        else
        {
            parts = PartReader.Read(line, end, blanksInNumbers: !Word.Has(SlotKind.Note) && !Word.Has(SlotKind.Times));
            at = SkipHead();
            foreach (string word in implied?.Split(' ') ?? [])
            {
                BindImplied(word);
            }

            BindParts();
        }

        CheckSubject();
        CheckNeeded();
        return Build();
    }

    private void BindParts()
    {
        while (at < parts.Count)
        {
            int before = at;
            if (Word.Has(SlotKind.Rule) && schedule.Until is not null)
            {
                // until when it holds comes last: what follows is the reason, whatever words it has
                note = Remark();
                return;
            }

            bool bound = parts[at].Kind switch
            {
                PartKind.Word => BindWord(),
                PartKind.Number => BindNumber(),
                PartKind.Tag => BindTag(),
                _ => false,
            };
            if (bound)
            {
                continue;
            }

            at = before;
            if (TakesNote())
            {
                note = Remark();
                return;
            }

            ReportPart(parts[at]);
            at++;
        }
    }

    /// <summary>The index of the first part after the line's word.</summary>
    private int SkipHead()
    {
        int index = 0;
        while (index < parts.Count && parts[index].Span.Start <= head.Span.Start)
        {
            index++;
        }

        return index;
    }

    private bool TakesNote() => Word.Has(SlotKind.Note) && !Word.Has(SlotKind.Rule) && (name is not null || about is not null || value is not null || Word.Kind == WordKind.Care && !Word.Has(SlotKind.Medicine));

    private FreeWords? Rest(int from, TokenKind kind)
    {
        int start = from;
        while (start < end && (Scanners.IsBlank(line[start]) || (line[start] == ':' && !StartsComment(start + 1))))
        {
            start++;
        }

        if (start >= end)
        {
            return null;
        }

        var span = TextSpan.Between(start, end);
        tokens.Add(new Token(kind, span));
        return new FreeWords(span, span.In(line).ToString());
    }

    /// <summary>True where a <c>#</c> stands: after a blank it would start a comment, so what is before it is kept.</summary>
    private bool StartsComment(int index) => index < end && line[index] == '#';

    /// <summary>A remark: all that is left of the line, exactly as written.</summary>
    private FreeWords Remark()
    {
        // after a comma a # is a word; after the blank that tidy writes it would be a comment, so the comma stays with it
        int start = parts[at].Span.Start;
        var span = TextSpan.Between(line[start] == '#' ? start - 1 : start, end);
        Mark(TokenKind.Text, span);
        return new FreeWords(span, span.In(line).ToString());
    }

    private void BindFile(int from)
    {
        if (Rest(from, TokenKind.Name) is not { } all)
        {
            return;
        }

        tokens.RemoveAt(tokens.Count - 1);
        int length = PhotoFile.Length(all.Text);
        var file = new TextSpan(all.Span.Start, length);
        tokens.Add(new Token(TokenKind.Name, file));
        name = new FreeWords(file, file.In(line).ToString());
        note = Rest(file.End, TokenKind.Text);
    }

    private bool BindTag()
    {
        Part part = parts[at];
        if (!Word.Has(SlotKind.Tag) && !Word.Has(SlotKind.AnySite))
        {
            return false;
        }

        if (part.Span.Length == 1)
        {
            Mark(TokenKind.Unknown, part.Span);
            Report(new Problem(ProblemRules.Missing, part.Span, "a tag needs a name right after its @, such as @lower"));
        }
        else if (tag is not null)
        {
            SaidTwice(part.Span, $"@{tag.Name}");
        }
        else
        {
            Mark(TokenKind.Tag, part.Span);
            tag = new FindingTag(part.Span, line.Substring(part.Span.Start + 1, part.Span.Length - 1).ToLowerInvariant());
        }

        at++;
        return true;
    }

    private void Mark(TokenKind kind, TextSpan span) => tokens.Add(new Token(kind, span));

    private ReadOnlySpan<char> TextOf(Part part) => part.Span.In(line);

    private void SaidTwice(TextSpan span, string? already = null)
    {
        tokens.RemoveAll(token => token.Span.Start >= span.Start && token.Span.End <= span.End);
        Mark(TokenKind.Unknown, span);
        Report(new Problem(ProblemRules.SaidTwice, span, $"`{span.In(line)}` says again what {(already is null ? "this line" : $"`{already}`")} has said; one line holds one observation"));
    }
}
