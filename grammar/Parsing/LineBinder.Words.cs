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
        BindClosedWord()
        || BindAbout()
        || BindName()
        || BindScheduleWord()
        || BindPer()
        || BindComparison()
        || BindState()
        || BindSite()
        || BindDescribing()
        || BindAbbreviation();

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

        if ((Word.Has(SlotKind.Words) || Word.Has(SlotKind.Ok)) && vocabulary.Ok.Find(text) is not null)
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

    private bool BindSex(ReadOnlySpan<char> text, TextSpan span)
    {
        if (vocabulary.Fixed("sex").Find(text) is { } sex)
        {
            male = sex.Word == "male";
            return Taken(TokenKind.State, span);
        }

        if (vocabulary.Fixed("neuter").Find(text) is { } neuter)
        {
            neutered = neuter.Word == "neutered";
            return Taken(TokenKind.State, span);
        }

        return BindAbbreviation();
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
        if (name is not null || !(medicine || topic || Word.Has(SlotKind.FoodName)))
        {
            return false;
        }

        int last = at;
        int stop = at + 1;
        while (stop < parts.Count && parts[stop].Kind == PartKind.Word && !StartsSomething(stop))
        {
            stop++;
        }

        bool valueFollows = stop < parts.Count && parts[stop].Kind == PartKind.Number;
        if (valueFollows || topic || !medicine || !Word.Has(SlotKind.Note) || (stop < parts.Count && parts[stop].Kind == PartKind.Word))
        {
            last = stop - 1;
        }

        var span = TextSpan.Between(parts[at].Span.Start, parts[last].Span.End);
        Mark(TokenKind.Name, span);
        name = new FreeWords(span, Spaced(at, last));
        at = last + 1;
        return true;
    }

    private bool StartsSomething(int index)
    {
        ReadOnlySpan<char> text = TextOf(parts[index]);
        return (Word.Has(SlotKind.Schedule) && (IsScheduleWord(text) || vocabulary.Abbreviations("schedule").Find(text) is not null))
            || vocabulary.States(StateScope).Find(text, out int longest) is not null
            || longest > 1
            || vocabulary.Abbreviations("route").Find(text) is not null && Word.Has(SlotKind.Route);
    }

    private bool BindComparison()
    {
        if (!Word.Has(SlotKind.Size) || !TextOf(parts[at]).Equals("like", StringComparison.OrdinalIgnoreCase))
        {
            return false;
        }

        TextSpan keyword = parts[at].Span;
        at++;
        if (at < parts.Count && parts[at].Kind == PartKind.Word && TextOf(parts[at]) is "a" or "an" or "A" or "An")
        {
            at++;
        }

        Mark(TokenKind.Keyword, keyword);
        int before = at;
        if (at < parts.Count && parts[at].Kind == PartKind.Word && Phrase(vocabulary.Objects, out ComparisonObject? thing, out TextSpan span, TokenKind.Value))
        {
            Set(ref value, new LikeObject(TextSpan.Between(keyword.Start, span.End), thing!));
            return true;
        }

        at = before;
        TextSpan meant = at < parts.Count && parts[at].Kind == PartKind.Word ? parts[at].Span : keyword;
        string typed = meant.In(line).ToString();
        string? nearest = NearestWord.Find(typed, vocabulary.Objects.Spellings);
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
            default:
                manner.Add(word);
                break;
        }
    }

    private bool BindDescribing()
    {
        if (!Word.Has(SlotKind.Words) || !Phrase(vocabulary.Describing(Word.Word), out DescribingWord? word, out TextSpan span, TokenKind.Describing))
        {
            return false;
        }

        words.Add(new Described(word!, span));
        return true;
    }

    /// <summary>Trade abbreviations: OS after eye, BAR after alert, PO, BID, MN.</summary>
    private bool BindAbbreviation()
    {
        Part part = parts[at];
        ReadOnlySpan<char> text = TextOf(part);
        string? standsFor = null;
        TokenKind kind = TokenKind.Describing;
        if (Word.Has(SlotKind.Words))
        {
            standsFor = (vocabulary.Abbreviations("word:" + Word.Word).Find(text) ?? vocabulary.Abbreviations("word:any").Find(text))?.StandsFor;
        }

        if (standsFor is null && site is null && Subject.Word is "eye" or "ear" or "recheck" or "skip" or "photo")
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

        BindStandsFor(standsFor, part.Span);
        return Taken(kind, part.Span);
    }

    private void BindImplied(string word) => BindStandsFor(word, head.Span);

    /// <summary>Takes the plain words that an abbreviation stands for, as if they stood at <paramref name="span"/>.</summary>
    private void BindStandsFor(string standsFor, TextSpan span)
    {
        if (standsFor.StartsWith("every ", StringComparison.Ordinal) && Duration(standsFor[6..]) is { } every)
        {
            schedule = schedule with { Every = every };
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
        else if (vocabulary.Fixed("sex").Find(word) is { } sex)
        {
            male = sex.Word == "male";
        }
        else if (vocabulary.Fixed("neuter").Find(word) is { } neuter)
        {
            neutered = neuter.Word == "neutered";
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
        span = parts[at].Span;
        T? single = scope.Find(span.In(line), out int longest);
        for (int count = Math.Min(longest, parts.Count - at); count > 1; count--)
        {
            if (parts.AsSpan().Slice(at, count).ContainsAnyExcept(PartKind.Word))
            {
                continue;
            }

            term = scope.Find(Spaced(at, at + count - 1));
            if (term is not null)
            {
                span = TextSpan.Between(span.Start, parts[at + count - 1].Span.End);
                Mark(kind, span);
                at += count;
                return true;
            }
        }

        term = single;
        return term is not null && Taken(kind, span);
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

/// <summary>Small helpers over parts.</summary>
internal static class PartSpans
{
    public static bool ContainsAnyExcept(this Span<Part> parts, PartKind kind)
    {
        foreach (Part part in parts)
        {
            if (part.Kind != kind)
            {
                return true;
            }
        }

        return false;
    }
}
