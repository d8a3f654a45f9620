using System.Collections.Immutable;
using System.Globalization;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Analysis.Trends;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Data;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Problems;

/// <summary>What the clinic said of a problem: the sentence of a visit that asks to be phoned, and the conditions that it named. By <c>clinic-words.tsv</c>.</summary>
/// <param name="Day">The day of the visit.</param>
/// <param name="Sentence">The sentence as it was written.</param>
public sealed record ClinicWords(DateOnly Day, string Sentence)
{
    /// <summary>What a clinic said longer ago no longer holds without being said again (common practice, no source).</summary>
    private const int MostDays = 365;

    /// <summary>Two forms of a word begin with so many letters alike (common practice, no source).</summary>
    private const int StemLength = 4;

    private static readonly char[] Ends = ['.', '!', '?', '\n'];
    private static readonly char[] Marks = [' ', '.', '!', '?', '\n', ',', ';', ':', '(', ')', '"', '\'', '*', '_', '-', '/'];
    private static readonly string[] Phone = ["phone", "ring", "call", "telephone"];

    private static readonly Lazy<ImmutableDictionary<string, (string[] Said, string[] Known)>> Rows = new(() =>
        ClinicalData.Rows("clinic-words.tsv").ToImmutableDictionary(row => row["system"], row => (row.Several("said"), row.Several("known"))));

    /// <summary>A number of readings stands so many words before <c>in a row</c> at most (common practice, no source).</summary>
    private const int WordsBefore = 5;

    private static readonly string[] Numbers = ["", "one", "two", "three", "four", "five"];
    private static readonly string[] AboveWords = ["above", "over"];
    private static readonly string[] BelowWords = ["below", "under"];

    /// <summary>So many readings in a row past a value, where the sentence asks for that: <c>any three counts in a row above his usual</c>, <c>above 30 twice in a row</c>. Without a number the value is the end of the usual range.</summary>
    public (int InARow, bool Above, decimal? End)? InARow
    {
        get
        {
            string[] words = [.. Clauses(Sentence).SelectMany(clause => clause)];
            int row = Enumerable.Range(0, words.Length).FirstOrDefault(at => words.AsSpan()[at..].StartsWith(["in", "a", "row"]), -1);
            int count = row < 0 ? 0 : words[Math.Max(0, row - WordsBefore)..row].Select(NumberOf).LastOrDefault(number => number > 1);
            int past = Array.FindIndex(words, word => AboveWords.Contains(word) || BelowWords.Contains(word));
            decimal? end = past >= 0 && past + 1 < words.Length && decimal.TryParse(words[past + 1], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal written) ? written : null;
            return count < 2 || past < 0 || (end is null && !words.Contains("usual")) ? null : (count, AboveWords.Contains(words[past]), end);
        }
    }

    /// <summary>True where the sentence says that a limit no longer holds: <c>do not wait for 32</c>.</summary>
    public bool Replaces(decimal limit) => Clauses(Sentence).Any(clause => Array.FindIndex(clause, word => word is "not" or "longer" or "instead" || word.EndsWith("n't", StringComparison.Ordinal)) is >= 0 and var not
        && clause[not..].Any(word => decimal.TryParse(word, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal number) && number == limit));

    /// <summary>
    /// The clinic's limits for a vital that hold today, the latest of each side: those of the notes that its later words do not replace,
    /// and the value of so many readings in a row that these words ask about.
    /// </summary>
    public static IEnumerable<(decimal Limit, bool Above, DateOnly? Since, int InARow)> Limits(PetRecord record, Course course)
    {
        ClinicWords? said = Of(record, ProblemTopic.For(course.Key.Word).System);
        RowMet? row = course.Last?.Reading is { } last ? said?.RowFor(record, last) : null;
        (decimal Limit, bool Above, DateOnly? Since, int InARow)[] limits = [.. SettledUsual.Limits(record, course).Where(limit => said is null || !said.Replaces(limit.Limit) || limit.Since > said.Day)
            .Select(limit => (limit.Limit, limit.Above, limit.Since, limit.Limit == row?.End && limit.Above == row.Above ? row.InARow : 1))];
        return row is null || limits.Any(limit => limit.InARow > 1) ? limits : limits.Append((row.End, row.Above, row.Day, row.InARow));
    }

    /// <summary>What the sentence asks about in readings of a vital, with the day of the sentence; null where it names no value and none is usual.</summary>
    internal RowMet? RowFor(PetRecord record, NoteReading reading) => InARow is not ({ } wanted, { } above, var written) ? null
        : (written ?? (OwnLimits.UsualFor(record.Facts, reading) is { Fact.Range: var range } ? OwnLimits.Canonical(above ? range.High : range.Low, range.Unit) : null)) is { } end ? new RowMet(wanted, above, end, reading.Value.Unit, Day) : null;

    private static int NumberOf(string word) => word == "twice" ? 2 : Array.IndexOf(Numbers, word) is > 0 and var spelled ? spelled : int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number < Numbers.Length * 2 ? number : 0;

    /// <summary>The words between two commas, in small letters.</summary>
    private static IEnumerable<string[]> Clauses(string sentence) => sentence.ToLowerInvariant().Split([',', ';', ':', '(', ')'])
        .Select(clause => clause.Split([' ', '\n', '"', '*', '_'], StringSplitOptions.RemoveEmptyEntries).Select(word => word.Trim('.', '!', '?', '>')).ToArray());

