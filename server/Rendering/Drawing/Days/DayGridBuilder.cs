using System.Collections.Immutable;
using HealthNotes.Analysis.Problems;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing.Days;

/// <summary>Home care of the current period, a row a day and a column a medicine; days that read the same share a row.</summary>
internal static class DayGridBuilder
{
    private const int MostDays = 31;
    private const int LeastDays = 2;

    /// <summary>More columns make a table that no phone and no sheet of paper holds.</summary>
    private const int MostMedicines = 4;

    /// <summary>What is written of three days in four has a column; the rest stands together, each with its name.</summary>
    private const int FilledLeast = 3;

    private const int FilledOf = 4;

    private static readonly string[] LinesWithWords = ["ate", "pee", "stool", "vomit"];

    /// <summary>The grid; null when fewer than two days tell of home care and no day has a glucose curve.</summary>
    public static DayGrid? Build(PageContext context, ImmutableArray<Problem> problems)
    {
        PetRecord record = context.Analysis.Record;
        HashSet<DateOnly> home = [.. context.Period.Current.Where(entry => entry.Entry.Head.Kind != "visit").Select(entry => entry.Day).OfType<DateOnly>()];
        CareDay[] all = [.. CareDay.Of(record).Where(day => !(day.Day < context.Period.From) && home.Contains(day.Day))];
        var told = new ToldDays(context, problems);
        CurveRow[] curves = [.. GlucoseCurves.Of(context)];
        if (all.Length < LeastDays)
        {
            return curves.Length == 0 ? null : new DayGrid(context.Analysis.Today, [], [], 0, [], curves);
        }

        CareDay[] shown = all[Math.Max(0, all.Length - MostDays)..];
        ILookup<(string Word, DateOnly Day), Noted> lines = LinesWithWords.SelectMany(word => record.All(word)).SelectMany(course => course.Lines).ToLookup(line => (line.Item!.Word.Word, line.Day));
        ILookup<bool, DoseColumn> logged = DoseColumn.Of(record, shown[0].Day, shown[^1].Day).ToLookup(medicine => shown.Any(day => medicine.HasLine(day.Day)));
        DoseColumn[] own = [.. logged[true].Take(MostMedicines)];
        DoseColumn[] others = [.. logged[true].Skip(MostMedicines)];
        (string Column, string Said)[][] care = [.. shown.Select(day => Cells(context, day, lines, told))];
        bool[] isColumn = [.. care[0].Select((_, column) => care.Count(day => day[column].Said.Length > 0) * FilledOf >= shown.Length * FilledLeast)];
        var rows = new List<DayRow>();
        List<(DateOnly From, DateOnly To)> without = shown.Length == all.Length && record.Period.Visit?.Head.Date?.Plus(1) is { } begin && begin < shown[0].Day ? [(begin, shown[0].Day.Plus(-1))] : [];
        for (int index = 0; index < shown.Length; index++)
        {
            DateOnly day = shown[index].Day;
            IEnumerable<string> rest = others.Select(medicine => (Column: medicine.Name, Said: medicine.On(day))).Concat(care[index].Where((_, column) => !isColumn[column]))
                .Where(cell => cell.Said.Length > 0 && !(cell.Column == PageWords.GlucoseColumn && told.GlucoseOn(day) is not null)).Select(cell => cell.Column == PageWords.MealsColumn ? cell.Said : $"{cell.Column.ToLowerInvariant()} {cell.Said}");
            string[] cells = [.. own.Select(medicine => medicine.On(day)), .. care[index].Where((_, column) => isColumn[column]).Select(cell => cell.Said), string.Join("; ", rest), told.ProblemsOn(day)];
            if (rows.Count > 0 && rows[^1].To is var last && day.DayNumber - last.DayNumber > 1)
            {
                without.Add((last.Plus(1), day.Plus(-1)));
            }

            if (rows.Count > 0 && rows[^1].To.Plus(1) == day && rows[^1].Cells.SequenceEqual(cells))
            {
                rows[^1] = rows[^1] with { To = day };
            }
            else
            {
                rows.Add(new DayRow(day, day, cells));
            }
        }

        bool hasOwn = own.Length > 0 || isColumn.Contains(true);
        bool hasRest = rows.Exists(row => row.Cells[^2].Length > 0);
        bool hasProblems = rows.Exists(row => row.Cells[^1].Length > 0);
        for (int row = 0; row < rows.Count; row++)
        {
            rows[row] = rows[row] with { Cells = [.. rows[row].Cells.Select((cell, column) => cell.Length > 0 || column == rows[row].Cells.Count - 1 ? cell : column < own.Length ? PageWords.NotPlanned : PageWords.NoneWritten)] };
        }

        return new DayGrid(
            context.Analysis.Today, [.. own.Select(medicine => PageWords.Capital(medicine.Name)), .. care[0].Where((_, column) => isColumn[column]).Select(cell => cell.Column), .. hasRest ? [hasOwn ? PageWords.Capital(string.Join(", ", others.Select(medicine => medicine.Name).Concat(care[0].Select((cell, column) => (cell.Column, column)).Where(cell => !isColumn[cell.column] && Array.Exists(care, day => day[cell.column].Said.Length > 0)).Select(cell => cell.Column.ToLowerInvariant())))) : PageWords.WrittenColumn] : Array.Empty<string>(), .. hasProblems ? [PageWords.ProblemColumn] : Array.Empty<string>()],
            [.. rows.Select(row => row with { Cells = [.. row.Cells.SkipLast(2), .. hasRest ? [row.Cells[^2]] : Array.Empty<string>(), .. hasProblems ? [row.Cells[^1]] : Array.Empty<string>()] })], all.Length - shown.Length, [.. logged[false].Select(medicine => (medicine.Name, record.Of(new CourseKey("gave", CourseKey.MedicineName(medicine.Name))).LastUpTo(shown[^1].Day)?.Day, medicine.Since))], curves)
        {
            WithoutNote = without,
        };
    }

