using System.Globalization;
using System.Text.RegularExpressions;
using AngleSharp.Html.Dom;
using CsCheck;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Rendering;

/// <summary>Numbers of pages of random notes, each worked out a second, plain way from the lines that were drawn.</summary>
public partial class RandomPageTests
{
    private static readonly DateOnly First = new(2025, 12, 1);

    private static readonly Gen<(int Kilos, int Visit, int[] Steps)> Weights =
        Gen.Select(Gen.Int[30, 400], Gen.Int[2, 6], Gen.Int[-6, 4].Array[8, 12]);

    /// <summary>A weight that falls: the highest reliable value, the value at the visit, the last one, and the percentages.</summary>
    [Fact]
    public void The_loss_of_weight_is_what_the_weighings_say()
    {
        int losses = 0;
        Weights.ForAll(
        drawn =>
        {
            (decimal Weight, DateOnly Day)[] weights = [.. drawn.Steps.Select((_, index) => (Math.Round(drawn.Kilos / 10m * (1 + (drawn.Steps.Take(index + 1).Sum() / 100m)), 1), First.AddDays(30 * index)))];
            string note = "pet A\nspecies dog\nborn 2015\n" + string.Concat(weights.Select((weight, index) => $"{weight.Day:yyyy-MM-dd} {(index == drawn.Visit ? "visit" : "check")}\n  weight {weight.Weight.ToString(CultureInfo.InvariantCulture)}kg\n"));
            DateOnly today = weights[^1].Day.AddDays(2);
            string told = Page(note, today).Section("problems");
            if (Told().Match(told) is not { Success: true } match)
            {
                return;
            }

            losses++;

            decimal now = weights[^1].Weight;
            decimal top = weights.SkipLast(1).Where((weight, index) => weights.Where((other, at) => at != index && Math.Abs(at - index) <= 2).Any(other => Near(other.Weight, weight.Weight))).Max(weight => weight.Weight);
            Assert.Equal(top, Number(match.Groups["from"].Value));
            Assert.Equal(now, Number(match.Groups["now"].Value));
            Assert.Equal(Math.Round((now - top) * 100 / top, MidpointRounding.AwayFromZero), Number(match.Groups["percent"].Value));
            if (match.Groups["visit"].Success)
            {
                Assert.Equal(weights[drawn.Visit].Weight, Number(match.Groups["visit"].Value));
            }

            if (SinceVisit().Match(told) is { Success: true } since && weights[drawn.Visit].Weight is var then)
            {
                Assert.InRange(Number(since.Groups["percent"].Value) - ((now - then) * 100 / then), -0.51m, 0.51m);
            }
        },
        iter: 300);
        Assert.InRange(losses, 20, 300);
    }

    private static readonly Gen<int[]> Doses = Gen.Int[0, 3].Array[9, 16];

    /// <summary>A medicine once a day: given, missed, given twice, and days of which the log is silent.</summary>
    [Fact]
    public void The_doses_are_what_the_log_says() => Doses.ForAll(
        drawn =>
        {
            var note = new System.Text.StringBuilder("pet A\nspecies dog\nborn 2015\nmed ax 5mg every 24h from 2026-10-31\n2026-10-30 visit\n  weight 20kg\n");
            var day = new DateOnly(2026, 11, 1);
            int given = 0;
            List<DateOnly> missed = [];
            List<DateOnly> doubled = [];
            foreach (int dose in drawn)
            {
                note.Append($"{day:yyyy-MM-dd} log\n  07:30 walk 20min\n").Append(dose switch { 0 => "  07:00 missed ax\n", 3 => "  06:50 gave ax 5mg\n  08:10 gave ax 5mg\n", _ => "  07:00 gave ax 5mg\n" });
                given += dose switch { 0 => 0, 3 => 2, _ => 1 };
                (dose == 0 ? missed : dose == 3 ? doubled : []).Add(day);
                day = day.AddDays(1);
            }

            string told = Page(note.ToString(), day).Section("problems");
            if (missed.Count + doubled.Count == 0)
            {
                Assert.DoesNotContain("ax:", told, StringComparison.Ordinal);
                return;
            }

            Assert.True(given == 0 || told.Contains($"{given} {(given == 1 ? "dose" : "doses")} logged", StringComparison.Ordinal), told);
            Assert.Equal(doubled.Count, Regex.Count(told, "given twice on"));
            Assert.All(doubled, twice => Assert.Contains($"given twice on {twice:d MMM}, at 06:50 and 08:10", told, StringComparison.Ordinal));
            Assert.Equal(missed.Count > 0, told.Contains($"missed {(missed.Count > 0 ? $"{missed[0]:d MMM}" : "?")}", StringComparison.Ordinal));
            Assert.DoesNotContain("not logged", told, StringComparison.Ordinal);
        },
        iter: 150);

