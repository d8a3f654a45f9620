using System.Globalization;
using System.Text.RegularExpressions;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Analysis.Cases;

/// <summary>A small note with what a careful technician would want said of it, written in its first comment lines.</summary>
/// <param name="Name">The file's name without its ending.</param>
/// <param name="Text">The whole file.</param>
/// <param name="Today">The day it is read on.</param>
/// <param name="Wanted">Findings that must be there, one each.</param>
/// <param name="May">Findings that may be there, any number.</param>
/// <param name="Quiet">Rules that must say nothing at all, not even something to know.</param>
/// <param name="IsAsWritten">True when lines that are not understood stay so: somebody wrote them who had not seen the program.</param>
/// <param name="IsSilence">True when nothing of level watch or more is wanted.</param>
internal sealed partial record CaseNote(
    string Name,
    string Text,
    DateOnly Today,
    IReadOnlyList<CaseExpectation> Wanted,
    IReadOnlyList<CaseExpectation> May,
    IReadOnlyList<string> Quiet,
    bool IsAsWritten,
    bool IsSilence)
{
    private const string Folder = "tests/Unit/Analysis/Cases";
    private static readonly DateOnly DefaultToday = new(2026, 11, 25);

    /// <summary>The names of all cases, in order.</summary>
    public static IEnumerable<string> Names =>
        Directory.EnumerateFiles(Repository.PathOf(Folder), "*.hnote").Select(path => Path.GetFileNameWithoutExtension(path)).Order(StringComparer.Ordinal);

    /// <summary>The cases that are known to be judged wrongly still, each with its reason: one a line, <c>NAME reason</c>.</summary>
    public static IReadOnlySet<string> NotYet { get; } =
        File.ReadLines(Repository.PathOf($"{Folder}/not-yet.txt")).Where(line => line.Length > 0 && line[0] != '#').Select(line => line.Split(' ')[0]).ToHashSet();

    public static CaseNote Load(string name)
    {
        string text = File.ReadAllText(Repository.PathOf($"{Folder}/{name}.hnote"));
        List<(string Key, string Value)> said = [.. text.Split('\n')
            .TakeWhile(line => line.StartsWith('#'))
            .Skip(1)
            .Select(line => Line().Match(line) is { Success: true } match
                ? (match.Groups["key"].Value, match.Groups["rest"].Value)
                : throw new FormatException($"{name}: {line}"))];
        IEnumerable<string> Of(string key) => said.Where(line => line.Key == key).Select(line => line.Value);
        return new CaseNote(
            name,
            text,
            Of("today").Select(Date).DefaultIfEmpty(DefaultToday).Single(),
            [.. Of("wanted").Select(CaseExpectation.Parse)],
            [.. Of("may").Select(CaseExpectation.Parse)],
            [.. Of("quiet")],
            Of("as-written").Any(),
            Of("silence").Any());
    }

    public static DateOnly Date(string text) => DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    public NoteAnalysis Analyse() => NoteAnalysis.Of(Note.Read(Text), Today);

    /// <summary>What is wanted and missing, and what is reported and not wanted; empty when the technician is content.</summary>
    public IEnumerable<string> Complaints()
    {
        NoteAnalysis analysis = Analyse();
        List<NoteFinding> left = [.. analysis.Findings];

        // The expectation that the fewest findings can meet chooses first, and takes the weakest that will do.
        foreach (CaseExpectation wanted in Wanted.OrderBy(w => left.Count(f => w.IsMetBy(f, DateOf(f)))))
        {
            NoteFinding? met = left.Where(f => wanted.IsMetBy(f, DateOf(f))).OrderBy(f => f.Level).FirstOrDefault();
            if (met is null)
            {
                yield return $"miss: {wanted.Text}";
            }
            else
            {
                left.Remove(met);
            }
        }

        foreach (NoteFinding finding in left)
        {
            bool loud = finding.Level >= FindingLevel.Watch && !(IsAsWritten && finding.Level == FindingLevel.Error) && !May.Any(may => may.IsMetBy(finding, DateOf(finding)));
            if (loud || Quiet.Contains(finding.Rule))
            {
                yield return $"false alarm: {finding.Rule} {finding.Level} in line {finding.Line + 1}: {finding.Message}";
            }
        }

        DateOnly? DateOf(NoteFinding finding) => analysis.Note.EntryAt(finding.Line)?.Head.Date;
    }

    [GeneratedRegex("^# (?<key>wanted|may|quiet|silence|as-written|today): (?<rest>.+)$")]
    private static partial Regex Line();
}
