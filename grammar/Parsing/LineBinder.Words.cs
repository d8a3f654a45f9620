using System.Globalization;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <content>Words: facts, sites, states, describing words, abbreviations.</content>
internal sealed partial class LineBinder
{
    private bool BindWord() =>
        BindRule()
        || BindDescribing(fromParts: 2)
        || BindClosedWord()
        || BindAbout()
        || BindName()
        || BindTimesWord()
        || BindScheduleWord()
        || BindPer()
        || BindComparison()
        || BindState()
        || BindSite()
        || BindDescribing(fromParts: 1)
        || BindSlashedWords()
        || BindAbbreviation();

    /// <summary>The name of a finding: the first word, in whatever letters.</summary>
    private bool BindRule()
    {
        if (!Word.Has(SlotKind.Rule) || name is not null || IsScheduleWord(TextOf(parts[at])))
        {
            return false;
        }

        TextSpan span = parts[at].Span;
        name = new FreeWords(span, span.In(line).ToString().TrimEnd(':').ToLowerInvariant());
        return Taken(TokenKind.Name, span);
    }

    /// <summary>Words of small closed lists: species, sex, units shown, parts of a meal, muscle grades, ok.</summary>
    private bool BindClosedWord()
    {
        ReadOnlySpan<char> text = TextOf(parts[at]).TrimEnd(':');
        TextSpan span = parts[at].Span;
        if (Word.Has(SlotKind.Species) && species is null && Phrase(vocabulary.Fixed("species"), out FixedWord? kind, out TextSpan kindSpan))
        {
            species = Enum.Parse<Species>(kind!.Word, ignoreCase: true);
            speciesSpan = kindSpan;
            return true;
        }

        if (Word.Has(SlotKind.Sex))
        {
            return BindSex(text, span);
        }

        if (Word.Has(SlotKind.Units) && units is null && vocabulary.Fixed("units").Find(text) is { } shown)
        {
            units = shown;
            return Taken(TokenKind.State, span);
        }

        bool startsName = Word.Has(SlotKind.FoodName) && name is null && at + 1 < parts.Count;
        if ((Word.Has(SlotKind.Words) || Word.Has(SlotKind.Ok)) && !startsName && vocabulary.Ok.Find(text) is not null)
        {
            ok = true;
            return Taken(TokenKind.Describing, span);
        }

        if (Word.Has(SlotKind.Portion) && value is null && Phrase(vocabulary.Fixed("portion"), out FixedWord? part, out TextSpan partSpan))
        {
            (decimal eaten, decimal whole) = part!.Word switch { "all" => (1m, 1m), "most" => (3m, 4m), "half" => (1m, 2m), "little" => (1m, 4m), _ => (0m, 1m) };
            value = new Portion(partSpan, part.Word is "all" or "none" ? Bound.Exact : Bound.About, eaten, whole);
            return true;
        }

        if (Word.Word == "mcs" && value is null && vocabulary.Fixed("mcs").Find(text) is { } grade)
        {
            value = new Score(span, Bound.Exact, grade.Word switch { "normal" => 3, "mild" => 2, "moderate" => 1, _ => 0 }, 3);
            return Taken(TokenKind.Value, span);
        }

        return false;
    }

    /// <summary><c>x3</c>: three times.</summary>
    private bool BindTimesWord()
    {
        TextSpan span = parts[at].Span;
        var digits = new TextSpan(span.Start + 1, span.Length - 1);
        return Word.Has(SlotKind.Times) && span.Length > 1 && Scanners.OperatorScanner.IsTimes(line[span.Start])
            && digits.In(line).IndexOfAnyExceptInRange('0', '9') < 0
            && (Digits(digits) is { } number ? BindTimes(number, Bound.Exact, span) : RefuseNumber(parts[at], span));
    }

    private bool BindSex(ReadOnlySpan<char> text, TextSpan span)
    {
        if (vocabulary.Fixed("sex").Find(text) is { } sex)
        {
            Taken(TokenKind.State, span);
            SetSex(ref male, sex.Word == "male", span);
            return true;
        }

        if (vocabulary.Fixed("neuter").Find(text) is { } neuter)
        {
            Taken(TokenKind.State, span);
            SetSex(ref neutered, neuter.Word == "neutered", span);
            return true;
        }

        return BindAbbreviation();
    }

    private void SetSex(ref bool? slot, bool found, TextSpan span)
    {
        if (slot is not null)
        {
            SaidTwice(span);
        }

        slot ??= found;
    }

