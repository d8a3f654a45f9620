using System.Collections.Immutable;
using HealthNotes.Analysis.Problems;
using HealthNotes.Record.Courses;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing.Days;

/// <summary>What the problems say of single days, so that the table of days does not repeat it, and which problems have lines on a day.</summary>
internal sealed class ToldDays
{
    private readonly HashSet<(int Line, string Word)> events = [];
    private readonly HashSet<DateOnly> checks;
    private readonly HashSet<(string Word, DateOnly Day)> counted = [];
    private readonly Dictionary<DateOnly, int> glucose = [];
    private readonly Dictionary<DateOnly, SortedSet<int>> problemsOn = [];
    private readonly Dictionary<int, int> countedLines = [];

    public ToldDays(PageContext context, ImmutableArray<Problem> problems)
    {
        checks = [.. context.Period.Current.Where(entry => entry.IsCheck).Select(entry => entry.Day).OfType<DateOnly>()];
        ILookup<DateOnly, Noted> readings = context.Analysis.Record.All("glucose").SelectMany(course => course.Lines).Where(line => line.Reading is not null).ToLookup(line => line.Day);
        for (int index = 0; index < problems.Length; index++)
        {
            foreach (ProblemPart part in problems[index].Parts)
            {
                foreach (int line in part.Lines.Where(context.IsCurrent))
                {
                    if (part is not ValuePart { Key.Word: "water" or "glucose" } && context.DayOf(line) is { } day && !checks.Contains(day))
                    {
                        (problemsOn.TryGetValue(day, out SortedSet<int>? on) ? on : problemsOn[day] = []).Add(index + 1);
                    }
                }

                foreach (Noted line in part is SignPart sign ? sign.Events : [])
                {
                    bool names = ProblemText.NamesDays((SignPart)part);
                    if (names)
                    {
                        events.UnionWith(((SignPart)part).Words.Select(word => (line.Line, word)));
                    }

                    if (names && ProblemText.IsCounted((SignPart)part))
                    {
                        counted.Add((line.Item!.Word.Word, line.Day));
                        countedLines[line.Line] = index + 1;
                    }
                }

                if (part is ValuePart { Key.Word: "glucose" } value)
                {
                    ILookup<DateOnly, DatedValue> named = new[] { value.From, value.AtVisit, value.Now, value.Clinic?.Worst }.OfType<DatedValue>().ToLookup(one => one.Day);
                    foreach (IGrouping<DateOnly, DatedValue> day in named.Where(day => day.Select(one => one.Time).Distinct().Count() >= readings[day.Key].Count()))
                    {
                        glucose.TryAdd(day.Key, index + 1);
                        (problemsOn.TryGetValue(day.Key, out SortedSet<int>? on) ? on : problemsOn[day.Key] = []).Add(index + 1);
                    }
                }
            }
        }
    }

    /// <summary>True for a word of a line that a problem says with its day.</summary>
    public bool IsTold(Noted line, string word) => events.Contains((line.Line, word));

    /// <summary>The problem that says the count of a line with its day; null where none does.</summary>
    public int? CountedUnder(Noted line) => countedLines.TryGetValue(line.Line, out int problem) ? problem : null;

    /// <summary>True for a day of which a problem says how often it happened.</summary>
    public bool IsCounted(string word, DateOnly day) => counted.Contains((word, day));

    /// <summary>The problem that says the glucose of a day; null where none does.</summary>
    public int? GlucoseOn(DateOnly day) => glucose.TryGetValue(day, out int problem) ? problem : null;

    /// <summary>The problems with lines on a day; a check has lines on most of them.</summary>
    public string ProblemsOn(DateOnly day) => checks.Contains(day) ? PageWords.CheckDay : problemsOn.TryGetValue(day, out SortedSet<int>? on) ? string.Join(", ", on) : "";
}
