using System.Text.RegularExpressions;
using AngleSharp.Html.Dom;
using CsCheck;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Rendering;

/// <summary>Above the appendix a value of a day stands in one place.</summary>
public partial class ToldOnceTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    /// <summary>What may stand twice, and why.</summary>
    private static readonly Dictionary<string, string> Exceptions = new()
    {
        ["weight"] = "the weight of now stands beside the name: doses are worked out from it",
    };

    /// <summary>A title or a column, and what it is about.</summary>
    private static readonly (string Start, string Topic)[] Topics =
    [
        ("Blood glucose", "glucose"), ("Glucose", "glucose"), ("Drinking", "water"), ("Water", "water"), ("Pulse", "pulse"), ("Breathing", "breathing"), ("Weight", "weight"), ("Temperature", "temperature"), ("Body condition", "condition"),
    ];

    public static TheoryData<string> Notes => [.. Directory.EnumerateFiles(Repository.PathOf("samples"), "*.hnote").Concat(Directory.EnumerateFiles(Repository.PathOf("tests/Unit/Rendering/Six"), "*.hnote")).Order(StringComparer.Ordinal).Select(file => Path.GetRelativePath(Repository.PathOf("."), file))];

    [Theory]
    [MemberData(nameof(Notes))]
    public void A_value_of_a_day_stands_in_one_place(string file) => Check(Pages.Document(File.ReadAllText(Repository.PathOf(file)), Today));

    [Fact]
    public void Each_kind_of_place_is_read()
    {
        string[] told = [.. Told(Pages.Document("pet A\nspecies cat\nborn 2015\n2026-10-01 visit\n  weight 4kg\n  rr 20 asleep\n2026-11-01 log\n  vomit bile 1x\n  glucose 9mmol/L\n  stool firm 2x\n2026-11-02 log\n  vomit food 2x\n  stool firm 1x\n2026-11-03 check\n  rr 36 asleep\n  lump chest 10mm\n", Today)).Select(one => $"{one.Topic} {one.Value} {one.Day}")];
        Assert.Equal(["breathing 36 3 Nov", "glucose 9 1 Nov", "lump 1 10 3 Nov", "stool 1 2 Nov", "stool 2 1 Nov", "vomit 1 1 Nov", "vomit 2 2 Nov", "weight 4 1 Oct"], told.Order(StringComparer.Ordinal));
    }

    private static readonly Gen<(bool IsCheck, string[] Lines)[]> Entries = Gen.Select(
        Gen.Bool,
        Gen.OneOf<string>(
            "gait LH lame", "gums grey", "vomit blood 1x", "vomit bile 2x", "seizure 1x", "temp 40.4C rectal", "temp 38.5C rectal", "ate none refused", "ate all", "ate 1/2 hand-fed", "stool blood 1x", "stool firm 1x", "pee pale 6x", "pee 3x",
            "lump R-ribs 12mm", "lump R-ribs 20mm", "wound LH-paw 30mm weeping", "rr 20/30s asleep", "rr 9/30s asleep", "hr 20/15s", "weight 20kg", "weight 17kg", "water 2400ml", "water 900ml", "cough dry 2x", "glucose 3mmol/L", "07:00 glucose 9mmol/L before-food", "13:00 glucose 5mmol/L").Array[1, 5],
        (isCheck, lines) => (isCheck, lines)).Array[2, 9];

    [Fact]
    public void A_value_of_a_day_stands_in_one_place_on_random_pages() => Entries.ForAll(
        drawn => Check(Pages.Document(
            "pet A\nspecies dog\nborn 2015\ncall-if rr asleep >30\ncall-if glucose <4mmol/L\n2026-10-01 visit\n  weight 20kg\n  rr 9/30s asleep\n"
            + string.Concat(drawn.Select((entry, index) => $"2026-11-{index + 1:00} {(entry.IsCheck ? "check" : "log")}\n" + string.Concat(entry.Lines.Distinct().Select(line => $"  {line}\n")))), Today)),
        iter: 150);

    private static void Check(IHtmlDocument page)
    {
        foreach (IGrouping<(string Topic, string Value, string Day), string> same in Told(page).GroupBy(one => (one.Topic, one.Value, one.Day), one => one.Place))
        {
            Assert.True(same.Count() == 1 || Exceptions.ContainsKey(same.Key.Topic), $"{same.Key} stands in {string.Join(" and ", same)}");
        }
    }

    /// <summary>The values that stand above the appendix, each with what it is of, its day and its place; twice in one place counts once.</summary>
    private static IEnumerable<(string Topic, string Value, string Day, string Place)> Told(IHtmlDocument page)
    {
        IEnumerable<(string Topic, string Value, string Day, string Place)> items = page.QuerySelectorAll("section.problems li, section.measured li, section.body li").Where(item => item.QuerySelectorAll("strong").Any(strong => !strong.ClassList.Contains("level")))
            .SelectMany(item => ValuesOf(TopicOf(item.QuerySelectorAll("strong").Last(strong => !strong.ClassList.Contains("level")).TextContent), item.TextContent, item.Closest("section")!.ClassName!));
        IEnumerable<(string Topic, string Value, string Day, string Place)> captions = page.QuerySelectorAll("section.charts figcaption").SelectMany(caption => ValuesOf(TopicOf(caption.QuerySelector("strong")!.TextContent), caption.TextContent, "charts"));
        string[] columns = [.. page.QuerySelectorAll("section.days table:first-of-type thead th").Select(column => column.TextContent)];
        IEnumerable<(string Topic, string Value, string Day, string Place)> cells = page.QuerySelectorAll("section.days table:first-of-type tbody tr").SelectMany(row => row.Children.Skip(1).SelectMany((cell, at) => cell.TextContent.Split("; ").SelectMany(said => OfCell(columns[at + 1], said, row.Children[0].TextContent))));
        return items.Concat(captions).Concat(cells).Concat(ValuesOf("weight", page.QuerySelector(".intro")!.TextContent, "head")).Distinct();
    }

    private static IEnumerable<(string Topic, string Value, string Day, string Place)> ValuesOf(string topic, string text, string place)
    {
        foreach (Match match in Dated().Matches(text))
        {
            yield return (topic, match.Groups["value"].Value, match.Groups["day"].Value, place);
        }

        // a further sign of one part stands without its name
        string word = "";
        foreach (string part in text.Split("; "))
        {
            word = Named().Match(part) is { Success: true } named ? named.Groups["word"].Value : word;
            if (Counted().Match(part) is { Success: true } counted)
            {
                yield return (word, counted.Groups["count"].Value, counted.Groups["day"].Value, place);
            }
        }
    }

    /// <summary>What a cell of the table of days says: the column names it, or its first word.</summary>
    private static IEnumerable<(string Topic, string Value, string Day, string Place)> OfCell(string column, string said, string day) =>
        column is "Meals" or "Problem" || Cell().Match(said) is not { Success: true } match ? []
        : [(match.Groups["word"].Value is { Length: > 0 } word ? word : TopicOf(column), match.Groups["value"].Value, day, "days")];

    private static string TopicOf(string title) => Topics.FirstOrDefault(one => title.StartsWith(one.Start, StringComparison.Ordinal)) is { Topic: { } topic } ? topic : title.Split(',', ':')[0].ToLowerInvariant();

    [GeneratedRegex(@"(?<value>\d[\d.]*)(?: [×x\d.]+)*(?: (?:kg|mm|°C|mmol/L|mL/kg a day|a minute))?(?: before food)? \((?<day>\d+ [A-Z][a-z]{2}(?: \d{4})?)\)")]
    private static partial Regex Dated();

    [GeneratedRegex(@"(?<word>[a-z]+): [^(:]*\(")]
    private static partial Regex Named();

    [GeneratedRegex(@"\((?<count>\d+)\u00D7 on (?<day>\d+ [A-Z][a-z]{2})")]
    private static partial Regex Counted();

    [GeneratedRegex(@"^(?:(?<word>[a-z]+) )?(?<value>\d[\d.]*)(?:\u00D7| mL| mmol/L)")]
    private static partial Regex Cell();
}
