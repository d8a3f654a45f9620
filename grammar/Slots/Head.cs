using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>The word that an observation is filed under, as it was found in a line.</summary>
/// <param name="Word">The word.</param>
/// <param name="Span">Where it, or the phrase that stands for it, was written.</param>
/// <param name="Lead">The phrase that stands for it; null when it was written itself.</param>
/// <param name="Line">Which of the lines of that phrase this is.</param>
/// <param name="Negation">The negation before it, or null.</param>
internal readonly record struct Head(LineWord Word, TextSpan Span, LeadWord? Lead = null, int Line = 0, Pending? Negation = null)
{
    /// <summary>The words that the phrase implies.</summary>
    public System.Collections.Immutable.ImmutableArray<string> Implied => Lead?.Lines[Line].Words ?? [];

    private const int LongestShort = 3;

    private const int TriadanLength = 3;

    /// <summary>The head that starts at a part, in the longest spelling; null where none does.</summary>
    public static Head? At(Cursor at, int index, out int count, bool first = false)
    {
        count = 0;
        if (index >= at.Parts.Count || at.Parts[index].Kind is not (PartKind.Word or PartKind.Number))
        {
            return null;
        }

        int words = at.Phrase(at.Vocabulary.LineWords, index, out LineWord? word);
        int lead = at.Phrase(at.Vocabulary.Leads, index, out LeadWord? phrase);
        if (lead == 1 && !first && at.TextAt(index) is { Length: <= LongestShort } letters && !char.IsUpper(letters[0]) && letters[^1] is not ('+' or '-'))
        {
            // the bar of "chocolate bar" is not an abbreviation
            lead = 0;
        }

        if (lead == 1 && at.Vocabulary.Fixed("beside-eaten").Find(at.TextAt(index)) is { } beside && at.Line.Split(' ', ',').Any(word => at.Vocabulary.Leads.Find(word) is { Lines: [{ Word: "ate" }] }))
        {
            // "E+ D+ U+ F+": the D is for drinking there
            (phrase, word) = (at.Vocabulary.Leads.Find(beside.Word), at.Vocabulary.LineWords.Find(beside.Word));
            (lead, words) = phrase is null ? (0, 1) : (1, 0);
        }

        if (lead == 1 && at.Vocabulary.Fixed("ordered").Find(at.TextAt(index)) is not null && at.Phrase(at.Vocabulary.Medicines, index + 1, out _) > 0)
        {
            // the "inc" of "inc glargine to 2.5u" names no wound
            lead = 0;
        }

        if (lead == 1 && phrase!.Lines is [{ Words: [var place] }] && at.Vocabulary.Regions.Find(place) is not null && at.Phrase(at.Vocabulary.LineWords, index + 1, out LineWord? of) > 0 && of!.Kind == WordKind.Scan)
        {
            // the pad of "pad cut" is a place
            lead = 0;
        }

        if (words == 1 && lead == 0 && at.Is(index, "rest") && at.Is(index + 1, "of"))
        {
            // "rest of nodes normal"
            return null;
        }

        if (lead == 1 && at.TextAt(index) is "as" or "As")
        {
            // the letters for the left ear are written in capitals
            lead = 0;
        }

        if (lead == 1 && at.TextAt(index).Length == 1 && index + 1 < at.Parts.Count && (at.Phrase(at.Vocabulary.Regions, index + 1, out _) > 0 || at.Phrase(at.Vocabulary.LineWords, index + 1, out LineWord? part) > 0 && part!.Kind == WordKind.Exam))
        {
            // the R of "R hock" is a side, and not the letter for breathing
            lead = 0;
        }

        if (lead == 1 && at.Phrase(at.Vocabulary.Sides, index, out _) > 1)
        {
            // the R of "R fore"
            lead = 0;
        }

        if (words > 0 && lead > words && phrase!.Lines is [var line] && line.Word == word!.Word
            && at.Vocabulary.Describing(word).Find(at.Spaced(index + words, index + lead - 1)) is not null)
        {
            // "gums white": the word itself comes first, and the rest is a sign of it
            lead = 0;
        }

        count = Math.Max(words, lead);
        return count == 0 ? null
            : words >= lead ? new Head(word!, at.SpanOf(index, count))
            : Of(at, phrase!, at.SpanOf(index, count));
    }

    /// <summary>The same with a negation before it: <c>no cough</c>, <c>no longer limping</c>.</summary>
    public static Head? AtWithNegation(Cursor at, int index, out int count, bool first = false)
    {
        Head? plain = At(at, index, out count, first);
        if (Modifiers.At(at, index) is { } found && !(at.Is(index, "no") && at.IsWord(index + 1) && at.Vocabulary.Leads.Find(at.TextAt(index + 1)) is { Lines: [{ Word: "stop" }] }) && (index + found.Count >= at.Parts.Count || at.OnlyBlanks(index + found.Count - 1, 2)) && At(at, index + found.Count, out int behind, first) is { } negated
            && !(plain is { Lead: not null } && count > 1 && count >= found.Count + behind))
        {
            // "not eating" is a phrase of its own, and "not eating well" denies "eating well"
            count = found.Count + behind;
            return negated with { Negation = new Pending(found.Word, at.SpanOf(index, found.Count), OfHead: true) };
        }

        return plain;
    }

    /// <summary>The vital whose value starts at a part, where its unit tells which: a weight, a temperature; a tooth by its number. Null where none does.</summary>
    public static Head? Measure(Cursor at, int index)
    {
        if (index >= at.Parts.Count || at.Parts[index] is not NumberPart { Second.Exists: false } number)
        {
            return null;
        }

        int noun = index + (at.IsWord(index + 1) && at.Is(index + 2, "clumps") ? 2 : 1);
        if (number is { BoundSpan.Length: 0, First.Unit.Length: 0 } && at.IsWord(noun) && at.Vocabulary.Units.Find(at.TextAt(noun)) is { Word: "clump" })
        {
            // "4 big clumps": of urine, in a tray
            return new Head(at.Vocabulary.LineWords.Find("pee")!, new TextSpan(number.Span.Start, 0));
        }

        if (number.Span.In(at.Line) is "1st" or "21st" or "31st")
        {
            return null;
        }

        TextSpan unitSpan = number.First.Unit.Length > 0 ? number.First.Unit : at.IsWord(index + 1) ? at.Parts[index + 1].Span : default;
        LineWord? word = at.Vocabulary.Units.Find(unitSpan.In(at.Line)) is { Quantity: Quantity.Mass or Quantity.Temperature } unit
            ? at.Vocabulary.LineWords.Terms.FirstOrDefault(vital => vital.Kind == WordKind.Vital && SlotTable.Row(vital.Takes[0].Kind).Fits(unit, vital))
            : number.Span.Length == TriadanLength && SiteSlots.IsTooth(at, number) ? at.Vocabulary.LineWords.Find("tooth") : null;
        return word is null ? null : new Head(word, new TextSpan(number.Span.Start, 0));
    }

    /// <summary>The fact whose value starts at a part, without its word: a species, a sex; null where none does.</summary>
    public static Head? Fact(Cursor at, int index)
    {
        if (!at.IsWord(index))
        {
            return null;
        }

        ReadOnlySpan<char> text = at.TextAt(index);
        string? word = at.Vocabulary.Fixed("species").Find(text) is not null ? "species"
            : at.Vocabulary.Fixed("sex").Find(text) is not null || at.Vocabulary.Fixed("neuter").Find(text) is not null || at.Vocabulary.Abbreviations("sex").Find(text) is not null ? "sex"
            : at.Phrase(at.Vocabulary.Fixed("breed-name"), index, out _) > 0 ? "breed" : null;
        return word is null ? null : new Head(at.Vocabulary.LineWords.Find(word)!, new TextSpan(at.Parts[index].Span.Start, 0));
    }

    /// <summary>A breed: words up to a comma that mean nothing else; null where one of them does.</summary>
    public static Head? Breed(Cursor at, int index)
    {
        int end = index;
        if (at.IsWord(index) && at.Vocabulary.Small.Find(at.TextAt(index)) is not null)
        {
            // "born 2013, or near enough"
            return null;
        }

        while (end < at.Parts.Count && at.IsWord(end) && (end == index || !at.StartsSegment(end)))
        {
            if ((end == index && at.Vocabulary.IsDescribing(at.TextAt(end).ToString()) && !(at.IsWord(end + 1) && !at.StartsSegment(end + 1) && !at.Vocabulary.IsDescribing(at.TextAt(end + 1).ToString()))) || at.Vocabulary.Fixed("no-breed").Find(at.TextAt(end)) is not null
                || Modifiers.At(at, end) is not null || (At(at, end, out _) is { } other && !other.Word.Has(SlotKind.Analyte)))
            {
                return null;
            }

            end++;
        }

        return end == index || (end < at.Parts.Count && !at.StartsSegment(end)) ? null : new Head(at.Vocabulary.LineWords.Find("breed")!, new TextSpan(at.Parts[index].Span.Start, 0));
    }

    /// <summary>A dose in a line about something else: a known medicine and its amount, without an interval that would make it a plan; null where none starts.</summary>
    public static Head? Dose(Cursor at, int index)
    {
        if (at.Word.Has(SlotKind.Medicine) || at.Word.Kind is not (WordKind.Care or WordKind.Vital or WordKind.Exam) || index >= at.Parts.Count)
        {
            return null;
        }

        int count = at.Phrase(at.Vocabulary.Medicines, index, out _);
        int end = index + count;
        bool timed = false;
        for (int time = end; count > 0 && at.StartsSegment(index) && !timed && time < at.Parts.Count && (time == end || !at.StartsSegment(time)); time++)
        {
            // "ate all, carprofen in the cheese 7:15"
            timed = TimeReader.Within(at, time, out _) is not null;
        }

        if (count == 0 ? !AmountFirst(at, index) : !timed && (end >= at.Parts.Count || at.Parts[end].Kind != PartKind.Number))
        {
            return null;
        }

        while (end < at.Parts.Count && !at.StartsSegment(end))
        {
            if (IntervalWords.Short(at, end) is not null || IntervalWords.Daily(at, end, out _) is not null || IntervalWords.EveryAbbreviation(at.TextAt(end), out _) || at.Is(end, "every"))
            {
                return null;
            }

            end++;
        }

        return new Head(at.Vocabulary.LineWords.Find("gave")!, new TextSpan(at.Parts[index].Span.Start, 0));
    }

    /// <summary>True for <c>2u glargine</c>: an amount of medicine with its name behind it.</summary>
    private static bool AmountFirst(Cursor at, int index)
    {
        if (at.Parts[index] is not NumberPart { Third.Exists: false } amount)
        {
            return false;
        }

        TextSpan attached = (amount.Second.Exists ? amount.Second : amount.First).Unit;
        int name = index + (attached.Length > 0 ? 1 : 2);
        return at.IsWord(name) && at.Vocabulary.Units.Find(attached.Length > 0 ? attached.In(at.Line) : at.TextAt(index + 1)) is { Quantity: Quantity.Dose or Quantity.Mass or Quantity.Volume } && at.Phrase(at.Vocabulary.Medicines, name, out _) > 0;
    }

    private static Head Of(Cursor at, LeadWord phrase, TextSpan span) => new(at.Vocabulary.LineWords.Find(phrase.Lines[0].Word)!, span, phrase);
}
