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

    private static readonly (string Line, string Word)[] Quotable =
    [
        ("ear L wax", "wax"), ("gait LH lame", "lame"), ("tooth 208 loose", "loose"), ("mouth bad-breath", "bad breath"), ("gums tacky", "tacky"), ("skin red", "red"), ("cough dry 2x", "dry"), ("stool soft 1x", "soft"),
        ("mood vocal", "vocal"), ("alert restless", "restless"), ("rr 20/30s asleep", "asleep"), ("temp 40C rectal", "Temperature"), ("lump R-ribs 12mm", "Lump 1"),
    ];

    private static readonly Gen<(int Line, bool Quoted)[][]> QuotedDays = Gen.Select(Gen.Int[0, Quotable.Length - 1], Gen.Bool, (line, quoted) => (line, quoted)).Array[1, 4].Array[2, 6];

    /// <summary>What the owner wrote below a line stands behind what that line says, with its day; it says nothing of the finding beside it.</summary>
    [Fact]
    public void A_quoted_remark_stands_behind_the_finding_of_its_line()
    {
        int found = 0;
        QuotedDays.Sample(
        drawn =>
        {
            var note = new System.Text.StringBuilder("pet A\nspecies dog\nborn 2015\n2026-10-01 visit\n  weight 20kg\n");
            Dictionary<string, (string Word, DateOnly Day)> quotes = [];
            for (int at = 0; at < drawn.Length; at++)
            {
                var day = new DateOnly(2026, 11, at + 1);
                note.Append($"{day:yyyy-MM-dd} check\n");
                foreach ((int line, bool quoted) in drawn[at].DistinctBy(one => one.Line))
                {
                    string words = $"Quote {quotes.Count} ends";
                    note.Append($"  {Quotable[line].Line}\n").Append(quoted ? $"    > {words}\n" : "");
                    if (quoted)
                    {
                        quotes.Add(words, (Quotable[line].Word, day));
                    }
                }
            }

            foreach (string item in Page(note.ToString(), new DateOnly(2026, 11, 20)).QuerySelectorAll("section.problems ol > li").Select(item => item.TextContent))
            {
                foreach (Match match in Quote().Matches(item))
                {
                    found++;
                    (string word, DateOnly day) = quotes[match.Groups["words"].Value];
                    string part = item[..match.Index].Split("; ")[^1];
                    Assert.Contains(word, part, StringComparison.Ordinal);
                    Assert.EndsWith($"{day:d MMM}", match.Groups["day"].Value, StringComparison.Ordinal);
                }

                Assert.Equal(Quote().Count(item), Quote().Matches(item).Select(match => match.Groups["words"].Value).Distinct().Count());
            }
        },
        iter: 200, threads: 1);
        Assert.InRange(found, 100, 5000);
    }

    private static readonly Gen<int[]> Looks = Gen.Int[0, 4].Array[3, 12];

    /// <summary>The day behind <c>since</c> is the first of looks that all have the sign; where a check between does not name the part, the looks are counted.</summary>
    [Fact]
    public void A_sign_is_there_since_the_first_of_looks_without_a_break() => Looks.Sample(
        drawn =>
        {
            // 0 not named, 1 the rest was ok, 2 not there, 3 and 4 there
            string[] lines = ["alert bright", "else ok", "ear L clean", "ear L wax", "ear L wax"];
            (DateOnly Day, int Look)[] checks = [.. drawn.Append(3).Select((look, at) => (First.AddDays(30 * at), look))];
            string note = "pet A\nspecies dog\nborn 2015\n" + string.Concat(checks.Select(check => $"{check.Day:yyyy-MM-dd} check\n  {lines[check.Look]}\n"));
            DateOnly last = checks[^1].Day;
            DateOnly since = checks.Where(check => check.Look >= 3).Reverse().TakeWhile(check => !checks.Any(other => other.Look == 2 && other.Day > check.Day)).Last().Day;
            int with = checks.Count(check => check.Look >= 3 && check.Day >= since);
            bool unnamed = checks.Any(check => check.Look == 1 && check.Day > since && check.Day < last);
            string On(DateOnly day) => day.ToString(day.Year == last.Year ? "d MMM" : "d MMM yyyy", CultureInfo.InvariantCulture);
            string[] earlier = [.. checks.Where(check => check.Look >= 3 && check.Day < since).Select(check => On(check.Day))];
            string before = earlier.Length == 0 ? "" : ", earlier " + (earlier.Length <= 3 ? string.Join(", ", earlier) : $"on {earlier.Length} days, {earlier[0]} to {earlier[^1]}");
            Assert.Contains("left ear: wax (" + (with > 1 && unnamed ? (with == 2 ? $"noted {On(since)} and {On(last)}" : $"noted {with} times since {On(since)}, last {On(last)}") : since == last ? On(last) : $"since {On(since)}, last {On(last)}") + before + ")", Page(note, last).Section("problems"), StringComparison.Ordinal);
        },
        iter: 200, threads: 1);

    private static readonly Gen<(int Coughs, int Breaths)[]> Counted = Gen.Select(Gen.Int[0, 3], Gen.Int[12, 19], (coughs, breaths) => (coughs, breaths)).Array[2, 10];

    /// <summary>What is counted since the visit takes in neither the visit nor what was before it; what was before it is named as such.</summary>
    [Fact]
    public void Counts_since_the_visit_are_what_was_written_after_it() => Gen.Select(Counted, Gen.Int[0, 4]).Sample(
        (drawn, visit) =>
        {
            visit = Math.Min(visit, drawn.Length - 2);
            drawn[^1] = (2, 18);
            var note = new System.Text.StringBuilder("pet A\nspecies dog\nborn 2015\ncall-if rr asleep >32\n");
            DateOnly start = new(2026, 11, 1);
            for (int at = 0; at < drawn.Length; at++)
            {
                note.Append($"{start.AddDays(at):yyyy-MM-dd} {(at == visit ? "visit" : "log")}\n  rr {drawn[at].Breaths}/30s asleep\n").Append(drawn[at].Coughs == 0 ? "" : $"  cough dry {drawn[at].Coughs}x\n");
            }

            IHtmlDocument page = Page(note.ToString(), start.AddDays(drawn.Length));
            string told = page.Section("problems") + page.Section("lines");
            (int Coughs, int Breaths)[] after = drawn[(visit + 1)..];
            int days = after.Count(day => day.Coughs > 0);
            string coughs = $"{after.Sum(day => day.Coughs)}\u00D7 on {(days == 1 ? "" : $"{days} days, last ")}{start.AddDays(drawn.Length - 1):d MMM}";
            Assert.Contains($"cough: dry ({coughs}", told, StringComparison.Ordinal);
            Assert.Equal(drawn.Take(visit + 1).Any(day => day.Coughs > 0), told.Contains("earlier any kind", StringComparison.Ordinal));
            int past = after.Count(day => day.Breaths > 16);
            int since = drawn.Length - drawn.Reverse().TakeWhile(day => day.Breaths > 16).Count();
            Assert.Contains(since <= visit ? $"at each reading since {start.AddDays(since):d MMM}" : past == 1 && after.Length == 1 ? "in the only reading" : past == after.Length && past > 1 ? past == 2 ? "in both readings" : $"in all {past} readings" : $"in {past} of {after.Length} reading", told, StringComparison.Ordinal);
        },
        iter: 200, threads: 1);

    private static readonly string[] WoundWords = ["red", "weeping", "swollen", "dry"];

    /// <summary>The days of a wound's word are the days of the lines that have it, one stretch for each run of them.</summary>
    [Fact]
    public void The_days_of_a_wounds_words_are_those_of_its_lines() => Gen.Bool.Array[4].Where(has => has.Contains(true)).Array[2, 9].Sample(
        drawn =>
        {
            DateOnly start = new(2026, 11, 2);
            string note = "pet A\nspecies dog\nborn 2015\n2026-11-01 visit\n  weight 20kg\n" + string.Concat(drawn.Select((has, at) => $"{start.AddDays(at):yyyy-MM-dd} log\n  wound LH-paw {string.Join(' ', WoundWords.Where((_, word) => has[word]))}\n"));
            IHtmlDocument page = Page(note, start.AddDays(drawn.Length));
            string told = page.Section("problems") + page.Section("body");
            for (int word = 0; word < WoundWords.Length; word++)
            {
                if (drawn[^1][word])
                {
                    continue;
                }

                List<string> runs = [];
                for (int at = 0; at < drawn.Length; at++)
                {
                    if (drawn[at][word] && (at == 0 || !drawn[at - 1][word]))
                    {
                        int end = at;
                        while (drawn[end + 1][word])
                        {
                            end++;
                        }

                        runs.Add(end == at ? $"{start.AddDays(at):d MMM}" : $"{start.AddDays(at).Day} to {start.AddDays(end):d MMM}");
                    }
                }

                Assert.True(runs.Count == 0 || told.Contains($"{WoundWords[word]} {string.Join(", ", runs)}", StringComparison.Ordinal), told);
            }
        },
        iter: 200, threads: 1);

    /// <summary>Each meal of a day stands by itself: two meals half eaten are not one eaten whole.</summary>
    [Fact]
    public void Every_meal_stands_in_its_day() => Gen.Int[0, 3].Array[1, 3].Array[2, 8].Sample(
        drawn =>
        {
            string[] parts = ["all", "3/4", "1/2", "none"];
            DateOnly start = new(2026, 11, 2);
            string note = "pet A\nspecies dog\nborn 2015\n" + string.Concat(drawn.Select((meals, at) => $"{start.AddDays(2 * at):yyyy-MM-dd} log\n" + string.Concat(meals.Select(meal => $"  ate {parts[meal]}\n"))));
            string[] rows = [.. Page(note, start.AddDays(20)).Rows("days").Select(row => string.Join(" | ", row.Split(" | ").Take(2)))];
            Assert.Equal(drawn.Length, rows.Length);
            for (int at = 0; at < drawn.Length; at++)
            {
                string eaten = drawn[at].Length > 1 && drawn[at].Distinct().Count() == 1 ? parts[drawn[at][0]] + (drawn[at][0] is 1 or 2 ? " each" : "") : string.Join(", ", drawn[at].Select(meal => parts[meal]));
                Assert.Equal($"{start.AddDays(2 * at):d MMM} | {drawn[at].Length} {(drawn[at].Length == 1 ? "meal" : "meals")}: {eaten}", rows[at]);
            }
        },
        iter: 100, threads: 1);

    private static bool Near(decimal one, decimal other) => Math.Abs(one - other) <= 0.05m * other;

    private static decimal Number(string text) => decimal.Parse(text.Replace('−', '-'), CultureInfo.InvariantCulture);

    private static IHtmlDocument Page(string note, DateOnly today) => Pages.Document(note, today);

    [GeneratedRegex(@"Weight: (?<from>[\d.]+) \([^)]*\) → ((?<visit>[\d.]+) \(visit\) → )?(?<now>[\d.]+) kg \([^)]*\), (?<percent>−\d+) % in")]
    private static partial Regex Told();

    [GeneratedRegex(@"(?<day>\d+ \w+): \u201C(?<words>Quote \d+ ends)\u201D")]
    private static partial Regex Quote();

    [GeneratedRegex(@"(?<percent>[−+][\d.]+) % since the visit")]
    private static partial Regex SinceVisit();
}
