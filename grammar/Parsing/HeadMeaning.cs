using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>What the word or phrase that an observation is filed under says by itself: what it implies, and whether that is not there, or over.</summary>
internal sealed class HeadMeaning(Cursor at)
{
    /// <summary>Puts in what the phrase implies, negated where a negation stands before it. True where the observation itself is negated.</summary>
    public bool Imply(Head head, FreeWords? topic)
    {
        Pending? negation = head.Negation;
        bool signs = false;
        if (topic is not null)
        {
            at.Add(SlotKind.Topic, topic);
        }

        // "D-" denies the watery stool that it stands for
        Sense sense = negation?.Sense ?? (head.Lead?.Means == LeadMeans.None ? Sense.Absent : Sense.Present);
        foreach (string word in head.Implied)
        {
            if (at.Vocabulary.Ok.Find(word) is { } ok && at.Word.Has(SlotKind.Ok) | at.Word.Has(SlotKind.Words) && at.Vocabulary.Describing(at.Subject).Find(word) is null)
            {
                at.Set(SlotKind.Ok, ok);
            }
            else if (at.Word.Has(SlotKind.Words) && WordSlots.AddImplied(at, word, head.Span, sense))
            {
                signs = true;
                at.BehindSign = at.At;
            }
            else if (at.Word.Has(SlotKind.Portion) && at.Vocabulary.Portions.Find(word) is { } part)
            {
                at.Add(SlotKind.Portion, WordSlots.PortionOf(part, head.Span));
            }
            else if (at.Word.Has(SlotKind.Times) && at.Vocabulary.TimesWords.Find(word) is { } times)
            {
                at.Set(SlotKind.Times, new EventCount(int.Parse(times.Word, System.Globalization.CultureInfo.InvariantCulture), Bound.Exact));
            }
            else if (at.Word.Has(SlotKind.Site) && at.Vocabulary.Regions.Find(word) is { } region)
            {
                at.Set(SlotKind.Site, new Site(head.Span, Side.None, region, null));
            }
            else if (at.Word.Has(SlotKind.Tooth) && int.TryParse(word, out int tooth))
            {
                at.Set(SlotKind.Site, new Site(head.Span, Side.None, null, tooth));
            }
            else if (at.Vocabulary.Sides.Find(word) is { } side)
            {
                at.Set(SlotKind.Site, new Site(head.Span, Enum.Parse<Side>(side.Word, ignoreCase: true), null, null));
            }
            else if (at.Vocabulary.States(StateSlots.ScopeOf(at)).Find(word) is { } state)
            {
                StateSlots.Keep(at, state, head.Span);
            }
            else if (at.Word.Has(SlotKind.Sex))
            {
                SexWords known = at.First<SexWords>() ?? new SexWords(null, null);
                at.Set(SlotKind.Sex, at.Vocabulary.Fixed("sex").Find(word) is { } sex ? known with { Male = sex.Word == "male" } : known with { Neutered = word == "neutered" });
            }
            else if (at.Word.Has(SlotKind.Topic) || at.Word.Has(SlotKind.Analyte) || at.Word.Has(SlotKind.Medicine))
            {
                SlotKind name = at.Word.Has(SlotKind.Topic) ? SlotKind.Topic : at.Word.Has(SlotKind.Analyte) ? SlotKind.Analyte : SlotKind.Medicine;
                at.Set(name, new FreeWords(head.Span, at.Get<FreeWords>(name) is { } before ? $"{before.Text} {word}" : word));
            }
        }

        if (signs && negation is not null && at.Word.Kind == WordKind.Exam)
        {
            Modifiers.AfterSign(at, negation with { OfHead = false });
        }
        else if (negation is { Sense: Sense.Ended } && at.Word.Has(SlotKind.Words) && at.Word.Kind is WordKind.Care or WordKind.Scan && !signs && WorryingNone() is null)
        {
            Over(negation.Span);
        }

        bool none = head.Lead?.Means == LeadMeans.None && !signs && at.Filled.Count == 0;
        if (negation is not null && !(signs && at.Word.Kind == WordKind.Exam))
        {
            at.Pending = negation;
            none = at.Word.Kind is WordKind.Care or WordKind.Scan && !at.Word.Has(SlotKind.Medicine);
        }

        return none;
    }

