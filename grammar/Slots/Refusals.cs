using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>What to tell someone whose word or number fits no slot: what is wrong, and what would be right.</summary>
internal static class Refusals
{
    private const int ShortestGuessed = 4;
    private const int WordsShown = 5;

    /// <summary>What is wrong with a number that fits no slot.</summary>
    public static Problem Of(Cursor at, NumberForm form)
    {
        LineWord word = at.Word;
        string typed = form.Span.In(at.Line).ToString();
        string first = form.Part.First.Digits.In(at.Line).ToString();
        if (form is { Shape: NumberShape.Times, Unit.Quantity: Quantity.Length } && word.Has(SlotKind.Size))
        {
            return Bad(form, $"`{typed}`: a size is larger than 0, such as 12x9mm");
        }

        if (word.Has(SlotKind.Range) && form is { Shape: NumberShape.Spread, Part.BoundSpan.Length: > 0 })
        {
            return new Problem(ProblemRules.WrongValue, form.Span, $"`{typed}`: a range is two numbers without a mark before them, such as 16-24.");
        }

        if (word.Kind == WordKind.Vital && form.Unit is null && at.First<NoteValue>() is { } before)
        {
            return new Problem(ProblemRules.SaidTwice, form.Span, $"`{typed}` comes after `{before.Span.In(at.Line)}`. Write one observation a line.");
        }

        if (form is { Shape: NumberShape.Ratio, Second: 0 })
        {
            return Bad(form, $"`{typed}`: nothing can be divided by 0.");
        }

        if (form.UnitSpan.Length > 0 && form.Unit is null && form.UnitSpan.In(at.Line) is not ("x" or "X" or "×"))
        {
            return UnknownUnit(at, form);
        }

        if (word.Has(SlotKind.Rate) && form.Shape == NumberShape.Ratio)
        {
            return form.NoUnit
                ? new Problem(ProblemRules.MissingUnit, form.Span, $"`{typed}`: over how many seconds? Write {typed}s.")
                : new Problem(ProblemRules.WrongUnit, form.Span, $"`{typed}`: count over seconds or a minute, as in {first}/15s.");
        }

        if (word.Has(SlotKind.Times) && form.Shape is NumberShape.Bare or NumberShape.WithUnit && (form.First > 999 || form.First != Math.Truncate(form.First)) && form.Unit is null)
        {
            return Bad(form, $"`{typed}`: expected a whole number of times, such as 2x");
        }

        if (word.Has(SlotKind.Range) && form.Shape == NumberShape.Spread)
        {
            return form.First > form.Second ? Bad(form, $"`{typed}`: the lower number comes first.")
                : at.About is { } about ? Subject(at, form.Span, form.UnitSpan, form.Unit, about)
                : new Problem(ProblemRules.WrongValue, form.Span, $"`{typed}`: a range is two numbers and one unit, such as 16-24 or 38-39C.");
        }

        if (word.Has(SlotKind.Limit) && form.Shape is NumberShape.Bare or NumberShape.WithUnit && word.Has(SlotKind.Limit))
        {
            return form.Bound is Bound.Below or Bound.Above && at.About is { } about
                ? Subject(at, form.Span, form.UnitSpan, form.Unit, about)
                : new Problem(ProblemRules.WrongValue, form.Span, $"`{typed}`: write > or < before the limit, as in >{typed}");
        }

        if (word.Has(SlotKind.Mass) && form.Shape == NumberShape.Spread && form.Unit is { Quantity: Quantity.Mass })
        {
            return Bad(form, $"`{typed}`: write the weight of person and pet first, then the person's alone, so the first number must be the larger.");
        }

        if (form.Unit is { Quantity: Quantity.Time } && word.Kind == WordKind.Fact && !word.Has(SlotKind.Schedule))
        {
            return new Problem(ProblemRules.WrongValue, form.Span, $"`{typed}`: an age changes. Write born and the year, such as born 2017 or born ~2017.");
        }

        if (form.Unit is { Quantity: Quantity.Time } && word.Has(SlotKind.Schedule))
        {
            return new Problem(ProblemRules.WrongValue, form.Span, $"`{typed}` needs a word before it: every {typed}, for {typed} or in {typed}");
        }

        if (form.Unit is { } unit && form.Shape is not NumberShape.Ratio)
        {
            return new Problem(ProblemRules.WrongUnit, form.UnitSpan, $"`{form.UnitSpan.In(at.Line)}` does not go with {word.Word}. Write {Expected(at)}.");
        }

        if (form.NoUnit && form.Shape != NumberShape.Ratio)
        {
            string example = string.Join(", ", word.Takes.SelectMany(slot => SlotTable.Units(slot.Kind, word)).Take(3).Select(unit => typed + unit));
            if (example.Length > 0)
            {
                string noun = word.Has(SlotKind.Score) ? "a scale" : "a unit";
                return new Problem(ProblemRules.MissingUnit, form.Span, $"`{typed}` needs {noun} here: {example}");
            }
        }

        return new Problem(form.NoUnit && word.Has(SlotKind.Amount) ? ProblemRules.MissingUnit : ProblemRules.WrongValue, form.Span,
            form.NoUnit && word.Has(SlotKind.Amount) ? $"`{typed}` of what? Write the unit, as in {typed} tablet" : $"`{typed}` is not a value of {word.Word}. Write {Expected(at)}.");
    }

