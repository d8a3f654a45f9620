using System.Collections.Immutable;
using System.Globalization;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Lumps;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Problems;

/// <summary>Puts the findings of the current period together, one problem a thing. Pure.</summary>
public static class ProblemList
{
    /// <summary>Rules that remind: they are told under what is due and what was not looked at, never as a problem.</summary>
    private static readonly string[] Reminders = ["facts-missing", "entry-date", "accept", "course-end", "not-looked-at", "lump-not-seen"];

    /// <summary>Words of measured values that are told beside the weight.</summary>
    private static readonly string[] BesideWeight = ["bcs", "mcs"];

    /// <summary>Rules of signs: their line itself shows what they found.</summary>
    private static readonly string[] SignRules = ["sign", "gum-colour", "days-in-a-row"];

    /// <summary>Rules of doses that <see cref="DosePart"/> tells of.</summary>
    private static readonly string[] DoseRules = ["dose-doubled", "dose-missed"];

    private const string Medicine = "medicine";

    /// <summary>The problems: by level, then how fast they change, then how recent they are; what has ended comes last. Problems at which nothing is open but what is known or noted are among them.</summary>
    public static ImmutableArray<Problem> Of(NoteAnalysis analysis)
    {
        var lives = LumpNumbering.Of(analysis.Record).ToDictionary(life => life.Number, life => life.Life);
        var numbers = lives.SelectMany(life => life.Value.Lines.Select(line => (line.Line, life.Key))).GroupBy(life => life.Line).ToDictionary(life => life.Key, life => life.Last().Key);
        List<(ProblemTopic Topic, string Detail, NoteFinding Finding, NoteItem? Item)> found = [];
        foreach (NoteFinding finding in analysis.Findings)
        {
            Entry? entry = analysis.Note.EntryAt(finding.Line);
            bool inPeriod = entry is null || analysis.Record.Period.Holds(entry);
            if (finding.Level != FindingLevel.Error && inPeriod && !(finding.Level == FindingLevel.Info && IsReminder(finding)))
            {
                NoteItem? item = entry is null ? null : Observations.At(Observations.In(entry, finding.Line), finding.Span);
                (ProblemTopic topic, string detail) = Place(finding, item, numbers);
                found.Add((topic, detail, finding, item));
            }
        }

        found.AddRange(InARow(analysis).Where(one => !found.Exists(other => other.Item is { } item && CourseOf(analysis, other.Finding, item)?.Key == one.Key)).Select(one => one.Found).ToArray());
        Problem[] problems = [.. found.GroupBy(one => (one.Topic.System, one.Detail)).Select(group => Make(analysis, lives, [.. group])).OfType<Problem>()];
        ImmutableDictionary<Problem, ClinicWords> said = ClinicWords.Of(analysis, problems);
        return [.. problems.Select(problem => Asked(analysis, problem, said.GetValueOrDefault(problem)))
            .OrderBy(problem => problem.IsEnded).ThenByDescending(problem => problem.Level).ThenByDescending(problem => problem.Asked.Any(asked => asked.IsOpen)).ThenByDescending(problem => problem.Parts is [PlacePart { IsNewToClinic: true }, ..]).ThenBy(IsBetter).ThenByDescending(problem => problem.Speed).ThenByDescending(problem => problem.Last)
            .ThenBy(problem => problem.Topic.Order).ThenBy(problem => problem.Detail, StringComparer.Ordinal)];
    }

    /// <summary>With what the clinic asked to be phoned about: a reason to phone until the notes say that somebody did, also where a later look has ended it.</summary>
    private static Problem Asked(NoteAnalysis analysis, Problem problem, ClinicWords? said)
    {
        Problem asked = problem with { Asked = [.. PhoneAsked.Of(analysis.Record, problem, said)] };
        bool isOpen = asked.Asked.Any(one => one.IsOpen);
        return asked.IsEnded && !isOpen ? asked
            : asked with { IsEnded = false, Level = new[] { asked.Level, isOpen || asked.Asked.Any(one => one.Value?.Rule is not null) ? FindingLevel.Call : FindingLevel.Info, said?.LevelOf(asked) ?? FindingLevel.Info }.Max() };
    }