    /// <summary><c>cough none</c>, <c>seizure gone</c>: behind the bare word itself, where it has no such word of its own.</summary>
    public bool NoneBehindHead(ref bool none)
    {
        int here = at.At;
        if (at.TextOf(at.Part) is "?" && AfterHead(here + 1, out _) is > 0 and var answer && (here + 1 + answer == at.Parts.Count || at.StartsSegment(here + 1 + answer)))
        {
            // "vomit? no"
            at.Mark(TokenKind.Filler, at.Part.Span);
            here++;
        }

        if (at.Word.Kind is not (WordKind.Care or WordKind.Scan) || !at.Word.Has(SlotKind.Words) || at.Filled.Any(slot => slot.Value is not Site)
            || AfterHead(here, out ModifierWord? word) is not (> 0 and var count)
            || (here > 0 && word!.Kind == ModifierKind.EndedAfter)
            || (at.Word.Has(SlotKind.Portion) && at.Phrase(at.Vocabulary.Portions, here, out _) >= count && word!.Kind == ModifierKind.EndedAfter)
            || (here + count < at.Parts.Count && at.Line[at.Parts[here + count - 1].Span.End] == '.')
            || (Modifiers.NeedsEnd(word!) && here + count < at.Parts.Count && !at.StartsSegment(here + count) && !(word!.Kind == ModifierKind.EndedAfter && at.Vocabulary.Fixed("day").Find(at.TextAt(here + count)) is not null))
            || (at.Phrase(at.Vocabulary.Describing(at.Subject), here, out DescribingWord? sign) > 0 && sign!.Part != "any")
            || (word!.Kind == ModifierKind.AbsentAfter && (WordSlots.StartsSign(at, here) || (at.Word.Has(SlotKind.Portion) && at.Vocabulary.Portions.Find(at.TextAt(here)) is not null))))
        {
            return false;
        }

        at.Mark(TokenKind.Keyword, at.SpanOf(here, count));
        if (word.Kind == ModifierKind.EndedAfter && (here + count == at.Parts.Count || at.StartsSegment(here + count)) && word.Word.Contains("stopped", StringComparison.Ordinal) && WorryingNone() is { } nothing)
        {
            // "pee stopped" is a sign, not the end of one
            at.Add(SlotKind.Words, new Described(nothing, at.SpanOf(here, count), nothing.Word));
            at.At = here + count;
            return true;
        }

        if (word.Kind == ModifierKind.EndedAfter)
        {
            Over(at.SpanOf(here, count));
        }

        at.At = here + count;
        none = true;
        return true;
    }

    /// <summary>The sign that says that none came, where that is more than an absence: no urine, no stool; else null.</summary>
    public DescribingWord? WorryingNone() =>
        at.Vocabulary.Describing(at.Subject).Find("none") is { } nothing && nothing.Meanings.Any(meaning => meaning.Level > Level.Expected) ? nothing : null;

    /// <summary>Says of the whole observation that it is over.</summary>
    private void Over(TextSpan span)
    {
        string written = at.WithSingleBlanks(span);
        bool known = at.Vocabulary.Describing(at.Subject).Find(written) is { Part: "any" };
        DescribingWord gone = known ? at.Vocabulary.Describing(at.Subject).Find(written)! : at.Vocabulary.Describing(at.Subject).Find("gone")!;
        at.Add(SlotKind.Words, new Described(gone, span, known ? written : gone.Word));
    }

    /// <summary>A <c>none</c>, a <c>gone</c>, or a <c>no</c> that ends a stretch: <c>vomiting: no, diarrhoea: yes</c>.</summary>
    private int AfterHead(int index, out ModifierWord? word)
    {
        int count = at.Phrase(at.Vocabulary.After, index, out word);
        if (count == 0 && Modifiers.At(at, index) is { Word.Kind: ModifierKind.Absent } no && (index + no.Count == at.Parts.Count || at.StartsSegment(index + no.Count)))
        {
            (word, count) = no;
        }

        return count;
    }
}
