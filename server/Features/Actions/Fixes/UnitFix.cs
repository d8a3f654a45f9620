using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>
/// A number without its unit, or with one that does not go with the line, gets each unit that fits. Units in which no
/// living pet has the value are left out: a temperature of 101 is in Fahrenheit. It is certain when one unit is left
/// of several; a weight near the last one makes its unit the preferred one.
/// </summary>
internal static class UnitFix
{
    /// <summary>How far from the last weight a weight is still held to be the same pet's, for preferring a unit; common practice, no source.</summary>
    private const decimal Near = 0.25m;

    public static IEnumerable<LineFix> Of(LineAt at, NoteFinding finding)
    {
        bool missing = finding.Rule == ProblemRules.MissingUnit;
        TextSpan number = missing ? finding.Span : Numbers.EndingAt(at.Text, finding.Span.Start) ?? default;
        if (at.Word is not { } word || number.Length == 0)
        {
            return [];
        }

        TextSpan replaced = TextSpan.Between(number.End, missing ? EndOfWrongUnit(at, number.End) : finding.Span.End);
        var written = TextSpan.Between(StartOf(at.Text, number), number.End);
        decimal[] values = [.. Numbers.In(at.Text, written).Select(span => Numbers.Value(span.In(at.Text))).OfType<decimal>()];
        bool overTime = at.Text.AsSpan(0, number.End).LastIndexOf('/') is var slash && slash >= 0 && at.Text.AsSpan(slash, number.End - slash).IndexOfAny(' ', '\t') < 0;
        bool schedule = AfterScheduleWord(at.Text, number.Start);
        if (word.Has(SlotKind.Medicine))
        {
            // how often a medicine is given is part of the order, too: nothing is offered for it
            return schedule ? [] : OfDose(at, finding, replaced);
        }

        LineWord subject = Subject(at, word);
        string what = word.Word == "adult-weight" ? "weight" : subject.Word;
        List<(string Unit, bool? Plausible)> units = [.. Ordered(at, UnitsOf(subject, overTime, schedule)).Select(unit => (unit, IsPlausible(what, values, unit, overTime)))];
        List<LineFix> fixes = [.. units.Where(unit => unit.Plausible != false)
            .Select(unit => new LineFix(replaced.Length == 0 ? "add-unit" : "other-unit", $"Write `{written.In(at.Text)}{unit.Unit}`", replaced, unit.Unit))];
        fixes = [.. at.Better(finding, fixes)];
        return fixes.Count == 1
            ? [fixes[0] with { Preferred = true, Certain = missing && replaced.Length == 0 && units.Count > 1 && units.Any(unit => unit.Plausible == true) }]
            : what == "weight" && values.Length == 1 ? ByLastWeight(at, values[0], fixes) : fixes;
    }

    /// <summary>The end of a unit that stands behind the number but does not go with the line (<c>weight 21 cm</c>); else the number's own end.</summary>
    private static int EndOfWrongUnit(LineAt at, int end)
    {
        Token next = at.Line.Marks.FirstOrDefault(mark => mark.Span.Start > end);
        return next.Kind == TokenKind.Unknown && NoteVocabulary.Default.Units.Find(next.Span.In(at.Text)) is not null && string.IsNullOrWhiteSpace(at.Text[end..next.Span.Start])
            ? next.Span.End
            : end;
    }

    private static IEnumerable<LineFix> OfDose(LineAt at, NoteFinding finding, TextSpan replaced)
    {
        string? medicine = at.Line.Marks.FirstOrDefault(mark => mark.Kind == TokenKind.Name) is { Span.Length: > 0 } name ? name.Span.In(at.Text).ToString() : null;
        return medicine is not null && OfPlan(at, medicine) is { } unit
            ? at.Better(finding, [new LineFix("add-unit", $"Write `{unit.Trim()}`, as in the plan for {medicine}", replaced, unit, Preferred: true)])
            : [];
    }

    /// <summary>What may stand behind the number, in the order it is offered.</summary>
    private static ImmutableArray<string> UnitsOf(LineWord word, bool overTime, bool inSchedule) => inSchedule ? ["d", "w", "mo", "h"]
        : overTime && word.Has(SlotKind.Rate) ? ["s", "min"]
        : word.Takes.Select(slot => SlotTable.Units(slot.Kind, word)).FirstOrDefault(units => units.Length > 0, []);

