using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Analysis.Problems;

/// <summary>Tells signs at one part, and what happened, as one thing over time.</summary>
public static class SignCourse
{
    /// <summary>Words that say how much of a sign there is.</summary>
    private static readonly string[] Degrees = ["worse", "better", "sudden", "severe", "mild"];

    /// <summary>What counts as one thing whatever words stand with it: a dry cough and a cough at night are coughs.</summary>
    private static readonly string[] OneThing = ["cough", "sneeze", "seizure"];

    /// <summary>The year before the period, in which the most of a day is looked for.</summary>
    private const int YearDays = 365;

    /// <summary>Words of one meaning, so that it began with the first of them.</summary>
    private static readonly string[][] Alike = [["more", "ravenous"], ["less", "refused", "left some", "picky"]];

    /// <summary>True for what counts as one thing whatever words stand with it.</summary>
    public static bool IsOneThing(Noted line) => OneThing.Contains(line.Item?.Word.Word);

    /// <summary>One part for each word and place of these findings.</summary>
    internal static IEnumerable<SignPart> Of(NoteAnalysis analysis, IReadOnlyList<(NoteFinding Finding, NoteItem Item)> signs)
    {
        DateOnly[] restOk = [.. analysis.Record.Entries.Where(entry => entry.Entry.Items.Any(item => item.Value is RestOk)).Select(entry => entry.Day).OfType<DateOnly>()];
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

            bool KnownSince(DateOnly first) => lines.All(line => line.finding.Level == FindingLevel.Info && IsKnown(analysis, line.finding, line.item, first));
            Noted? ended = analysis.EndOf(lines[0].finding);
            if (happens)
            {
                foreach (SignPart part in Happened(analysis, course, noted, words))
                {
                    yield return part with { IsKnown = KnownSince(part.First), Ended = ended };
                }

                continue;
            }

            // each sign has days of its own: those that share them stand together
            Noted[] looks = [.. CourseKey.Covering(lines[0].item).SelectMany(key => analysis.Record.Of(key).Lines).OrderBy(look => look.Day).ThenBy(look => look.Time).ThenBy(look => look.Line)];
            foreach (IGrouping<(DateOnly First, DateOnly Last), string> together in words.DefaultIfEmpty("").GroupBy(word => Run(analysis, looks, noted, word)).OrderByDescending(days => days.Key.Last))
            {
                (DateOnly first, DateOnly last) = together.Key;
                Noted[] with = [.. looks.Where(look => look.Day >= first && look.Day <= last && WordsOf(analysis, null, look.Item).Any(together.Contains))];
                Noted[] before = [.. looks.Where(look => look.Day < first && WordsOf(analysis, null, look.Item).Any(together.Contains))];
                DateOnly onset = with.Select(look => look.Onset).Append(first).Min();
                yield return new SignPart(lines[0].item, [.. together.Where(word => word.Length > 0)], onset, last, KnownSince(first), ended)
                {
                    Lines = [.. (with.Length > 0 ? with : noted).Select(look => look.Line)],
                    Before = [.. before],
                    BeforeTogether = [.. before.GroupBy(look => look.Day).Where(day => together.All(word => day.Any(look => WordsOf(analysis, null, look.Item).Contains(word)))).Select(day => day.Key)],
                    Looks = with.DistinctBy(look => look.Day).Count(),
                    Unnamed = restOk.Except(looks.Select(look => look.Day)).Count(day => day > first && day < last),
                };
            }
        }
    }

    /// <summary>What happened in the period, one part for the words that were written in the same lines; without words, the lines themselves.</summary>
    private static IEnumerable<SignPart> Happened(NoteAnalysis analysis, Course course, Noted[] noted, ImmutableArray<string> words)
    {
        Record.PetRecord record = analysis.Record;
        bool Has(Noted line, string word) => WordsOf(analysis, null, line.Item).Contains(word);
        if (OneThing.Contains(course.Key.Word))
        {
            Noted[] all = [.. course.Lines.Where(line => line.Item is CareEvent)];
            Noted[] now = [.. all.Where(record.IsCurrent)];
            now = now.Length == 0 ? noted : now;
            DateOnly from = now[0].Day;
            yield return new SignPart(now[^1].Item!, words, from, now[^1].Day, IsKnown: false, Ended: null)
            {
                Lines = [.. now.Select(line => line.Line)],
                Events = [.. now],
                Together = [.. now.Where(line => words.All(word => Has(line, word))).Select(line => line.Day).Distinct()],
                Before = [.. all.Where(line => line.Day <= from && !record.IsCurrent(line))],
                Most = MostInADay(now),
                MostBefore = MostInADay([.. all.Where(line => line.Day <= from && line.Day >= from.Plus(-YearDays) && !record.IsCurrent(line))]),
            };
            yield break;
        }

        foreach (IGrouping<string, (string Word, Noted[] Lines)> same in words.DefaultIfEmpty("").Select(word => (Word: word, Lines: course.Lines.Where(line => Has(line, word)).ToArray())).GroupBy(one => string.Join(' ', one.Lines.Select(line => line.Line))))
        {
            // a sign that is not there is in no line's words: the lines of the findings tell of it
            Noted[] events = [.. same.First().Lines.Where(record.IsCurrent)];
            events = events.Length == 0 ? noted : events;
            yield return new SignPart(events[^1].Item!, [.. same.Select(one => one.Word).Where(word => word.Length > 0)], events[0].Onset, events[^1].Day, IsKnown: false, Ended: null)
            {
                Lines = [.. events.Select(line => line.Line)],
                Events = [.. events],
                Together = [.. events.Select(line => line.Day).Distinct()],
                Before = [.. course.Lines.Where(line => line.Day <= events[0].Day && !record.IsCurrent(line) && same.Any(one => Has(line, one.Word) || (course.Key.Word == "ate" && Alike.Any(alike => alike.Contains(one.Word) && alike.Any(other => Has(line, other))))))],
            };
        }
    }

    /// <summary>The most in one day, the latest of equal ones; null where nothing was counted.</summary>
    private static (int Times, DateOnly Day)? MostInADay(Noted[] lines) => lines.GroupBy(line => line.Day).Select(day => ((int Times, DateOnly Day)?)(day.Sum(CareWords.Times), day.Key)).OrderBy(day => day!.Value.Times).ThenBy(day => day!.Value.Day).LastOrDefault();

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

    /// <summary>The last look of the period that had the word, and the first of those without a break before it.</summary>
    private static (DateOnly First, DateOnly Last) Run(NoteAnalysis analysis, Noted[] looks, Noted[] noted, string word)
    {
        int at = looks.Length - 1;
        while (at >= 0 && !(looks[at].Day >= noted[0].Day && Has(at)))
        {
            at--;
        }

        if (at < 0)
        {
            // only the finding's own line tells of it: a good sign that is not there
            return (noted[0].Day, noted[^1].Day);
        }

        int first = at;
        while (first > 0 && Has(first - 1))
        {
            first--;
        }

        return (looks[first].Day, looks[at].Day);

        bool Has(int index) => WordsOf(analysis, null, looks[index].Item).Contains(word);
    }

    /// <summary>True where the clinic saw it since it began, expects it or knows of it: the finding was made at a visit, or rests on a line of one, or on a fact that it gave.</summary>
    private static bool IsKnown(NoteAnalysis analysis, NoteFinding finding, NoteItem item, DateOnly since) =>
        item.Words.Any(word => word.Word.Word == Reason.VetKnows)
        || finding.Evidence.Any(line => (analysis.Note.EntryAt(line)?.Head is { Kind: "visit" } visit && !(visit.Date < since))
            || (line != finding.Line && analysis.Note.Syntax.Lines[line].Items.Any(fact => fact is ExpectFact || (fact.Word.Kind == WordKind.Fact && fact is not AcceptFact && Names(fact, item)))));

    /// <summary>True where a fact names the part itself or comes from the clinic: <c>known tartar on tooth 208</c>. A kidney disease does not name pale urine.</summary>
    private static bool Names(NoteItem fact, NoteItem item) => fact.Body.First<Attribution>() is not null
        || (fact is TextFact { Text.Text: var text } && item.Words.Select(word => word.Text).Append(item.Word.Word).Any(word => text.Contains(word, StringComparison.OrdinalIgnoreCase)));
}
