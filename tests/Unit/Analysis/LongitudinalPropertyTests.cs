using System.Globalization;
using CsCheck;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Tests.Analysis.Cases;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Analysis;

/// <summary>What holds for the findings of any note that goes on over time.</summary>
public class LongitudinalPropertyTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    /// <summary>Lines in US units, each with the same in metric units to the last digit.</summary>
    private static readonly Gen<(string Us, string Metric)> Line = Gen.OneOf(
        Gen.Int[45, 70].Select(pounds => Both($"weight {pounds}lb", $"weight {Number(pounds * 0.45359237m)}kg")),
        Gen.Int[1, 16].Select(tenths => Both($"lump L-flank {Number(tenths / 10m)}in", $"lump L-flank {Number(tenths * 2.54m)}mm")),
        Gen.Int[1, 16].Select(tenths => Both($"lump R-gland2 {Number(tenths / 10m)}in", $"lump R-gland2 {Number(tenths * 2.54m)}mm")),
        Gen.Int[1, 12].Select(tenths => Both($"node L-jaw {Number(tenths / 10m)}in", $"node L-jaw {Number(tenths * 2.54m)}mm")),
        Gen.Int[0, 12].Select(steps => Both($"temp {Number(96.8m + (steps * 0.9m))}F", $"temp {Number(36m + (steps * 0.5m))}C")),
        Gen.Int[1, 6].Select(pints => Both($"water {pints * 16}floz", $"water {Number(pints * 473.176473m)}ml")));

    private static readonly Gen<string> Mixed = Gen.OneOf(
        Line.Select(line => line.Metric),
        Gen.Int[10, 45].Select(n => $"rr {n} asleep"),
        Gen.Int[50, 160].Select(n => $"hr {n}"),
        Gen.OneOf("gums pink", "gums pale", "ate none", "ate all", "vomit 2x", "vomit 1x", "stool loose", "stool firm", "seizure 1min", "cough 3x", "tooth 208 tartar",
            "gave benazepril 5mg", "missed benazepril", "stop benazepril", "ear L brown wax", "ear L clean", "else ok", "node L-jaw small", "lump R-flank 9mm ulcerated", "wound L-elbow 20mm",
            "bcs 5/9", "bcs 7/9", "recheck ear L in 2w", "due booster 2026-10-01", "done booster", "alert dull", "belly hard", "vomit retching"));

    private static readonly Gen<string> Opening = Gen.OneOf(
        "pet X\nspecies dog\nborn 2020-05-01\n", "pet X\nspecies cat\nborn 2013-05-01\nsex male neutered\n", "pet X\nspecies dog\nborn 2026-03-01\n",
        "pet X\nspecies dog\nborn 2018-05-01\nadult-weight 27kg\nmed benazepril 5mg every 24h from 2026-01-01\nhome-check every 30d\n",
        "pet X\nspecies cat\nborn 2019-05-01\nusual rr 16-24 asleep\nknown overweight, plan 1%/week\n");

    /// <summary>Entries on days of their own, the last on the day before today.</summary>
    private static Gen<string[]> Entries(Gen<string> line) =>
        Gen.Select(Gen.OneOf("check", "log", "visit"), line.Array[1, 4], Gen.Int[1, 40]).Array[2, 14].Select(entries =>
        {
            DateOnly day = Today;
            return entries.Reverse().Select(entry =>
            {
                (string kind, string[] lines, int before) = entry;
                day = day.AddDays(-before);
                return $"{day:yyyy-MM-dd} {kind}\n" + string.Concat(lines.Select(l => $"  {l}\n"));
            }).Reverse().ToArray();
        });

    private static (string Us, string Metric) Both(string us, string metric) => (us, metric);

    private static string Number(decimal value) => value.ToString("0.############", CultureInfo.InvariantCulture);

    private static IEnumerable<string> Told(string text)
    {
        NoteAnalysis analysis = MarkedFindings.Read(text);
        return analysis.Findings.Select(f => $"{analysis.Note.EntryAt(f.Line)?.Head.Date:yyyy-MM-dd} {analysis.Note.Syntax.Lines[f.Line].Text} {f.Rule} {f.Level} {f.Evidence.Length}").Order(StringComparer.Ordinal);
    }

    [Fact]
    public void The_order_of_entries_in_the_file_changes_no_finding() =>
        Gen.Select(Opening, Entries(Mixed).SelectMany(entries => Gen.Shuffle(entries).Select(shuffled => (entries, shuffled)))).ForAll(
            (opening, both) => Assert.Equal(Told(opening + string.Concat(both.entries)), Told(opening + string.Concat(both.shuffled))), iter: Effort.Times(400));

    [Fact]
    public void Nor_does_it_in_the_small_notes_of_the_table()
    {
        foreach (string name in CaseNote.Names)
        {
            CaseNote note = CaseNote.Load(name);
            string[] parts = System.Text.RegularExpressions.Regex.Split(note.Text, "(?m)^(?=[0-9]{4}-[0-9]{2}-[0-9]{2})");
            // entries of one day stay together: without times their order in the file is the order of the day
            string[] days = [.. parts.Skip(1).GroupBy(part => part[..10]).Select(day => string.Concat(day.Select(entry => entry.TrimEnd() + "\n")))];
            if (parts.Length < 3)
            {
                continue;
            }

            Assert.Equal(
                Told(note with { Text = parts[0] + string.Concat(days) }),
                Told(note with { Text = parts[0] + string.Concat(days.Reverse()) }));
        }

        static IEnumerable<string> Told(CaseNote note)
        {
            NoteAnalysis analysis = note.Analyse();
            return analysis.Findings.Select(f => $"{note.Name} {analysis.Note.EntryAt(f.Line)?.Head.Date:yyyy-MM-dd} {analysis.Note.Syntax.Lines[f.Line].Text} {f.Rule} {f.Level}").Order(StringComparer.Ordinal);
        }
    }

    [Fact]
    public void Writing_every_value_in_the_other_units_changes_no_level() =>
        Gen.Select(Opening, Entries(Line.Select(line => $"{line.Us}|{line.Metric}"))).ForAll((opening, entries) =>
        {
            string all = string.Concat(entries);
            string us = System.Text.RegularExpressions.Regex.Replace(all, "\\|.*", "");
            string metric = System.Text.RegularExpressions.Regex.Replace(all, "  .*\\|", "  ");
            IEnumerable<string> Levels(string text) => MarkedFindings.Read(opening + text).Findings.Select(f => $"{f.Line} {f.Rule} {f.Level}");
            Assert.Equal(Levels(us), Levels(metric));
        }, iter: Effort.Times(400));

    [Fact]
    public void An_entry_that_is_as_expected_raises_nothing() =>
        Gen.Select(Opening, Entries(Mixed)).ForAll((opening, entries) =>
        {
            string before = opening + string.Concat(entries);
            string after = before + "2026-11-25 12:00 log\n  alert bright\n  gums pink\n  stool firm\n  walk 30min\n";
            Dictionary<string, int> had = Loud(before);
            Assert.All(Loud(after), rule => Assert.True(rule.Value <= had.GetValueOrDefault(rule.Key), $"{rule.Key}\n{after}"));
        }, iter: Effort.Times(400));

    [Theory]
    [InlineData("hr 200", "hr", "", "40-260")]
    [InlineData("rr 60 asleep", "rr", "", "10-90 asleep")]
    [InlineData("temp 41.5C", "temp", "C", "36-42")]
    [InlineData("glucose 2mmol/L", "glucose", "mmol/L", "1-30")]
    public void What_is_far_outside_is_never_silent_whatever_the_notes_say(string line, string vital, string unit, string range)
    {
        string[] words = range.Split(' ');
        string usual = $"usual {vital} {words[0]}{unit}{(words.Length > 1 ? " " + words[1] : "")}\n";
        string history = string.Concat(Enumerable.Range(1, 12).Select(i => $"{Today.AddDays(-30 * i):yyyy-MM-dd} log\n  {line}\n"));
        Assert.Equal(FindingLevel.Urgent, MarkedFindings.LevelOfLastLine(
            $"pet X\nspecies dog\nborn 2020-05-01\n{usual}accept {vital}-range until 2027-01-01\naccept own-usual until 2027-01-01\n{history}2026-11-24 check\n  {line}"));
    }

    /// <summary>How many findings of each rule and level are worth watching or more.</summary>
    private static Dictionary<string, int> Loud(string text) =>
        MarkedFindings.Read(text).Findings.Where(f => f.Level >= FindingLevel.Watch).GroupBy(f => $"{f.Rule} {f.Level}").ToDictionary(g => g.Key, g => g.Count());
}