    /// <summary>The word another line is about: the vital of <c>usual</c>, the item of <c>skip</c>.</summary>
    private bool BindAbout()
    {
        bool vital = Word.Has(SlotKind.Vital);
        if (about is not null || !(vital || Word.Has(SlotKind.Item)))
        {
            return false;
        }

        ReadOnlySpan<char> text = TextOf(parts[at]).TrimEnd(':');
        LineWord? found = vocabulary.LineWords.Find(text);
        string? implied = null;
        if (found is null && vocabulary.Abbreviations("head").Find(text) is { } abbreviation)
        {
            string[] stands = abbreviation.StandsFor.Split(' ');
            found = vocabulary.LineWords.Find(stands[0]);
            implied = stands.ElementAtOrDefault(1);
        }

        bool fits = found is not null && (vital ? found.Kind == WordKind.Vital : found.Kind is WordKind.Vital or WordKind.Exam or WordKind.Scan or WordKind.Care);
        if (!fits)
        {
            return false;
        }

        about = found;
        Taken(TokenKind.LineWord, parts[at].Span);
        if (implied is not null)
        {
            BindImplied(implied);
        }

        return true;
    }

    /// <summary>The name of a medicine or food, or what falls due: the words before the first value or schedule.</summary>
    private bool BindName()
    {
        bool medicine = Word.Has(SlotKind.Medicine);
        bool topic = Word.Has(SlotKind.Topic);
        if (name is not null || !(medicine || topic || Word.Has(SlotKind.FoodName)) || StartsSomething(at)
            || PhraseLength(vocabulary.Describing(Word.Word), at, out _) > 0)
        {
            return false;
        }

        int last = at;
        int stop = at + 1;
        while (stop < parts.Count && (parts[stop].Kind == PartKind.Word || IsOrdinal(parts[stop])) && !StartsSomething(stop))
        {
            stop++;
        }

        bool valueFollows = Word.Has(SlotKind.Amount) && stop < parts.Count && parts[stop].Kind == PartKind.Number;
        if (valueFollows || topic || !medicine || !Word.Has(SlotKind.Note) || (stop < parts.Count && parts[stop].Kind == PartKind.Word))
        {
            last = stop - 1;
        }

        var span = TextSpan.Between(parts[at].Span.Start, parts[last].Span.End);
        Mark(TokenKind.Name, span);
        name = new FreeWords(span, WithSingleBlanks(span));
        at = last + 1;
        return true;
    }

