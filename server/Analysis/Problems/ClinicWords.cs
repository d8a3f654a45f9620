using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Data;

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

    /// <summary>The latest sentence of a visit that asks to be phoned and is about the body system; null when there is none.</summary>
    public static ClinicWords? Of(NoteAnalysis analysis, string system)
    {
        if (!Rows.Value.TryGetValue(system, out (string[] Said, string[] Known) row))
        {
            return null;
        }

        foreach (Noted visit in analysis.Record.Of(CourseKey.Visits).Lines.Reverse().TakeWhile(visit => visit.Day >= analysis.Today.Plus(-MostDays)))
        {
            foreach (FreeTextBlock text in (analysis.Note.EntryAt(visit.Line)?.Texts ?? []).Reverse())
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

    /// <summary>
    /// What the clinic said of each problem: a sentence stands at one of those it is about, first where it names a sign that was seen
    /// (<c>weeps</c> a wound that was weeping).
    /// </summary>
    public static ImmutableDictionary<Problem, ClinicWords> Of(NoteAnalysis analysis, IEnumerable<Problem> problems) =>
        problems.Select(problem => (problem, words: Of(analysis, problem.Topic.System))).Where(one => one.words is not null)
            .GroupBy(one => one.words!).Select(same => (same.OrderByDescending(one => Names(same.Key.Sentence, one.problem)).First().problem, same.Key)).ToImmutableDictionary(one => one.problem, one => one.Key);

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

    private static string[] WordsOf(string text) => text.ToLowerInvariant().Split(Marks, StringSplitOptions.RemoveEmptyEntries);

    /// <summary>Sentences with their end; a point inside a number ends none.</summary>
    private static IEnumerable<string> Sentences(string text)
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