    /// <summary>The vitals with so many readings in a row past a value, as the clinic asked to be phoned about: each makes a problem, also where no rule finds anything.</summary>
    private static IEnumerable<(CourseKey Key, (ProblemTopic Topic, string Detail, NoteFinding Finding, NoteItem? Item) Found)> InARow(NoteAnalysis analysis) =>
        from word in NoteVocabulary.Default.LineWords.Terms
        where word.Kind == WordKind.Vital
        let topic = ProblemTopic.For(word.Word)
        where ClinicWords.Of(analysis.Record, topic.System)?.InARow is not null
        from course in analysis.Record.All(word.Word).Select(course => SameVital.OnPage(course, analysis.Record.All)).DistinctBy(course => course.Key)
        where ValueCourse.InARow(analysis.Record, course, ClinicWords.Of(analysis.Record, topic.System)) is not null
        let line = course.Lines.Last(line => line.Reading is not null)
        select (course.Key, (topic, "", new NoteFinding("clinic-words", FindingLevel.Info, line.Line, line.Reading!.Span, "", "the notes themselves", [line.Line]), line.Item));

    /// <summary>True where the last look at a sign says that it is better.</summary>
    private static bool IsBetter(Problem problem) => problem.Parts.OfType<SignPart>().SelectMany(sign => sign.Words).ToArray() is var words && words.Contains("better") && !words.Contains("worse");

    private static bool IsReminder(NoteFinding finding) => Reminders.Contains(finding.Rule) || finding.Rule.EndsWith("-overdue", StringComparison.Ordinal);

    private static (ProblemTopic Topic, string Detail) Place(NoteFinding finding, NoteItem? item, Dictionary<int, int> numbers)
    {
        if (item is null)
        {
            return (ProblemTopic.For("other"), "");
        }

        var topic = ProblemTopic.For(item.Word.Word);
        if (finding.Topic == "dose" || topic.System == Medicine)
        {
            return (ProblemTopic.For("gave"), item is DoseEvent dose ? CourseKey.MedicineName(dose.Medicine.Text) : item.Name is { } name ? CourseKey.MedicineName(name.Text) : "");
        }

        return (topic, topic.Apart && numbers.TryGetValue(finding.Line, out int number) ? $"{number:0000}" : "");
    }

    private static Problem? Make(NoteAnalysis analysis, Dictionary<int, LumpLife> lives, (ProblemTopic Topic, string Detail, NoteFinding Finding, NoteItem? Item)[] group)
    {
        ImmutableArray<NoteFinding> findings = [.. group.Select(one => one.Finding).OrderBy(finding => finding.Line).ThenBy(finding => finding.Span.Start)];
        NoteFinding[] open = [.. findings.Where(finding => finding.Level > FindingLevel.Info && analysis.IsOpen(finding))];
        bool wasWorth = findings.Any(finding => finding.Level > FindingLevel.Info);
        FindingLevel level = open.Length == 0 ? FindingLevel.Info : open.Max(finding => finding.Level);
        ImmutableArray<ProblemPart> parts = [.. Parts(analysis, lives, group)];
        if (parts.IsEmpty)
        {
            return null;
        }

        // an ended problem that is still noted at its last look is noted, not ended
        bool still = findings.Any(finding => finding.Level == FindingLevel.Info && analysis.EndOf(finding) is null);
        return new Problem(
            group[0].Topic, group[0].Detail, level, wasWorth && open.Length == 0 && !still && !parts.Any(part => part is PlacePart { Life.Ended: null }),
            findings.Select(finding => analysis.Note.EntryAt(finding.Line)?.Head.Date).Max(), Speed(parts), parts, findings);
    }

    private static decimal Speed(ImmutableArray<ProblemPart> parts) => parts.Select(part => part switch
    {
        ValuePart { Found: true, PerMonth: { } rate } => Math.Abs(rate),
        ValuePart { Found: true, From: { } from, Now: var now } when from.Value.Number != 0 && now.Day > from.Day => Rate(from.Value.Number, now.Value.Number, from.Day, now.Day),
        PlacePart { Change: { Before.Typical: > 0 and var before, After.Typical: { } after, Days: > 0 } change } => Rate(before, after, change.Before.Day, change.After.Day),
        _ => 0,
    }).DefaultIfEmpty().Max();

    private static decimal Rate(decimal from, decimal to, DateOnly then, DateOnly now) => Math.Abs(to - from) * 100 / from * 30 / (now.DayNumber - then.DayNumber);

