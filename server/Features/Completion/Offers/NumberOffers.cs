using System.Collections.Immutable;
using HealthNotes.Analysis.Rules;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>
/// What goes behind a bare number: a unit, a counting time, a scale. Each is tried on the line by the parser itself; what
/// does not read is not offered, and what would make a value no living pet has comes last.
/// </summary>
internal static class NumberOffers
{
    private const int SecondsInAnHour = 3600;
    private const int RareUnit = 20;
    private const int OtherReaders = 10;
    private static readonly string[] UsUnits = ["F", "lb", "oz", "in", "floz", "cup", "mi", "mg/dL"];

    public static IEnumerable<Offer> For(LineState line, ImmutableArray<MedicineOrder> plan)
    {
        if (NumberBefore(line) is not { } number)
        {
            yield break;
        }

        string before = line.At.Text[..number.End];
        foreach (NumberEnding ending in NumberEndings.For(line.Word.Word))
        {
            int from = ending.Ending[0] == '/' && number.Slash is { } slash ? slash : number.End;
            string head = line.At.Text[..from];
            if (Reads(head + ending.Ending, number.Start) is { } read && IsKept(read, ending.Ending))
            {
                yield return new Offer(ending.Ending, CompletionKind.Unit, 0, Shown(read, line.Note.Us) ?? ending.Meaning) { From = from, Spellings = [" " + ending.Ending], Key = $"ending:{ending.Word}:{ending.Ending}" };
            }
        }

        if (line.Word.Has(SlotKind.Times) && Reads(before + "x", number.Start) is not null)
        {
            yield return new Offer("x", CompletionKind.Unit, Usual(line.Word).Count == 0 ? 0 : RareUnit, "times") { From = number.End, Spellings = [" x"] };
        }

        List<(Unit Unit, LineSyntax Read)> units = Units(line, before, number.Start);
        bool anyPlausible = units.Exists(unit => IsPlausible(unit.Read));
        foreach ((Unit unit, LineSyntax read) in units)
        {
            if ((anyPlausible && !IsPlausible(read)) || !IsKept(read, unit.Word))
            {
                continue;
            }

            bool planned = IsPlanned(plan, read, unit);
            string gap = unit.Quantity == Quantity.Dose || unit.Word.Contains('-', StringComparison.Ordinal) ? " " : "";
            yield return new Offer(gap + unit.Word, CompletionKind.Unit, planned ? 0 : 1 + Order(line.Subject, unit, line.Note.Us), Detail(read, unit, line.Note.Us))
            {
                Label = unit.Word,
                // a blank that was typed between the two gives way to what is usual
                Spellings = [.. unit.Synonyms.Prepend(unit.Word).SelectMany(spelling => (string[])[spelling, " " + spelling])],
                From = number.End,
                Key = $"unit:{unit.Word}",
                Preselect = planned,
            };
        }
    }

    /// <summary>The units that read behind the number.</summary>
    private static List<(Unit Unit, LineSyntax Read)> Units(LineState line, string before, int numberStart)
    {
        var units = new List<(Unit, LineSyntax)>();
        foreach (Unit unit in NoteVocabulary.Default.Units.Terms)
        {
            // a rate's ending is in the table; an event lasts hours at most, and hours and longer go behind every, for and in
            bool fits = line.Subject.Takes.Any(slot => SlotTable.Fits(slot.Kind, unit, line.Subject))
                ? unit.Quantity != Quantity.Rate && (unit.Quantity != Quantity.Time || unit.Factor <= SecondsInAnHour)
                : unit.Quantity == Quantity.Time && unit.Factor >= SecondsInAnHour;
            if (fits && Reads($"{before} {unit.Word}", numberStart) is { } read)
            {
                units.Add((unit, read));
            }
        }

        return units;
    }

    /// <summary>The bare number that stands before the cursor, or that the word at the cursor starts with; with where its last <c>/</c> stands.</summary>
    public static (int Start, int End, int? Slash)? NumberBefore(LineState line)
    {
        string text = line.At.Text;
        int cursor = line.At.Cursor;
        int end = cursor;
        while (end > line.At.Start && IsUnitLetter(text[end - 1]))
        {
            end--;
        }

        if (end == line.At.Start)
        {
            while (end > 0 && text[end - 1] == ' ')
            {
                end--;
            }
        }
        else if (text[end - 1] == '/')
        {
            // "18/" is a number and the start of an ending
            int slash = end - 1;
            int digits = StartOfNumber(text, slash);
            return digits < slash && IsWordStart(text, digits) ? (digits, slash, slash) : null;
        }

        int start = StartOfNumber(text, end);
        if (start == end || !IsWordStart(text, start) || !char.IsAsciiDigit(text[end - 1]))
        {
            return null;
        }

        int slashAt = text.AsSpan(start, end - start).LastIndexOf('/');
        return (start, end, slashAt > 0 && end >= line.At.Start ? start + slashAt : null);
    }