    /// <summary>The words of <paramref name="span"/> as written, with single blanks between them.</summary>
    private string WithSingleBlanks(TextSpan span) =>
        string.Join(' ', span.In(line).ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>True for <c>2nd</c>: a number in form, a word in meaning.</summary>
    private bool IsOrdinal(Part part) =>
        part is NumberPart { BoundSpan.Length: 0, First.Unit.Length: 2, Second.Exists: false } number
        && number.First.Unit.In(line) is "st" or "nd" or "rd" or "th";

    /// <summary>True where a schedule, a state or a route starts, so that a name ends before it.</summary>
    private bool StartsSomething(int index)
    {
        if (parts[index].Kind != PartKind.Word)
        {
            return false;
        }

        ReadOnlySpan<char> text = TextOf(parts[index]);
        return (Word.Has(SlotKind.Schedule) && (StartsSchedule(index) || vocabulary.Abbreviations("schedule").Find(text) is not null))
            || PhraseLength(vocabulary.States(StateScope), index, out _) > 0
            || (Word.Has(SlotKind.Route) && vocabulary.Abbreviations("route").Find(text) is not null);
    }

    private bool BindComparison()
    {
        if (!Word.Has(SlotKind.Size) || !TextOf(parts[at]).Equals("like", StringComparison.OrdinalIgnoreCase))
        {
            return false;
        }

        TextSpan keyword = parts[at].Span;
        at++;
        if (at < parts.Count && TextOf(parts[at]) is "a" or "an" or "A" or "An")
        {
            keyword = TextSpan.Between(keyword.Start, parts[at].Span.End);
            at++;
        }

        Mark(TokenKind.Keyword, keyword);
        if (at < parts.Count && Phrase(vocabulary.Objects, out ComparisonObject? thing, out TextSpan span, TokenKind.Value))
        {
            var like = new LikeObject(TextSpan.Between(keyword.Start, span.End), thing!);
            if (value is not null)
            {
                SaidTwice(like.Span, value.Span.In(line).ToString());
            }

            value ??= like;
            return true;
        }

        TextSpan meant = at < parts.Count && parts[at].Kind == PartKind.Word ? parts[at].Span : keyword;
        string typed = meant.In(line).ToString();
        string? nearest = meant == keyword ? null : NearestWord.Find(typed, vocabulary.Objects.Spellings);
        Report(new Problem(meant == keyword ? ProblemRules.Missing : ProblemRules.UnknownWord, meant,
            (meant == keyword ? "expected an object after like" : $"`{typed}` is not an object with a known size")
            + (nearest is null ? ", such as like pea or like golf-ball" : $"; did you mean `{nearest}`?"), nearest));
        if (meant != keyword)
        {
            Mark(TokenKind.Unknown, meant);
            at++;
        }

        return true;
    }

    private string StateScope => Word.Has(SlotKind.Medicine) ? Word.Word == "med" ? "med" : "gave" : Subject.Word;

    private bool BindState()
    {
        if (!Phrase(vocabulary.States(StateScope), out StateWord? word, out TextSpan span, TokenKind.State))
        {
            return false;
        }

        SetState(word!, span);
        return true;
    }

    private void SetState(StateWord word, TextSpan span)
    {
        switch (word.Kind)
        {
            case StateKind.State when state is null:
                state = word;
                break;
            case StateKind.Place when place is null:
                place = word;
                break;
            case StateKind.State:
                SaidTwice(span, state!.Word);
                break;
            case StateKind.Place:
                SaidTwice(span, place!.Word);
                break;
            case var kind when manner.Find(other => other.Kind == kind) is { } other:
                SaidTwice(span, other.Word);
                break;
            default:
                manner.Add(word);
                break;
        }
    }

    /// <summary>A describing word of so many parts or more: <c>toe touching</c> is looked for before the site <c>toe</c>, <c>all the time</c> before <c>all</c>.</summary>
    private bool BindDescribing(int fromParts)
    {
        if (!Word.Has(SlotKind.Words) || PhraseLength(vocabulary.Describing(Word.Word), at, out _) < fromParts
            || !Phrase(vocabulary.Describing(Word.Word), out DescribingWord? word, out TextSpan span, TokenKind.Describing))
        {
            return false;
        }

        words.Add(new Described(word!, span));
        return true;
    }

    /// <summary><c>pink/moist</c>, as clinics write: each piece is a word of its own.</summary>
    private bool BindSlashedWords()
    {
        TextSpan span = parts[at].Span;
        if (!Word.Has(SlotKind.Words) || !span.In(line).Contains('/'))
        {
            return false;
        }

        Scope<DescribingWord> scope = vocabulary.Describing(Word.Word);
        var found = new List<Described>();
        int start = span.Start;
        foreach (string piece in span.In(line).ToString().Split('/'))
        {
            if (scope.Find(piece) is not { } word)
            {
                return false;
            }

            found.Add(new Described(word, new TextSpan(start, piece.Length)));
            start += piece.Length + 1;
        }

        words.AddRange(found);
        return Taken(TokenKind.Describing, span);
    }

    /// <summary>Trade abbreviations: OS after eye, BAR after alert, PO, BID, MN.</summary>
    private bool BindAbbreviation()
    {
        Part part = parts[at];
        ReadOnlySpan<char> text = TextOf(part);
        string? standsFor = null;
        TokenKind kind = TokenKind.Describing;
        if (Word.Has(SlotKind.Words) || Word.Has(SlotKind.Ok))
        {
            standsFor = (vocabulary.Abbreviations("word:" + Word.Word).Find(text) ?? vocabulary.Abbreviations("word:any").Find(text))?.StandsFor;
        }

        if (standsFor is null && site is null && (about ?? Word).Word is "eye" or "ear")
        {
            standsFor = vocabulary.Abbreviations("side").Find(text)?.StandsFor;
            kind = TokenKind.Site;
        }

        if (standsFor is null && Word.Has(SlotKind.Route))
        {
            standsFor = vocabulary.Abbreviations("route").Find(text)?.StandsFor;
            kind = TokenKind.State;
        }

        if (standsFor is null && Word.Has(SlotKind.Schedule))
        {
            standsFor = vocabulary.Abbreviations("schedule").Find(text)?.StandsFor;
            kind = TokenKind.Keyword;
        }

        if (standsFor is null && Word.Has(SlotKind.Sex))
        {
            standsFor = vocabulary.Abbreviations("sex").Find(text)?.StandsFor;
            kind = TokenKind.State;
        }

        if (standsFor is null)
        {
            return false;
        }

        Taken(kind, part.Span);
        BindStandsFor(standsFor, part.Span);
        return true;
    }

    private void BindImplied(string word) => BindStandsFor(word, head.Span);

    /// <summary>Takes the plain words that an abbreviation stands for, as if they stood at <paramref name="span"/>.</summary>
    private void BindStandsFor(string standsFor, TextSpan span)
    {
        if (standsFor.StartsWith("every ", StringComparison.Ordinal) && Duration(standsFor[6..]) is { } every)
        {
            schedule = schedule with { Every = Once(schedule.Every, every, span) };
        }
        else if (vocabulary.States(StateScope).Find(standsFor) is { } known)
        {
            SetState(known, span);
        }
        else
        {
            foreach (string word in standsFor.Split(' '))
            {
                BindStandsForWord(word, span);
            }
        }
    }

    private void BindStandsForWord(string word, TextSpan span)
    {
        if (vocabulary.Ok.Find(word) is not null)
        {
            ok = true;
        }
        else if (Word.Has(SlotKind.Sex) && vocabulary.Fixed("sex").Find(word) is { } sex)
        {
            SetSex(ref male, sex.Word == "male", span);
        }
        else if (Word.Has(SlotKind.Sex) && vocabulary.Fixed("neuter").Find(word) is { } neuter)
        {
            SetSex(ref neutered, neuter.Word == "neutered", span);
        }
        else if (vocabulary.Sides.Find(word) is { } side)
        {
            site = new Site(span, Enum.Parse<Side>(side.Word, ignoreCase: true), null, null);
        }
        else if (vocabulary.States(StateScope).Find(word) is { } known)
        {
            SetState(known, span);
        }
        else if (vocabulary.Describing(Word.Word).Find(word) is { } describing)
        {
            words.Add(new Described(describing, span));
        }
    }

    private Amount? Duration(string text)
    {
        int digits = text.AsSpan().IndexOfAnyExceptInRange('0', '9');
        return digits > 0 && vocabulary.Units.Find(text.AsSpan(digits)) is { Quantity: Quantity.Time } unit
            ? new Amount(decimal.Parse(text.AsSpan(0, digits), CultureInfo.InvariantCulture), unit)
            : null;
    }

    /// <summary>Finds the longest spelling of <paramref name="scope"/> that starts at the current part, and takes its parts.</summary>
    private bool Phrase<T>(Scope<T> scope, out T? term, out TextSpan span, TokenKind kind = TokenKind.State)
        where T : class, ITerm
    {
        int count = PhraseLength(scope, at, out term);
        if (count == 0)
        {
            span = default;
            return false;
        }

        span = TextSpan.Between(parts[at].Span.Start, parts[at + count - 1].Span.End);
        Mark(kind, span);
        at += count;
        return true;
    }

    /// <summary>How many parts from <paramref name="index"/> on make up the longest spelling of <paramref name="scope"/>; 0 when none starts there.</summary>
    private int PhraseLength<T>(Scope<T> scope, int index, out T? term)
        where T : class, ITerm
    {
        T? single = scope.Find(TextOf(parts[index]), out int longest);
        for (int count = Math.Min(longest, parts.Count - index); count > 1; count--)
        {
            term = BlanksBetween(index, count) ? scope.Find(Spaced(index, index + count - 1)) : null;
            if (term is not null)
            {
                return count;
            }
        }

        term = single;
        return term is null ? 0 : 1;
    }

    /// <summary>True when nothing but blanks parts them: a comma ends a phrase (<c>pale, yellow</c> is two words).</summary>
    private bool BlanksBetween(int first, int count)
    {
        for (int index = first + 1; index < first + count; index++)
        {
            if (!TextSpan.Between(parts[index - 1].Span.End, parts[index].Span.Start).In(line).IsWhiteSpace())
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The parts from <paramref name="first"/> to <paramref name="last"/> with one blank between them.</summary>
    private string Spaced(int first, int last) =>
        first == last ? TextOf(parts[first]).ToString() : string.Join(' ', parts.Slice(first, last - first + 1).Select(part => TextOf(part).ToString()));

    private bool Taken(TokenKind kind, TextSpan span)
    {
        Mark(kind, span);
        at++;
        return true;
    }
}