    private static readonly Gen<(bool IsCheck, string[] Lines)[]> Entries = Gen.Select(
        Gen.Bool,
        Gen.OneOf<string>(
            "gait LH lame", "gums grey", "gums pink", "vomit blood 1x", "seizure 1x", "eye L closed", "eye both clear", "temp 40.4C rectal", "temp 38.5C rectal", "ate none refused", "ate all", "stool blood 1x",
            "lump R-ribs 12mm", "wound LH-paw weeping", "wound LH-paw closed", "rr 20/30s asleep", "rr 9/30s asleep", "else ok", "weight 20kg", "weight 17kg", "pee none", "cough dry 2x", "skin red", "> ate rat poison").Array[1, 4],
        (isCheck, lines) => (isCheck, lines)).Array[1, 8];

    /// <summary>Whatever else is written, what is open and a reason to phone stands on the page at its level.</summary>
    [Fact]
    public void Every_open_reason_to_phone_is_on_the_page() => Entries.ForAll(
        drawn =>
        {
            string note = "pet A\nspecies dog\nborn 2015\ncall-if rr asleep >30\n2026-10-01 visit\n  weight 20kg\n"
                + string.Concat(drawn.Select((entry, index) => $"2026-11-{index + 1:00} {(entry.IsCheck ? "check" : "log")}\n" + string.Concat(entry.Lines.Where(line => entry.IsCheck || line != "else ok").Distinct().Select(line => $"  {line}\n"))));
            NoteAnalysis analysis = NoteAnalysis.Of(Note.Read(note), Pages.Today.AddDays(50));
            NoteFinding[] open = [.. analysis.CurrentFindings.Where(finding => finding.Level is FindingLevel.Call or FindingLevel.Urgent)];
            IHtmlDocument page = Pages.Document(note, Pages.Today.AddDays(50));
            foreach (NoteFinding finding in open)
            {
                string line = $"line {finding.Line + 1}, ";
                string level = finding.Level == FindingLevel.Urgent ? "urgent" : "call";
                Assert.Contains(page.QuerySelectorAll("ol.findings > li"), item =>
                    (item.ClassList.Contains(level) || item.ClassList.Contains("urgent"))
                    && (page.GetElementById(item.QuerySelectorAll("a")[^1].GetAttribute("href")![1..])!.ParentElement!.TextContent is var detail && (detail.Contains(line, StringComparison.Ordinal) || detail.Contains("earlier line", StringComparison.Ordinal))));
            }

            Assert.InRange(SixNotesTests.WordsBefore(page), 5, 60);
            Assert.Equal(open.Length == 0, page.QuerySelectorAll("ol.findings > li.call, ol.findings > li.urgent").Length == 0);
        },
        iter: 200);

    private static bool Near(decimal one, decimal other) => Math.Abs(one - other) <= 0.05m * other;

    private static decimal Number(string text) => decimal.Parse(text.Replace('−', '-'), CultureInfo.InvariantCulture);

    private static IHtmlDocument Page(string note, DateOnly today) => Pages.Document(note, today);

    [GeneratedRegex(@"Weight: (?<from>[\d.]+) \([^)]*\) → ((?<visit>[\d.]+) \(visit\) → )?(?<now>[\d.]+) kg \([^)]*\), (?<percent>−\d+) % in")]
    private static partial Regex Told();

    [GeneratedRegex(@"(?<percent>[−+][\d.]+) % since the visit")]
    private static partial Regex SinceVisit();
}