    private static IEnumerable<ProblemPart> Parts(NoteAnalysis analysis, Dictionary<int, LumpLife> lives, (ProblemTopic Topic, string Detail, NoteFinding Finding, NoteItem? Item)[] group)
    {
        var told = new HashSet<NoteFinding>();
        string? medicine = group[0].Topic.System == Medicine ? group[0].Detail : null;
        if (medicine is { Length: > 0 })
        {
            told.UnionWith(group.Select(one => one.Finding).Where(finding => DoseRules.Contains(finding.Rule)));
            if (told.Count > 0)
            {
                yield return DoseCourse.Of(analysis.Record, medicine);
            }
        }
        else if (int.TryParse(group[0].Detail, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && lives.TryGetValue(number, out LumpLife? life))
        {
            told.UnionWith(group.Select(one => one.Finding).Where(finding => finding.Rule is not DangerWordsRule.RuleName));
            yield return PlaceCourse.Of(analysis.Record, number, life);
        }
        else
        {
            foreach (ValuePart value in Values(analysis, group, told))
            {
                yield return value;
            }

            if (group[0].Topic.System == "eating" && MealsOf(analysis.Record) is { } meals)
            {
                yield return meals;
            }

            foreach (SignPart sign in SignCourse.Of(analysis, [.. group.Where(one => one.Item is not null && !told.Contains(one.Finding) && IsSign(one.Finding)).Select(one => (one.Finding, one.Item!))]))
            {
                yield return sign;
            }

            told.UnionWith(group.Where(one => one.Item is not null && IsSign(one.Finding)).Select(one => one.Finding));
        }

        foreach (NoteFinding finding in group.Select(one => one.Finding).Where(finding => !told.Contains(finding)).DistinctBy(finding => finding.Found))
        {
            if (finding.Level > FindingLevel.Info || medicine is null)
            {
                yield return new ToldPart(finding) { Lines = [finding.Line] };
            }
        }
    }

    /// <summary>The days up to the last on which something was left of a meal; null for fewer than two in a row.</summary>
    private static MealsPart? MealsOf(Record.PetRecord record)
    {
        (DateOnly Day, bool Left, int[] Lines)[] days = [.. record.All("ate").SelectMany(course => course.Lines).Where(line => record.IsCurrent(line) && line.Item?.Value is Portion).GroupBy(line => line.Day).OrderByDescending(day => day.Key)
            .Select(day => (day.Key, day.Any(line => line.Item!.Value is Portion portion && portion.Part < portion.Whole), day.Select(line => line.Line).ToArray())).TakeWhile(day => day.Item2)];
        return days.Length < 2 ? null : new MealsPart(days[^1].Day, days[0].Day, days.Length) { Lines = [.. days.SelectMany(day => day.Lines).Order()] };
    }

    private static bool IsSign(NoteFinding finding) => SignRules.Contains(finding.Rule) || finding.Rule.EndsWith("-often", StringComparison.Ordinal);

    /// <summary>The values that findings are about; beside a weight, condition and muscle too.</summary>
    private static IEnumerable<ValuePart> Values(NoteAnalysis analysis, (ProblemTopic Topic, string Detail, NoteFinding Finding, NoteItem? Item)[] group, HashSet<NoteFinding> told)
    {
        var seen = new HashSet<CourseKey>();
        NoteFinding[] all = [.. group.Select(one => one.Finding)];
        bool? loses = all.Any(finding => finding.Rule == "weight-loss") ? true : all.Any(finding => finding.Rule == "weight-gain") ? false : null;
        foreach ((_, _, NoteFinding finding, NoteItem? item) in group.OrderBy(one => ProblemTopic.PlaceOf(one.Item?.Word.Word ?? "")))
        {
            if (item is null || IsSign(finding) || finding.Rule == DangerWordsRule.RuleName || CourseOf(analysis, finding, item) is not { } course)
            {
                continue;
            }

            bool first = seen.Add(course.Key);
            if (ValueCourse.Of(analysis.Record, course, loses, found: true) is { } value)
            {
                told.Add(finding);
                if (first)
                {
                    yield return value;
                }
            }
        }

        if (seen.Contains(CourseKey.Weight))
        {
            foreach (Course beside in BesideWeight.SelectMany(word => analysis.Record.All(word)).Where(course => seen.Add(course.Key)))
            {
                if (ValueCourse.Of(analysis.Record, beside, loses, found: false) is { } value)
                {
                    yield return value;
                }
            }
        }
    }

    private static Course? CourseOf(NoteAnalysis analysis, NoteFinding finding, NoteItem item)
    {
        if (item.Word.Word == "water")
        {
            return analysis.Record.Of(new CourseKey("water", ""));
        }

        NoteReading? reading = item.Word.Kind != WordKind.Vital ? null
            : analysis.Record.Entries[analysis.Note.EntryIndexAt(finding.Line)].Readings.FirstOrDefault(own => own.Line == finding.Line && own.Span == item.Value?.Span);
        return reading is null || CourseKey.Of(reading) is not { } key ? null : SameVital.OnPage(analysis.Record.Of(key), analysis.Record.All);
    }
}