    /// <summary>The unit's row; null for the end of a scale.</summary>
    private static Unit? UnitOf(string written) => written[0] == '/' ? null : NoteVocabulary.Default.Units.Find(written.Trim());

    /// <summary>The unit of a medicine as the plan for it says; null when there is none, or it has two: a dose's unit is for who ordered it to say.</summary>
    private static string? OfPlan(LineAt at, string medicine)
    {
        string[] units = [.. at.Document.Record.Facts.Plans
            .Where(plan => CourseKey.MedicineName(plan.Fact.Medicine.Text) == CourseKey.MedicineName(medicine))
            .Select(plan => plan.Fact.Dose).OfType<Measure>()
            .Select(dose => dose.Amounts[0].Unit).Distinct()
            .Select(unit => unit.Quantity == Quantity.Dose ? " " + unit.Word : unit.Word)];
        return units.Length == 1 ? units[0] : null;
    }

    /// <summary>The vital that a <c>usual</c> or <c>call-if</c> line is about, else the line's own word.</summary>
    private static LineWord Subject(LineAt at, LineWord word) => word.Has(SlotKind.Vital)
        ? at.Line.Marks.Where(mark => mark.Kind == TokenKind.LineWord).Skip(1).Select(mark => NoteVocabulary.Default.LineWords.Find(mark.Span.In(at.Text))).FirstOrDefault() ?? word
        : word;

    /// <summary>Where the value starts that the number is the end of: a range, or a count and its time.</summary>
    private static int StartOf(string text, TextSpan number)
    {
        int start = number.Start;
        while (start > 0 && !char.IsWhiteSpace(text[start - 1]))
        {
            start--;
        }

        return start;
    }

    private static bool AfterScheduleWord(string text, int start)
    {
        ReadOnlySpan<char> before = text.AsSpan(0, start).TrimEnd();
        ReadOnlySpan<char> word = before[(before.LastIndexOfAny(' ', '\t') + 1)..];
        return word.Equals("every", StringComparison.OrdinalIgnoreCase) || word.Equals("for", StringComparison.OrdinalIgnoreCase) || word.Equals("in", StringComparison.OrdinalIgnoreCase);
    }

    private static IEnumerable<string> Ordered(LineAt at, IEnumerable<string> units) =>
        at.UsFirst ? units.OrderByDescending(unit => unit is "lb" or "F" or "in" or "cup" or "mg/dL" or "oz" or "mi") : units;

    /// <summary>Whether a living pet can have the values in this unit; null where the table has nothing to say.</summary>
    private static bool? IsPlausible(string what, decimal[] values, string unit, bool overTime)
    {
        if (values.Length == 0)
        {
            return null;
        }

        if (unit[0] == '/')
        {
            return values[^1] <= decimal.Parse(unit.AsSpan(1));
        }

        if (!ClinicalTables.Default.Plausible.TryGetValue(what, out NormalRange? range) || UnitOf(unit) is not { } row)
        {
            return null;
        }

        if (overTime)
        {
            return values is [var count, > 0 and var time] && IsIn(range, count * 60 / (time * row.Factor));
        }

        return row.Canonical != range.Unit ? null
            : values.All(value => IsIn(range, UnitConversion.ToCanonical(new Amount(value, row))));
    }

    private static bool IsIn(NormalRange range, decimal value) => (range.Low is null || value >= range.Low) && (range.High is null || value <= range.High);

    /// <summary>The unit in which the weight is near the pet's last one comes first, and is preferred when it is the only one.</summary>
    private static List<LineFix> ByLastWeight(LineAt at, decimal value, List<LineFix> fixes)
    {
        decimal? last = at.Day is { } day ? at.Document.Record.Pet.WeightOn(day)?.Value.Number : null;
        if ((last ?? at.Document.Record.Pet.AdultWeightKg) is not ({ } known and > 0))
        {
            return fixes;
        }

        List<LineFix> near = [.. fixes.Where(fix => UnitOf(fix.Text) is { } unit && Math.Abs(UnitConversion.ToCanonical(new Amount(value, unit)) - known) <= known * Near)];
        return near.Count == 1 ? [near[0] with { Preferred = true }, .. fixes.Where(fix => fix != near[0])] : fixes;
    }
}
