using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <content>What is said about parts that do not fit.</content>
internal sealed partial class LineBinder
{
    private string? numberRefusal;

    /// <summary>Takes the current part (and its unit word) as not understood, and says why.</summary>
    private bool Refuse(TextSpan span, string rule, string message, string? nearest = null)
    {
        Report(new Problem(rule, span, message, nearest));
        return Taken(TokenKind.Unknown, span);
    }

    private bool RefuseNumber(Part part, TextSpan span) =>
        Refuse(span, ProblemRules.BadNumber, $"`{part.Span.In(line)}`: {numberRefusal ?? "this is not a size or count that can be"}");

    private bool WrongForm(TextSpan span) => !TakesNote()
        && Refuse(span, ProblemRules.WrongValue, $"`{span.In(line)}` is not a value of {Word.Word}; expected {Expected()}");

    /// <summary>A number with letters that are no unit. It may start a remark (<c>3pm</c>), but not where it is an amount with a slip (<c>5mgg</c>).</summary>
    private bool UnknownUnit(TextSpan span, TextSpan unitSpan)
    {
        string typed = unitSpan.In(line).ToString();
        IEnumerable<Unit> fitting = vocabulary.Units.Terms.Where(FitsAny).ToList();
        string? nearest = NearestWord.Find(typed, fitting.SelectMany(unit => unit.Synonyms.Prepend(unit.Word)));
        if (TakesNote() && (nearest is null || amount is not null))
        {
            return false;
        }

        string hint = nearest is not null ? $"did you mean `{nearest}`?" : $"expected {Expected()}";
        Report(new Problem(ProblemRules.WrongUnit, unitSpan, $"`{typed}` is not a unit known here; {hint}", nearest));
        return Taken(TokenKind.Unknown, span);
    }

    private bool UnfitUnit(TextSpan span, TextSpan unitSpan, Unit unit)
    {
        if (TakesNote())
        {
            return false;
        }

        if (unit.Quantity == Quantity.Time && Word.Has(SlotKind.Schedule))
        {
            ReadOnlySpan<char> time = span.In(line);
            return Refuse(span, ProblemRules.WrongValue, $"`{time}` needs a word before it: every {time}, for {time} or in {time}");
        }

        Report(new Problem(ProblemRules.WrongUnit, unitSpan.Length == 0 ? span : unitSpan, $"`{unit.Word}` does not go with {Word.Word}; expected {Expected()}"));
        return Taken(TokenKind.Unknown, span);
    }

    private bool UnfitSubject(TextSpan span, TextSpan unitSpan, Unit? unit)
    {
        Report(SubjectProblem(span, unitSpan, unit));
        return Taken(TokenKind.Unknown, span);
    }

    private Problem SubjectProblem(TextSpan span, TextSpan unitSpan, Unit? unit)
    {
        string message = unit is null
            ? $"`{span.In(line)}` has no unit; {about!.Word} is given as {SlotHints.For(about.Takes[0].Kind, about.Word)}"
            : $"`{unit.Word}` does not go with {about!.Word}, which is given as {SlotHints.For(about.Takes[0].Kind, about.Word)}";
        return unit is null ? new Problem(ProblemRules.MissingUnit, span, message) : new Problem(ProblemRules.WrongUnit, unitSpan, message);
    }

    private void ReportPart(Part part)
    {
        Mark(TokenKind.Unknown, part.Span);
        string typed = TextOf(part).ToString();
        if (part is UnreadablePart unreadable)
        {
            int stopped = unreadable.StoppedAt;
            string found = stopped > part.Span.Start && stopped < part.Span.End ? $" after `{line[part.Span.Start..stopped]}`" : "";
            string expected = unreadable.Expected is [] or ["a blank"] || stopped == part.Span.Start ? Expected() : string.Join(" or ", unreadable.Expected.Take(5));
            Report(new Problem(ProblemRules.Unreadable, part.Span, $"`{typed}` can't be read{found}; expected {expected}"));
            return;
        }

        if (part.Kind != PartKind.Word)
        {
            Report(new Problem(ProblemRules.WrongValue, part.Span, $"`{typed}` is not expected after {Word.Word}; expected {Expected()}"));
            return;
        }

        string? nearest = NearestWord.Find(typed.TrimEnd('.', ':', '!', '?'), SpellingsInScope());
        string hint = nearest is not null ? $"did you mean `{nearest}`?"
            : Word.Has(SlotKind.Words) ? $"known are {string.Join(", ", vocabulary.Describing(Word.Word).Terms.Select(w => w.Word).Take(5))} and more; other remarks go in a line that starts with >"
            : Word.Kind == WordKind.Fact ? $"expected {Expected()}"
            : $"expected {Expected()}; other remarks go in a line that starts with >";
        Report(new Problem(ProblemRules.UnknownWord, part.Span, $"`{typed}` is not a word known after {Word.Word}; {hint}", nearest));
    }