    /// <summary>What is wrong with a part that fits nothing.</summary>
    public static Problem Of(Cursor at, Part part)
    {
        string typed = at.TextOf(part).ToString();
        LineWord word = at.Word;
        if (part is UnreadablePart unreadable)
        {
            int stopped = unreadable.StoppedAt;
            string found = stopped > part.Span.Start && stopped < part.Span.End ? $" behind `{at.Line[part.Span.Start..stopped]}`" : "";
            string expected = unreadable.Expected is [] or ["a blank"] || stopped == part.Span.Start ? Expected(at) : string.Join(" or ", unreadable.Expected.Take(WordsShown));
            return new Problem(ProblemRules.Unreadable, part.Span, $"`{typed}` can't be read{found}. Write {expected}.");
        }

        if (part.Kind != PartKind.Word)
        {
            return new Problem(ProblemRules.WrongValue, part.Span, $"`{typed}` does not fit here. Write {Expected(at)}.");
        }

        string? nearest = Nearest(at, typed);
        string hint = nearest is not null ? $"Did you mean `{nearest}`?"
            : word.Has(SlotKind.Words) ? Known(at, word)
            : word.Kind == WordKind.Fact ? $"Write {Expected(at)}."
            : $"Write {Expected(at)}. Other remarks go on a line that starts with >.";
        return new Problem(ProblemRules.UnknownWord, part.Span, $"`{typed}` is not a word I know behind {word.Word}. {hint}", nearest);
    }

    /// <summary>The known word that is probably meant: never one for a short word or for one that is known elsewhere, never one that starts otherwise.</summary>
    public static string? Nearest(Cursor at, string typed)
    {
        string bare = typed.TrimEnd('.', ':', '!', '?');
        return bare.Length < ShortestGuessed || at.Vocabulary.IsNoSlip(bare) ? null
            : NearestWord.Find(bare, SlotTable.Spellings(at.Vocabulary, at.Word)) is { } nearest
                && char.ToLowerInvariant(nearest[0]) == char.ToLowerInvariant(bare[0]) && !nearest.Equals(bare, StringComparison.OrdinalIgnoreCase) ? nearest : null;
    }

    /// <summary>The known word that is one slip away from what was typed: a letter too many, too few or another, or two swapped.</summary>
    public static string? Slip(Cursor at, string typed) => at.Vocabulary.IsNoSlip(typed) ? null
        : NearestWord.Find(typed, SlotTable.Words(at.Vocabulary, at.Word), most: 1) is { Length: >= ShortestGuessed } nearest
            && (typed.Length > ShortestGuessed || nearest.Length > typed.Length || at.Vocabulary.Describing(at.Subject).Find(nearest) is { Part: not "any" })
            && char.ToLowerInvariant(nearest[0]) == char.ToLowerInvariant(typed[0]) && !nearest.Equals(typed, StringComparison.OrdinalIgnoreCase) ? nearest : null;

