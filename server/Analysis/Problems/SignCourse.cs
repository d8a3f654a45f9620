using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Analysis.Problems;

/// <summary>Tells signs at one part, and what happened, as one thing over time.</summary>
internal static class SignCourse
{
    /// <summary>Words that say how much of a sign there is.</summary>
    private static readonly string[] Degrees = ["worse", "better", "sudden", "severe", "mild"];

    /// <summary>How far back the start of a run is looked for.</summary>
    private const int RunDays = 365;

    /// <summary>One part for each word and place of these findings.</summary>
    public static IEnumerable<SignPart> Of(NoteAnalysis analysis, IReadOnlyList<(NoteFinding Finding, NoteItem Item)> signs)
    {
        foreach (IGrouping<(int Order, CourseKey Key), (NoteFinding Finding, NoteItem Item)> same in signs.GroupBy(sign => (Order: ProblemTopic.PlaceOf(sign.Item.Word.Word), Key: CourseKey.Of(sign.Item))).OrderBy(group => group.Key.Order).ThenBy(group => group.Key.Key.Detail, StringComparer.Ordinal))
        {
            (NoteFinding finding, NoteItem item)[] lines = [.. same.Reverse()];
            Course course = analysis.Record.Of(same.Key.Key);
            ImmutableArray<string> words = [.. lines.SelectMany(line => WordsOf(analysis, line.finding, line.item)).Distinct()];
            bool happens = lines[0].item.Word.Kind == WordKind.Care;
            Noted[] noted = [.. course.Lines.Where(line => lines.Any(one => one.finding.Line == line.Line))];
            if (noted.Length == 0)
            {
                continue;
            }

            Noted[] counted = happens ? [.. course.Lines.Where(line => !(line.Day < noted[0].Day) && WordsOf(analysis, null, line.Item).Any(words.Contains))] : [];
            yield return new SignPart(
                lines[0].item, words, happens ? noted[0].Day : Start(analysis, course, noted[0], words), noted[^1].Day,
                counted.Sum(CareWords.Times), counted.DistinctBy(line => line.Day).Count(),
                lines.All(line => line.finding.Level == FindingLevel.Info), analysis.EndOf(lines[0].finding));
        }
    }

    /// <summary>The words of a line that are worth watching or more, and how much of them there is.</summary>
    private static IEnumerable<string> WordsOf(NoteAnalysis analysis, NoteFinding? finding, NoteItem? item)
    {
        foreach (Described sign in item?.Words ?? [])
        {
            bool degree = sign.Word.Part == "any" && Degrees.Contains(sign.Word.Word);
            if (degree || sign.Word.For(analysis.Pet.Species, analysis.Pet.Male != false) is { Level: > Level.Expected } || sign.Span == finding?.Span)
            {
                yield return sign.Word.Word.Replace('-', ' ');
            }
        }

        foreach (Described sign in (item?.Absent ?? []).Where(sign => sign.Span == finding?.Span))
        {
            yield return (sign.Sense == Sense.Ended ? "no longer " : "not ") + sign.Word.Word.Replace('-', ' ');
        }
    }

    /// <summary>The first of the looks without a break that had one of the words.</summary>
    private static DateOnly Start(NoteAnalysis analysis, Course course, Noted first, ImmutableArray<string> words)
    {
        DateOnly start = first.Day;
        foreach (Noted look in course.Lines.Where(line => line.Day <= first.Day && line.Day.DayNumber >= first.Day.DayNumber - RunDays).Reverse())
        {
            if (look.Line != first.Line && !WordsOf(analysis, null, look.Item).Any(words.Contains))
            {
                return start;
            }

            start = look.Day;
        }

        return start;
    }
}