    private static int StartOfNumber(string text, int end)
    {
        int start = end;
        while (start > 0 && (char.IsAsciiDigit(text[start - 1]) || text[start - 1] is '.' or ',' or '/' or '-' or 'x' or '~' or '<' or '>' or '≤' or '≥'))
        {
            start--;
        }

        return start;
    }

    private static bool IsUnitLetter(char c) => char.IsLetter(c) || c is '°' or '%' or '"';

    private static bool IsWordStart(string text, int start) => start > 0 && char.IsWhiteSpace(text[start - 1]);

    /// <summary>The line with an ending, when the parser takes the number and the ending as one value.</summary>
    private static LineSyntax? Reads(string text, int numberStart)
    {
        LineSyntax read = LinePlace.Read(text);
        bool value = read.Marks.Length > 0 && read.Marks[^1] is { Kind: TokenKind.Value } last && last.Span.End == text.Length && last.Span.Start <= numberStart;
        return value && !read.Problems.Any(problem => problem.Span.End > numberStart) ? read : null;
    }

    /// <summary>False for what goes without saying, and is taken away by formatting: a rate a minute, a pressure in mmHg.</summary>
    private static bool IsKept(LineSyntax read, string ending) =>
        NoteFormatter.FormatLines(NoteSyntax.Parse(read.Text.TrimStart()), 0).First().Contains(ending, StringComparison.Ordinal);

    /// <summary>True for the unit that a plan of this note has for the medicine of the line.</summary>
    private static bool IsPlanned(ImmutableArray<MedicineOrder> plan, LineSyntax read, Unit unit) => read.Item is DoseEvent { Medicine.Text: var name }
        && plan.Any(medicine => medicine.Medicine == CourseKey.MedicineName(name) && medicine.Plan.Dose is Measure dose && ReferenceEquals(dose.Amounts[0].Unit, unit));

    private static int Order(LineWord word, Unit unit, bool us) =>
        word.Has(SlotKind.Medicine) ? (unit.Word is "mg" or "ml" ? 0 : unit.Quantity is Quantity.Dose or Quantity.DoseRate ? 1 : 2)
        : Usual(word).IndexOf(unit.Word) is >= 0 and var index ? index + (IsUs(unit.Word) == us ? 0 : OtherReaders) : RareUnit;

    /// <summary>The units that a bare number of a word lacks, the likeliest first.</summary>
    private static List<string> Usual(LineWord word) => [.. word.Takes.SelectMany(slot => SlotTable.Units(slot.Kind, word))];

    /// <summary>True for a unit that readers of US units know.</summary>
    public static bool IsUs(string unit) => UsUnits.Contains(unit);

    private static ReadValue? Value(LineSyntax read) => read.Item?.Value is { } value ? ReadValue.Of(value) : null;

    private static bool IsPlausible(LineSyntax read) => Value(read) is not { } value || read.Item is not { } item
        || ClinicalTables.Default.Plausible.GetValueOrDefault(item is AdultWeightFact ? "weight" : item.Word.Word) is not { } range || range.Unit != value.Unit
        || ((range.Low is null || value.Number >= range.Low) && (range.High is null || value.Number <= range.High));

    private static string? Shown(LineSyntax read, bool us) => Value(read) is { } value && !value.Unit.StartsWith('/') ? Wording.Show(value.Number, value.Unit, us) : PerMinute(read);

    private static string? PerMinute(LineSyntax read) => Value(read) is { Unit: "/min" } rate ? Wording.Show(rate.Number, rate.Unit) : null;

    /// <summary>The value in the unit of the other kind of reader, else the unit's name.</summary>
    private static string Detail(LineSyntax read, Unit unit, bool us)
    {
        bool own = IsUs(unit.Word) == us;
        return !own && Shown(read, us) is { } other ? $"= {other}" : unit.Synonyms.Where(synonym => synonym.All(char.IsAsciiLetter)).MaxBy(synonym => synonym.Length) ?? "";
    }
}