    /// <summary>What is wrong with an observation of which nothing but a remark is left.</summary>
    public static Problem UnknownWords(Cursor at, LineWord word, FreeWords remark) => new(ProblemRules.UnknownWord, remark.Span,
        $"`{remark.Text}` holds no word I know behind {word.Word}. {Known(at, word)}");

    /// <summary>Some words that go with an observation; what it lacks where it has no words of its own.</summary>
    private static string Known(Cursor at, LineWord word) => at.Vocabulary.Describing(word).Terms.Where(sign => sign.Part != "any").Select(sign => sign.Word).Take(WordsShown).ToList() is { Count: > 0 } some
        ? $"Words I know here: ok, {string.Join(", ", some)} and more. Other remarks go on a line that starts with >."
        : $"Write {Expected(at)}. Other remarks go on a line that starts with >.";

    /// <summary>What the observation lacks most, with an example.</summary>
    public static string Expected(Cursor at)
    {
        List<Slot> open = [.. at.Word.Takes.Where(slot => !SlotTable.Row(slot.Kind).IsFilled(at) && SlotTable.Hint(slot.Kind, at.Word).Length > 0)];
        IEnumerable<Slot> wanted = open.Exists(slot => slot.Needed) ? open.Where(slot => slot.Needed) : open;
        return string.Join(", or ", wanted.Take(2).Select(slot => SlotTable.Hint(slot.Kind, at.Word)).DefaultIfEmpty("nothing more"));
    }

    /// <summary>What the observation cannot do without and does not have; null when it has all.</summary>
    public static Problem? Lacking(Cursor at)
    {
        foreach (SlotKind kind in at.Word.Needed)
        {
            if (!SlotTable.Row(kind).IsFilled(at))
            {
                TextSpan head = at.HeadSpan.Length > 0 ? at.HeadSpan : at.Parts.Count > 0 ? at.Parts[0].Span : TextSpan.Between(0, at.End);
                return new Problem(ProblemRules.Missing, head, $"Something is missing behind `{head.In(at.Line)}`: write {SlotTable.Hint(kind, at.Word)}");
            }
        }

        return null;
    }

    /// <summary>What is wrong with the unit of a range or a limit.</summary>
    public static Problem Subject(Cursor at, TextSpan span, TextSpan unitSpan, Unit? unit, LineWord about)
    {
        string hint = SlotTable.Hint(about.Takes[0].Kind, about);
        return unit is null
            ? new Problem(ProblemRules.MissingUnit, span, $"`{span.In(at.Line)}` needs a unit: {about.Word} is {hint}")
            : new Problem(ProblemRules.WrongUnit, unitSpan.Length == 0 ? span : unitSpan, $"`{unit.Word}` does not go with {about.Word}, which is {hint}");
    }

    private static Problem Bad(NumberForm form, string message) => new(ProblemRules.BadNumber, form.Span, message);

    /// <summary>The unit that goes with the observation and is one slip away from what was typed.</summary>
    public static string? NearestUnit(Cursor at, string typed) =>
        NearestWord.Find(typed, at.Vocabulary.Units.Terms.Where(unit => Numbers.FitsAny(at, unit)).SelectMany(unit => unit.Synonyms.Prepend(unit.Word)));

    private static Problem UnknownUnit(Cursor at, NumberForm form)
    {
        string typed = form.UnitSpan.In(at.Line).ToString();
        string? nearest = NearestUnit(at, typed);
        return new Problem(ProblemRules.WrongUnit, form.UnitSpan,
            $"`{typed}` is not a unit I know here. " + (nearest is null ? $"Write {Expected(at)}." : $"Did you mean `{nearest}`?"), nearest);
    }
}
