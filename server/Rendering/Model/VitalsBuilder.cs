using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Text;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>The vitals of the current period beside their ranges.</summary>
internal static class VitalsBuilder
{
    public static VitalsTable Build(PageContext context)
    {
        Dictionary<(int, TextSpan), NoteReading> readings = context.Analysis.Record.Readings.Where(r => context.IsCurrent(r.Line)).ToDictionary(r => (r.Line, r.Span));
        List<DatedFact<UsualFact>> usual = [.. context.Analysis.Note.Facts<UsualFact>()];
        int leftOut = 0;
        List<VitalRow> rows = [];
        List<(string Vital, string Source)> sources = [];
        foreach (IGrouping<int, CurrentItem> vital in context.Items.Where(item => item.Item is Reading).GroupBy(item => item.Item.Word.Order).OrderBy(group => group.Key))
        {
            Shown<CurrentItem> shown = Shown<CurrentItem>.Last([.. vital], PageLimits.ReadingsOfOneVital);
            leftOut += shown.LeftOut;
            foreach (CurrentItem item in shown.Items)
            {
                NoteReading? reading = readings.GetValueOrDefault((item.Line, ((Reading)item.Item).Value.Span));
                NormalRange? normal = reading is null ? null : context.Analysis.Record.NormalFor(reading);
                rows.Add(Row(context, item, reading, normal, usual));
                if (normal is not null)
                {
                    sources.Add((Wording.NameOf(item.Item.Word.Word), normal.Source));
                }
            }
        }

        return new VitalsTable(
            new Shown<VitalRow>(rows, leftOut),
            [.. sources.Distinct().GroupBy(s => s.Vital, s => s.Source).Select(group => new PetFact(group.Key, [.. group]))]);
    }

    private static VitalRow Row(PageContext context, CurrentItem item, NoteReading? reading, NormalRange? normal, List<DatedFact<UsualFact>> usual)
    {
        var vital = (Reading)item.Item;
        FindingLevel? level = context.LevelOf(item);
        string[] taken =
        [
            vital.State?.Word ?? "", vital.Place?.Word ?? "", SiteWords.Of(vital.Site), ExaminationBuilder.Seen(context, item),
            reading is { Comparable: null } ? PageWords.NotCompared : "",
        ];
        string written = vital.Value.Span.In(context.Analysis.Note.Syntax.Lines[item.Line].Text).ToString();
        return new VitalRow(
            item.Entry.Day, item.Time, context.Period.IsCheck(item.Entry), Wording.NameOf(vital.Word.Word), NoteText.Field(written),
            reading is not null ? context.Units.Show(reading.Value) : vital.Value is Pressure pressure ? PageWords.Pressure(ValuePrinter.Print(pressure)) : "", string.Join(", ", taken.Where(word => word.Length > 0)),
            normal is null || reading is null ? "" : $"{context.Units.Show(normal)} ({Whose(context, reading, normal)})",
            reading is null ? "" : Usual(context, reading, usual), level, level is null ? Judge(context, item.Line, reading, normal) : Verdict.None);
    }

    /// <summary>The rules have spoken where there is a finding; where there is none, only what was really compared is called expected.</summary>
    private static Verdict Judge(PageContext context, int line, NoteReading? reading, NormalRange? normal)
    {
        if (context.HasProblem(line))
        {
            return Verdict.NotUnderstood;
        }

        if (normal is null || reading is not { Value.Bound: Bound.Exact or Bound.About })
        {
            return Verdict.None;
        }

        decimal number = reading.Value.OnScaleOfNine().Number;
        return (normal.Low is null || number >= normal.Low) && (normal.High is null || number <= normal.High) ? Verdict.AsExpected : Verdict.AsUsual;
    }

    /// <summary>Whose range it is: only what the row of the table is picky about.</summary>
    private static string Whose(PageContext context, NoteReading reading, NormalRange normal)
    {
        PetProfile pet = context.Analysis.Pet;
        string stage = normal.For.Stages is ["any"] || reading.Day is not { } day ? "" : pet.StageOn(day)?.Name ?? PageWords.Grown;
        string animal = stage.Contains("puppy", StringComparison.Ordinal) || stage.Contains("kitten", StringComparison.Ordinal) ? "" : PageWords.NameOf(pet.Species).ToLowerInvariant();
        string[] whose =
        [
            Either(normal.For.Sizes), stage, animal,
        ];
        string state = normal.For.States is ["any"] ? "" : PageWords.StateOfRange(Either(normal.For.States));
        return string.Join(' ', whose.Where(word => word.Length > 0)) + (state.Length == 0 ? "" : ", " + state);
    }

    private static string Either(string[] cell) => cell is ["any"] ? "" : string.Join(PageWords.Or, cell);

    /// <summary>The latest usual range written for this vital that fits the reading's state.</summary>
    private static string Usual(PageContext context, NoteReading reading, List<DatedFact<UsualFact>> usual)
    {
        UsualFact? fact = usual.LastOrDefault(u => u.Fact.Vital.Word == reading.What && reading.Comparable is not null
            && (u.Day is null || reading.Day is null || u.Day <= reading.Day)
            && (u.Fact.State is null || u.Fact.State.Comparable == reading.Comparable)
            && (u.Fact.Place is null || u.Fact.Place.Word == reading.Site))?.Fact;
        if (fact is null)
        {
            return "";
        }

        string[] words = [ValuePrinter.Print(fact.Range), fact.State?.Word ?? "", fact.Per is { } per ? PageWords.Per(NoteText.Field(per.Who), per.When?.ToString()) : ""];
        return string.Join(' ', words.Where(word => word.Length > 0));
    }
}
