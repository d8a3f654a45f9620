using System.Globalization;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Trials;

/// <summary>What a series came to.</summary>
/// <param name="Series">The series.</param>
/// <param name="Notes">How many notes were drawn.</param>
/// <param name="WatchPer100">False alarms per 100 entries, of any level from watch up.</param>
/// <param name="CallPer100">False calls per 100 entries.</param>
/// <param name="NotesWithCall">Percent of notes with a false call.</param>
/// <param name="Delays">For each note with a change, how long until it was found, in order; infinite where it never was.</param>
/// <param name="Rules">Which rules spoke, how often per 100 entries.</param>
public sealed record Outcome(Series Series, int Notes, double WatchPer100, double CallPer100, double NotesWithCall, IReadOnlyList<double> Delays, string Rules)
{
    /// <summary>The median delay.</summary>
    public double Median => Quantile(0.5);

    /// <summary>The delay within which nine of ten are found.</summary>
    public double Ninety => Quantile(0.9);

    /// <summary>What was asked and is not so; empty when all goals hold. A small sample may miss a rate by chance: it is given <paramref name="slack"/> standard errors.</summary>
    public IEnumerable<string> Missed(double slack = 0)
    {
        if (Series.Quiet is { } quiet)
        {
            double entries = EntryCount / 100.0;
            if (WatchPer100 > quiet.Watch + (slack * Math.Sqrt(quiet.Watch / entries)))
            {
                yield return $"watch {WatchPer100:0.00} > {quiet.Watch}";
            }

            // calls of one note come together (compound Poisson): as many as it has on average count as one
            double together = NotesWithCall == 0 ? 1 : CallPer100 * entries / (NotesWithCall * Notes / 100);
            if (CallPer100 > quiet.Call + (slack * Math.Sqrt(quiet.Call * together / entries)))
            {
                yield return $"call {CallPer100:0.00} > {quiet.Call}";
            }

            if (quiet.Notes is { } most && NotesWithCall > most + (slack * Math.Sqrt(most * (100 - most) / Notes)))
            {
                yield return $"notes {NotesWithCall:0.0}% > {most}%";
            }
        }

        if (Series.Found is { } found)
        {
            double share = Within(found.Median);
            double least = found.Asked;
            if (share < least - (slack * Math.Sqrt(least * (100 - least) / Notes)))
            {
                yield return $"{share:0}% < {least:0.#}% within {found.Median} {found.Unit}";
            }

            if (found.Ninety is { } ninety && Within(ninety) < 90 - (slack * Math.Sqrt(900.0 / Notes)))
            {
                yield return $"{Within(ninety):0}% within {ninety} {found.Unit}";
            }
        }
    }

    /// <summary>How many entries the rates rest on.</summary>
    public required int EntryCount { get; init; }

    /// <summary>Draws notes and reads each as an owner would have seen it: anew after every entry, on the day of that entry.</summary>
    public static Outcome Of(Series series, int notes, int seed)
    {
        int entries = 0;
        int watches = 0;
        int calls = 0;
        int notesWithCall = 0;
        var delays = new List<double>();
        var rules = new Dictionary<string, int>();
        for (int index = 0; index < notes; index++)
        {
            // each note has a seed of its own, so that the first of a thousand are those of a hundred
            TrialNote note = series.Make(new Draw(HashCode(seed, index)));
            int onset = note.Onset ?? note.Entries.Count;
            bool called = false;
            double delay = double.PositiveInfinity;
            int number = 0;
            foreach (IReadOnlyList<NoteFinding> news in NewsOfEachEntry(note))
            {
                if (number < onset)
                {
                    entries++;
                    watches += news.Count;
                    int loud = news.Count(finding => finding.Level >= FindingLevel.Call);
                    calls += loud;
                    called |= loud > 0;
                    foreach (NoteFinding finding in news)
                    {
                        string name = finding.Level >= FindingLevel.Call ? finding.Rule + "!" : finding.Rule;
                        rules[name] = rules.GetValueOrDefault(name) + 1;
                    }
                }
                else if (series.Found is { } found && news.Any(finding => !found.AtCall || finding.Level >= FindingLevel.Call))
                {
                    delay = found.UnitDays > 0 ? (note.Entries[number].Day.DayNumber - note.Entries[onset].Day.DayNumber) / found.UnitDays : number - onset + 1;
                    break;
                }

                number++;
            }

            notesWithCall += called ? 1 : 0;
            if (note.Onset is not null)
            {
                delays.Add(delay);
            }
        }

        delays.Sort();
        string spoke = string.Join(", ", rules.OrderByDescending(rule => rule.Value).Take(9).Select(rule => string.Create(CultureInfo.InvariantCulture, $"{rule.Key} {rule.Value * 100.0 / entries:0.00}")));
        return new Outcome(series, notes, watches * 100.0 / Math.Max(1, entries), calls * 100.0 / Math.Max(1, entries), notesWithCall * 100.0 / notes, delays, spoke) { EntryCount = entries };
    }

    /// <summary>What is new after each entry: a finding from watch up that was not there before it, or not as strong.</summary>
    private static IEnumerable<IReadOnlyList<NoteFinding>> NewsOfEachEntry(TrialNote note)
    {
        string text = note.Opening;
        var known = new HashSet<(int, string, FindingLevel)>();
        foreach ((DateOnly day, string entry) in note.Entries)
        {
            text += entry;
            NoteFinding[] found = [.. NoteAnalysis.Of(Note.Read(text), day).Findings.Where(finding => finding.Level >= FindingLevel.Watch)];
            yield return [.. found.Where(finding => !known.Contains((finding.Line, finding.Rule, finding.Level)))];
            known = [.. found.Select(finding => (finding.Line, finding.Rule, finding.Level))];
        }
    }

    /// <summary>Percent found within a delay.</summary>
    public double Within(double delay) => Delays.Count == 0 ? 0 : Delays.Count(one => one <= delay + 0.05) * 100.0 / Delays.Count;

    private double Quantile(double part) => Delays.Count == 0 ? double.NaN : Delays[Math.Min(Delays.Count - 1, (int)(part * Delays.Count))];

    /// <summary>A mix of two numbers that is the same in every run, unlike the runtime's.</summary>
    private static int HashCode(int seed, int index) => unchecked((seed * 486187739) + (index * 16777619));
}