    private static (string Column, string Said)[] Cells(PageContext context, CareDay day, ILookup<(string Word, DateOnly Day), Noted> lines, ToldDays told) =>
    [
        (PageWords.MealsColumn, Meals([.. lines[("ate", day.Day)].Where(line => line.Item is CareEvent)], told)),
        (PageWords.WaterColumn, day.WaterMl is { } water ? context.Units.Show(water, "mL") : ""),
        (PageWords.UrineColumn, Told(day.Pee, lines[("pee", day.Day)], told)),
        (PageWords.StoolColumn, Told(day.Stools, lines[("stool", day.Day)], told)),
        (PageWords.VomitColumn, Told(day.Vomit, lines[("vomit", day.Day)], told)),
        (PageWords.CoughColumn, day.Cough > 0 && !told.IsCounted("cough", day.Day) ? PageWords.TimesShort(day.Cough) : ""),
        (PageWords.SneezeColumn, day.Sneeze > 0 && !told.IsCounted("sneeze", day.Day) ? PageWords.TimesShort(day.Sneeze) : ""),
        (PageWords.SeizureColumn, day.Seizures > 0 && !told.IsCounted("seizure", day.Day) ? PageWords.TimesShort(day.Seizures) : ""),
        (PageWords.GlucoseColumn, day.GlucoseLow is { } low && day.GlucoseHigh is { } high ? (told.GlucoseOn(day.Day) is { } problem ? PageWords.ToldUnder(problem) : low == high ? context.Units.Show(low, "mmol/L") : context.Units.Show(low, high, "mmol/L")) : ""),
    ];

    /// <summary>Each meal by itself: a sum would make two meals half eaten look like one eaten whole.</summary>
    private static string Meals(Noted[] eaten, ToldDays told)
    {
        string other = string.Join(", ", eaten.Where(line => line.Item!.Value is not Portion).SelectMany(line => WordsOf(line, told)).Distinct());
        string[] all = [.. eaten.Where(line => line.Item!.Value is Portion).Select(line => string.Join(' ', WordsOf(line, told).Prepend(PageWords.PartEaten((Portion)line.Item!.Value!))))];
        return string.Join("; ", new[] { all.Length == 0 ? "" : PageWords.Meals(all), other.Length == 0 ? "" : PageWords.Eating(other) }.Where(text => text.Length > 0));
    }

    private static IEnumerable<string> WordsOf(Noted line, ToldDays told) => line.Item!.Words.Select(word => word.Word.Word.Replace('-', ' ')).Where(word => !told.IsTold(line, word));

    /// <summary>How often, and in which words: a day on which none came says so.</summary>
    private static string Told(int times, IEnumerable<Noted> lines, ToldDays told) => PageWords.WithWords(
        times > 0 && lines.Select(told.CountedUnder).FirstOrDefault(problem => problem is not null) is { } problem ? PageWords.ToldUnder(problem) : times > 0 ? PageWords.TimesShort(times) : lines.Any(line => line.Item is NotSeen) ? PageWords.NoneSeen : "",
        lines.Where(line => line.Item is CareEvent).SelectMany(line => WordsOf(line, told)).Distinct());
}