    /// <inheritdoc cref="Of(PetRecord, string)"/>
    public static ClinicWords? Of(NoteAnalysis analysis, string system) => Of(analysis.Record, system);

    /// <summary>The latest sentence of a visit that asks to be phoned and is about the body system; null when there is none.</summary>
    public static ClinicWords? Of(PetRecord record, string system)
    {
        if (!Rows.Value.TryGetValue(system, out (string[] Said, string[] Known) row))
        {
            return null;
        }

        foreach (Noted visit in record.Of(CourseKey.Visits).Lines.Reverse().TakeWhile(visit => visit.Day >= record.Today.Plus(-MostDays)))
        {
            foreach (FreeTextBlock text in (record.Note.EntryAt(visit.Line)?.Texts ?? []).Reverse())
            {
                string[] about = [];
                string? last = null;
                foreach (string sentence in Sentences(text.Markdown))
                {
                    string[] words = WordsOf(sentence);

                    // a sentence that names nothing goes on with what the one before it is about
                    string[] systems = [.. Rows.Value.Where(one => words.Any(word => Starts(word, one.Value.Said))).Select(one => one.Key)];
                    about = systems.Length > 0 ? systems : about;
                    last = words.Any(Phone.Contains) && about.Contains(system) ? sentence : last;
                }

                if (last is not null)
                {
                    return new ClinicWords(visit.Day, last);
                }
            }
        }

        return null;
    }

    /// <summary>True where a text names something of the body system.</summary>
    public static bool IsAbout(string text, string system) => Rows.Value.TryGetValue(system, out (string[] Said, string[] Known) row) && WordsOf(text).Any(word => Starts(word, row.Said));

    /// <summary>
    /// What the clinic said of each problem: a sentence stands at one of those it is about, first where it names a sign that was seen
    /// (<c>weeps</c> a wound that was weeping).
    /// </summary>
    public static ImmutableDictionary<Problem, ClinicWords> Of(NoteAnalysis analysis, IEnumerable<Problem> problems) =>
        problems.Select(problem => (problem, words: Of(analysis, problem.Topic.System))).Where(one => one.words is not null)
            .GroupBy(one => one.words!).Select(same => (same.OrderByDescending(one => Names(same.Key.Sentence, one.problem)).First().problem, same.Key)).ToImmutableDictionary(one => one.problem, one => one.Key);

    /// <summary>The signs of a problem that the sentence names, each with its days; those of the visit itself do not count.</summary>
    internal IEnumerable<(string Word, DateOnly Day, bool IsNow)> Seen(Problem problem)
    {
        bool IsNamed(string word) => word.Length >= StemLength && WordsOf(Sentence).Any(said => Starts(said, [word[..StemLength]]));
        return problem.Parts.OfType<PlacePart>().SelectMany(place => place.Signs).Where(sign => IsNamed(sign.Word)).SelectMany(sign => sign.Runs.SelectMany(run => new[] { run.First, run.Last }).Select(day => (sign.Word, day, sign.IsNow)))
            .Concat(from sign in problem.Parts.OfType<SignPart>()
                    from word in sign.Words.Where(IsNamed)
                    from day in sign.Events.IsEmpty ? [sign.First, sign.Last] : sign.Events.Where(line => line.Item!.Words.Any(one => one.Word.Word.Replace('-', ' ') == word)).Select(line => line.Day)
                    select ($"{sign.Item.Word.Word} {word}", day, sign.Ended is null)).Where(seen => seen.Item2 > Day);
    }

    /// <summary>The level of a problem with a sign that the sentence names: a reason to phone while it is there, worth watching once it is not.</summary>
    internal FindingLevel LevelOf(Problem problem) => Seen(problem).Select(sign => sign.IsNow ? FindingLevel.Call : FindingLevel.Watch).DefaultIfEmpty(FindingLevel.Info).Max();

    private static bool Names(string sentence, Problem problem)
    {
        string[] signs = [.. problem.Parts.SelectMany(part => part switch { SignPart sign => sign.Words, PlacePart place => place.Signs.Select(sign => sign.Word), _ => [] }).Where(word => word.Length >= StemLength).Select(word => word[..StemLength])];
        return WordsOf(sentence).Any(word => Starts(word, signs));
    }

    /// <summary>The known conditions that bear on the body system, as written.</summary>
    public static IEnumerable<string> KnownAt(NoteAnalysis analysis, string system) => Rows.Value.TryGetValue(system, out (string[] Said, string[] Known) row)
        ? analysis.Note.Facts<TextFact>(analysis.Today).Where(fact => fact.Fact.Word.Word == "known" && WordsOf(fact.Fact.Text.Text).Any(word => Starts(word, row.Known))).Select(fact => fact.Fact.Text.Text).Distinct()
        : [];

    private static bool Starts(string word, string[] beginnings) => Array.Exists(beginnings, beginning => word.StartsWith(beginning, StringComparison.Ordinal));

    internal static string[] WordsOf(string text) => text.ToLowerInvariant().Split(Marks, StringSplitOptions.RemoveEmptyEntries);

    /// <summary>Sentences with their end; a point inside a number ends none.</summary>
    internal static IEnumerable<string> Sentences(string text)
    {
        int start = 0;
        for (int at = 0; at < text.Length; at++)
        {
            if (Ends.Contains(text[at]) && (at + 1 == text.Length || char.IsWhiteSpace(text[at + 1])))
            {
                yield return text[start..(at + 1)].Trim();
                start = at + 1;
            }
        }

        yield return text[start..].Trim();
    }
}