    /// <summary>Every spelling that would have been understood in this line.</summary>
    private IEnumerable<string> SpellingsInScope()
    {
        IEnumerable<string> spellings = vocabulary.States(StateScope).Spellings;
        if (Word.Has(SlotKind.Words))
        {
            spellings = spellings.Concat(vocabulary.Describing(Word.Word).Spellings).Concat(vocabulary.Ok.Spellings);
        }

        if (SiteSlot is { } slot)
        {
            spellings = spellings.Concat(RegionSpellings(slot)).Concat(vocabulary.Sides.Spellings);
        }

        if (Word.Has(SlotKind.Vital) && about is null)
        {
            spellings = spellings.Concat(vocabulary.LineWords.Terms.Where(word => word.Kind == WordKind.Vital).SelectMany(word => word.Synonyms.Prepend(word.Word)));
        }

        if (Word.Has(SlotKind.Item) && about is null)
        {
            spellings = spellings.Concat(vocabulary.LineWords.Spellings);
        }

        foreach ((SlotKind kind, string list) in ClosedLists)
        {
            if (Word.Has(kind))
            {
                spellings = spellings.Concat(vocabulary.Fixed(list).Spellings);
            }
        }

        if (Word.Has(SlotKind.Ok))
        {
            spellings = spellings.Concat(vocabulary.Fixed("ok").Spellings);
        }

        if (Word.Has(SlotKind.Schedule))
        {
            spellings = spellings.Concat(ScheduleWords);
        }

        return spellings.Concat(vocabulary.Units.Terms.Where(FitsAny).SelectMany(unit => unit.Synonyms.Prepend(unit.Word)));
    }

    private static readonly (SlotKind Kind, string List)[] ClosedLists =
        [(SlotKind.Species, "species"), (SlotKind.Sex, "sex"), (SlotKind.Sex, "neuter"), (SlotKind.Units, "units"), (SlotKind.Portion, "portion")];

    /// <summary>What the line lacks most, with an example.</summary>
    private string Expected()
    {
        List<Slot> open = [.. Word.Takes.Where(slot => !Filled(slot.Kind) && SlotHints.For(slot.Kind, Word.Word) != "more")];
        IEnumerable<Slot> wanted = open.Exists(slot => slot.Needed) ? open.Where(slot => slot.Needed) : open;
        return string.Join(", or ", wanted.Take(2).Select(slot => SlotHints.For(slot.Kind, Word.Word)).DefaultIfEmpty("nothing more"));
    }

    /// <summary>Says what the line lacks. Silent where the line has another problem already: one cause, one message.</summary>
    private void CheckNeeded()
    {
        if (problems.Count > 0)
        {
            return;
        }

        foreach (Slot slot in Word.Takes)
        {
            if (slot.Needed && !Filled(slot.Kind))
            {
                Report(new Problem(ProblemRules.Missing, head.Span, $"something is missing after `{head.Span.In(line)}`: expected {SlotHints.For(slot.Kind, Word.Word)}"));
                return;
            }
        }
    }

    private bool Filled(SlotKind kind) => kind switch
    {
        SlotKind.Text or SlotKind.File or SlotKind.Medicine or SlotKind.Topic or SlotKind.FoodName or SlotKind.Rule => name is not null,
        SlotKind.Species => species is not null,
        SlotKind.Sex => male is not null || neutered is not null,
        SlotKind.Birth => birth is not null,
        SlotKind.Units => units is not null,
        SlotKind.Vital or SlotKind.Item => about is not null,
        SlotKind.Words => words.Count > 0 || ok || value is not null,
        SlotKind.Ok => ok,
        SlotKind.Site => site is not null,
        SlotKind.Schedule => Word.Has(SlotKind.Rule) ? schedule.Until is not null : Word.Word == "home-check" ? schedule.Every is not null : schedule.NamesDay || schedule.Every is not null,
        SlotKind.Portion => value is not null || words.Count > 0 || ok,
        SlotKind.Amount => amount is not null,
        _ => value is not null,
    };
}
