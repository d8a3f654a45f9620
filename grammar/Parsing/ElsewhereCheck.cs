using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>Refuses what its own remark puts elsewhere: on another day, in another animal, or among things that are no dose and no weighing of this pet.</summary>
internal sealed class ElsewhereCheck(Cursor at)
{
    private const decimal SecondsADay = 86_400;

    private FreeWords? Remark => at.Get<FreeWords>(SlotKind.Note);

    public void Check()
    {
        if (Remark is null)
        {
            return;
        }

        if (OtherDay() is { } day)
        {
            at.Report(new Problem(ProblemRules.BadDate, day, $"`{day.In(at.Line)}`: this line counts for the day of its entry. Write it below the date it belongs to, or behind > as free text."));
        }

        if (Says("other-animal") is { } animal && (at.Word.Has(SlotKind.Medicine) || at.Word.Kind == WordKind.Care))
        {
            at.Report(new Problem(ProblemRules.WrongValue, animal, $"`{animal.In(at.Line)}`: this note is for one animal. Write the line in the other animal's note, or behind > as free text."));
        }

        if (at.Word.Kind == WordKind.Care && at.Word.Has(SlotKind.Medicine) && at.HeadSpan.Length == 0 && at.Times.Count == 0 && at.First<NoteValue>() is null && Says("no-dose") is { } stock)
        {
            at.Report(new Problem(ProblemRules.WrongValue, stock, $"`{stock.In(at.Line)}`: was a dose given? Write gave and the medicine for a dose, med for the plan, and > for anything else."));
        }

        if (at.Word.Kind == WordKind.Care && at.Word.Has(SlotKind.Medicine) && at.HeadSpan.Length == 0 && at.Times.Count == 0 && Says("to-come") is { } ahead)
        {
            at.Report(new Problem(ProblemRules.WrongValue, ahead, $"`{ahead.In(at.Line)}`: was it given, or is it to be given? Write gave and the time for a dose, and med for the plan."));
        }

        if (at.Word.Kind == WordKind.Care && at.Word.Has(SlotKind.Medicine) && at.HeadSpan.Length == 0 && Remark is { } rest && at.Vocabulary.Fixed("in-stock").Find(rest.Text) is not null && at.First<NoteValue>() is not null)
        {
            at.Report(new Problem(ProblemRules.WrongValue, rest.Span, $"`{rest.Text}`: was a dose given? Write gave and the medicine for a dose, and > for what is left."));
        }

        if (at.Word.Word == "weight" && Remark is { } kind)
        {
            string start = kind.Text.Split(' ')[0];
            bool hoped = at.Vocabulary.Fixed("hoped-for").Find(start) is not null;
            if (hoped || at.Vocabulary.Fixed("less").Find(start) is not null || Says("together") is not null)
            {
                at.Report(new Problem(ProblemRules.WrongValue, kind.Span, hoped
                    ? $"`{kind.Text}`: a weight that is hoped for was not measured. Write ask or > for it."
                    : $"`{kind.Text}`: write the weight of both and yours, such as weight 83.2-55.9kg."));
            }
        }
    }

    /// <summary>A remark, outside a comparison or a reason, that says that it was another day; null where none does.</summary>
    private TextSpan? OtherDay()
    {
        if (at.Word.Kind is not (WordKind.Vital or WordKind.Exam or WordKind.Scan or WordKind.Care) || Remark is null || (at.Filled.All(slot => slot.Kind is SlotKind.Note or SlotKind.Site) && at.Word.Kind != WordKind.Care))
        {
            return null;
        }

        foreach ((TextSpan written, string piece) in at.Remark.SelectMany(span => at.WithSingleBlanks(span).Split('?', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(piece => (span, piece))))
        {
            string[] words = piece.TrimEnd('.', '!').Split(' ');
            if (at.Vocabulary.Fixed("other-day").Find(string.Join(' ', words)) is not null || IsDay(words) || (words is [.., "ago"] && (words.Length > 1 ? words[^2].TrimEnd('s') is "day" or "week" or "month" or "year" : at.First<Extent>() is { Amount.Unit.Factor: >= SecondsADay }) && at.Word.Kind == WordKind.Care && at.Filled.All(slot => slot.Kind is SlotKind.Note or SlotKind.Duration)))
            {
                return written;
            }

            bool compares = words.Any(word => at.Vocabulary.Fixed("compares").Find(word) is { } && at.Vocabulary.Fixed("other-day").Find(word) is null) || at.Vocabulary.Asides.Find(words[0]) is not null || at.Vocabulary.Fixed("circumstance").Find(words[0]) is not null;
            if (compares)
            {
                continue;
            }

            for (int count = Math.Min(3, words.Length); count > 0; count--)
            {
                // the day stands at the start or at the end of the remark, where it belongs to the whole line
                foreach (string phrase in (string[])[string.Join(' ', words[..count]), string.Join(' ', words[^count..])])
                {
                    if (at.Vocabulary.Fixed("other-day").Find(phrase.Trim('(', ')', ',')) is not null)
                    {
                        return written;
                    }
                }
            }

            if (words is ["on", .. var date] && IsDay(date))
            {
                return written;
            }
        }

        return null;
    }

    /// <summary>True for <c>20 Nov</c>, <c>Nov 20</c>, <c>2024-05-01</c>.</summary>
    private static bool IsDay(string[] words) => words switch
    {
        ["in", var month, .. [] or ["last", "year"] or [[>= '0' and <= '9', _, _, _]]] => Dates.Month(month) is not null,
        [var one, var two] => (Dates.Month(one) is not null && char.IsAsciiDigit(two[0])) || (Dates.Month(two) is not null && char.IsAsciiDigit(one[0])),
        [var only] => DateOnly.TryParseExact(only, "yyyy-M-d", System.Globalization.CultureInfo.InvariantCulture, System.Globalization.DateTimeStyles.None, out _),
        _ => false,
    };

    /// <summary>Where the remark says one of a list's phrases; null where it does not.</summary>
    private TextSpan? Says(string list)
    {
        if (Remark is not { } remark)
        {
            return null;
        }

        string[] words = remark.Text.ToLowerInvariant().Split([' ', ',', '.'], StringSplitOptions.RemoveEmptyEntries);
        for (int index = 0; index < words.Length; index++)
        {
            for (int count = 1; count <= Math.Min(4, words.Length - index); count++)
            {
                if (at.Vocabulary.Fixed(list).Find(string.Join(' ', words[index..(index + count)])) is not null)
                {
                    return remark.Span;
                }
            }
        }

        return null;
    }
}
