using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using HealthNotes.Analysis;
using HealthNotes.Features.Actions;
using HealthNotes.Grammar.Notes;
using HealthNotes.Rendering;
using HealthNotes.Rendering.Pages;
using HealthNotes.Rendering.Sheet;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Rendering.Sheet;

/// <summary>The check sheet: the same items in the same order as the entry that is typed from it.</summary>
public class CheckSheetTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    public static TheoryData<string> Samples => [.. Directory.EnumerateFiles(Repository.PathOf("samples"), "*.hnote").Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Samples))]
    public void What_is_on_paper_is_what_is_typed(string sample)
    {
        var document = HealthNotes.Features.Documents.Document.Open("file:///a.hnote", 1, File.ReadAllText(Repository.PathOf("samples/" + sample)), Today);
        IHtmlDocument sheet = Parsed(CheckSheet.Html(document.Analysis, Paper.A4));
        string[] typed = [.. CheckEdits.AddCheckForToday(document).Edit!.NewText.Split('\n').Select(line => line.Trim()).Where(line => line.StartsWith("# ", StringComparison.Ordinal)).Skip(1).Select(line => line[2..])];
        string[] parts = [.. sheet.QuerySelectorAll("table.list tbody code").Select(code => code.TextContent)];
        string[] asked = [.. sheet.QuerySelectorAll(".asked code").Select(code => code.TextContent)];
        Assert.Equal(parts, typed.Take(parts.Length));
        Assert.Equal(asked.Append("else ok"), typed.TakeLast(asked.Length + 1));
        int places = typed.Length - parts.Length - asked.Length - 1;
        Assert.Equal(Math.Min(5, places), sheet.QuerySelectorAll(".places tbody tr").Count(row => row.Children[1].TextContent.Length > 0));
    }

    [Fact]
    public void The_order_is_that_of_an_examination()
    {
        IHtmlDocument sheet = Parsed(CheckSheet.Html(Analyse("pet A\nspecies dog\n"), Paper.A4));
        string[] rows = [.. sheet.QuerySelectorAll("table.list tbody tr").Select(row => row.QuerySelector("code")?.TextContent ?? row.TextContent)];
        Assert.Equal(["Before you wake your pet", "rr asleep", "From across the room", "alert", "stance", "gait", "On the scales", "weight", "With your hands, from head to tail"], rows[..9]);
        Assert.Equal(["Last; for a well pet you may leave this out", "temp"], rows[^2..]);
        Assert.Equal(["ate", "water", "pee", "stool", "vomit", "cough", "gave", "mood"], sheet.QuerySelectorAll(".asked code").Select(code => code.TextContent));
        Assert.Contains("you with the pet", Row(sheet, "weight"), StringComparison.Ordinal);
        Assert.Contains("you alone", Row(sheet, "weight"), StringComparison.Ordinal);
    }

    [Fact]
    public void Who_it_is_the_limits_and_the_last_values_are_on_it()
    {
        IHtmlDocument sheet = Parsed(CheckSheet.Html(Analyse(Pages.Check + "\nchip 123\ncall-if weight <20kg\n"), Paper.A4));
        Assert.Equal("Your clinic's limits: breathing asleep phone at 17 or more in 30 s", Said(sheet, ".limits"));
        Assert.Equal("Dog, male, neutered, about 9 years 8 months Owner: the household at Larch Lane. Known: heart murmur since 2026-01. Allergies: chicken. Medicines: benazepril 5 mg once a day.", Said(sheet, ".about"));
        Assert.Contains("phone at 17 or more in 30 svet's range 16 to 24 a minute", Row(sheet, "rr asleep"), StringComparison.Ordinal);
        Assert.DoesNotContain("reference", Row(sheet, "rr asleep"), StringComparison.Ordinal);
        Assert.Contains("36 a minute 4 Oct", Row(sheet, "rr asleep"), StringComparison.Ordinal);
        Assert.Contains("does the ear need drops again?", sheet.QuerySelector(".back")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("hnote new check", sheet.QuerySelector(".typing")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(4, sheet.QuerySelectorAll("svg.body-map").Length);
    }

    /// <summary>A side that is well must never hide the other.</summary>
    [Theory]
    [InlineData("ear L odour brown wax\near R clean", "left: odour, brown, wax 1 Oct")]
    [InlineData("ear R clean\near L odour brown wax", "left: odour, brown, wax 1 Oct")]
    [InlineData("ear both clean", "both sides: clean 1 Oct")]
    public void The_last_side_that_is_not_well_is_shown(string lines, string last) =>
        Assert.Contains(last, Row(Parsed(CheckSheet.Html(Analyse($"pet A\nspecies dog\n2026-10-01 check\n{lines}\n"), Paper.A4)), "ear"), StringComparison.Ordinal);

    [Theory]
    [InlineData("2026-10-08 check\near both clean\n", "both sides: clean 8 Oct")]
    [InlineData("2026-10-08 check\near clean\n", "clean 8 Oct")]
    [InlineData("2026-10-08 check\near R clean\n", "left: odour 1 Oct")]
    [InlineData("2026-10-08 check\near L clean\n", "left: clean 8 Oct")]
    public void It_stays_until_a_line_of_its_side_says_otherwise(string later, string last) =>
        Assert.Contains(last, Row(Parsed(CheckSheet.Html(Analyse($"pet A\nspecies dog\n2026-10-01 check\near L odour\n{later}"), Paper.A4)), "ear"), StringComparison.Ordinal);

    [Fact]
    public void Usual_values_are_left_out_while_the_value_moves()
    {
        string Note(int step) => "pet A\nspecies dog\nborn 2017\n" + string.Concat(Enumerable.Range(0, 12).Select(month => $"{new DateOnly(2025, 11, 1).AddMonths(month):yyyy-MM-dd} check\n  rr {8 + (month * step)}/30s asleep\n"));
        Assert.Contains("usual", Row(Parsed(CheckSheet.Html(Analyse(Note(0)), Paper.A4)), "rr asleep"), StringComparison.Ordinal);
        Assert.DoesNotContain("usual", Row(Parsed(CheckSheet.Html(Analyse(Note(1)), Paper.A4)), "rr asleep"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_lump_keeps_its_number_when_an_earlier_one_is_gone()
    {
        const string Note = "pet A\nspecies dog\n2026-08-01 check\n  lump L-flank 10mm\n  lump R-thigh 9mm\n2026-09-01 check\n  lump L-flank gone\n  lump R-thigh 9mm\n";
        Assert.Equal(["2", "3", "4", "5", "6"], Parsed(CheckSheet.Html(Analyse(Note), Paper.A4)).QuerySelectorAll(".places tbody th").Select(number => number.TextContent));
    }

    [Fact]
    public void The_other_animal_is_not_spoken_of()
    {
        string dog = WithoutSources("pet A\nspecies dog\n");
        string cat = WithoutSources("pet A\nspecies cat\n");
        Assert.Empty(Words(dog).Intersect(["cat", "cats", "kitten", "kittens"], StringComparer.OrdinalIgnoreCase));
        Assert.Empty(Words(cat).Intersect(["dog", "dogs", "puppy", "puppies"], StringComparer.OrdinalIgnoreCase));
    }

    private static string WithoutSources(string note)
    {
        IHtmlDocument sheet = Parsed(CheckSheet.Html(Analyse(note), Paper.A4));
        foreach (IElement sources in sheet.QuerySelectorAll(".sources").ToList())
        {
            sources.Remove();
        }

        return sheet.Body!.TextContent;
    }

    [Fact]
    public void Us_units_are_on_the_whole_sheet()
    {
        IHtmlDocument sheet = Parsed(CheckSheet.Html(Analyse("pet A\nspecies dog\nunits us\n2026-10-01 check\n  weight 20kg\n  temp 38.5C rectal\n  lump L-flank 10mm\n"), Paper.Letter));
        Assert.EndsWith("lb", Row(sheet, "weight"), StringComparison.Ordinal);
        Assert.EndsWith("\u00B0F", Row(sheet, "temp"), StringComparison.Ordinal);
        Assert.Contains("lump left flank0.39 in 1 Octin", sheet.QuerySelector(".places tbody")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("4 inches", sheet.QuerySelector(".scale")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain(Words(sheet.QuerySelector(".front")!.TextContent + sheet.QuerySelector(".scan")!.TextContent + sheet.QuerySelector(".scale")!.TextContent), word => word is "mm" or "kg" or "\u00B0C");
    }

    /// <summary>A count in 15 seconds times 4 is a minute's: Merck Veterinary Manual, physical examination (from memory).</summary>
    [Fact]
    public void The_counting_table_is_right()
    {
        IElement[] rows = [.. Parsed(CheckSheet.Html(Analyse("pet A\nspecies cat\n"), Paper.Letter)).QuerySelectorAll("table.counting tr")];
        int[][] numbers = [.. Enumerable.Range(0, 3).Select(kind => rows.Where((_, i) => i % 3 == kind).SelectMany(Numbers).ToArray())];
        Assert.Equal(Enumerable.Range(4, 60), numbers[0]);
        Assert.Equal(numbers[0].Select(count => count * 4), numbers[1]);
        Assert.Equal(numbers[0].Select(count => count * 2), numbers[2]);
    }

    [Fact]
    public void What_cannot_wait_is_told_for_the_animal()
    {
        string dog = CheckSheet.Html(Analyse("pet A\nspecies dog\nsex male\n"), Paper.A4);
        string cat = CheckSheet.Html(Analyse("pet A\nspecies cat\nsex male\n"), Paper.A4);
        string queen = CheckSheet.Html(Analyse("pet A\nspecies cat\nsex female\n"), Paper.A4);
        Assert.Contains("Heaving with nothing coming up", dog, StringComparison.Ordinal);
        Assert.DoesNotContain("Heaving with nothing coming up", cat, StringComparison.Ordinal);
        Assert.Contains("Straining to pass urine", cat, StringComparison.Ordinal);
        Assert.DoesNotContain("Straining to pass urine", queen, StringComparison.Ordinal);
    }

    [Fact]
    public void Hostile_text_stays_text_and_many_lumps_stay_few()
    {
        const string Attack = "<script>alert(1)</script>";
        string lumps = string.Concat(Enumerable.Range(0, 30).Select(n => $"  lump L-flank @t{n} 9mm\n"));
        IHtmlDocument sheet = Parsed(CheckSheet.Html(Analyse($"pet {Attack}\nknown {Attack}\nclinic {Attack}\nphone {Attack}\n2026-10-01 check\n  ear L odour # {Attack}\n{lumps}"), Paper.A4));
        Assert.Empty(sheet.QuerySelectorAll("script, img, [style], [onload]"));
        Assert.StartsWith(Attack[..20], sheet.QuerySelector("h1")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(6, sheet.QuerySelectorAll(".places tbody tr").Length);
        Assert.Contains("25 more are in the notes.", sheet.QuerySelector(".places")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_log_has_a_row_a_dose_and_one_for_each_wound()
    {
        IHtmlDocument log = Parsed(CareSheet.Html(Analyse("pet A\nspecies dog\ncall-if rr asleep >30\nmed x 5mg every 12h from 2026-11-01\nmed z 1 tablet every 24h from 2026-11-01\n2026-11-20 log\n  wound RH-knee 80mm dry\n"), Paper.A4));
        string[] rows = [.. log.QuerySelectorAll("table.log tbody th").Select(head => string.Join(' ', head.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)))];
        Assert.Equal(["x 5 mg twice a day, dose 1 gave", "x 5 mg twice a day, dose 2 gave", "z 1 tablet once a day gave", "Another medicine: gave"], rows[..4]);
        Assert.Contains("Wound 1, right hind knee: dry, red, swollen, open, weeping, licked? wound", rows);
        Assert.Equal(["ate", "ate", "water", "pee", "stool", "vomit", "cough", "rr asleep", "temp", "mood", "wound", ">"], log.QuerySelectorAll("table.log tbody code").Skip(5).Select(code => code.TextContent));
        Assert.Equal(["Wed 25 Nov", "Tue 1 Dec"], log.QuerySelectorAll("table.log thead th").Skip(1).Select(head => head.TextContent).Where((_, day) => day is 0 or 6));
        Assert.Equal("Your clinic's limits: breathing asleep phone at 16 or more in 30 s", Said(log, ".limits"));
        Assert.Empty(Parsed(CareSheet.Html(Analyse("pet <script>alert(1)</script>\nmed <script>x</script> 5mg every 24h\n"), Paper.A4)).QuerySelectorAll("script"));
    }

    private static string Said(IHtmlDocument sheet, string selector) => string.Join(' ', sheet.QuerySelector(selector)!.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static string Row(IHtmlDocument sheet, string word) => sheet.QuerySelectorAll("table.list tbody tr").Single(row => row.QuerySelector("code")?.TextContent == word).TextContent;

    private static string[] Words(string text) => text.Split([' ', '\n', ',', '.', ';', ':', '\'', '(', ')'], StringSplitOptions.RemoveEmptyEntries);

    private static IEnumerable<int> Numbers(IElement row) => row.QuerySelectorAll("td").Select(cell => int.Parse(cell.TextContent, System.Globalization.CultureInfo.InvariantCulture));

    private static HealthNotes.Analysis.NoteAnalysis Analyse(string note) => HealthNotes.Analysis.NoteAnalysis.Of(HealthNotes.Grammar.Notes.Note.Read(note), Today);

    private static IHtmlDocument Parsed(string html) => new HtmlParser().ParseDocument(html);

    [Theory]
    [InlineData("01632 960142 (invented)", "tel:01632960142")]
    [InlineData("night +44 1632 960-142", "tel:+441632960142")]
    [InlineData("ask for room 12", null)]
    [InlineData("1234567890123456", null)]
    public void The_clinic_is_dialled_from_the_sheet_and_the_page(string phone, string? target)
    {
        var analysis = NoteAnalysis.Of(Note.Read($"pet M\nspecies dog\nphone {phone}\n"), Today);
        Assert.Equal(target, Parsed(CheckSheet.Html(analysis, Paper.A4)).QuerySelector("p.phone a")?.GetAttribute("href"));
        Assert.Equal(target, Parsed(VisitPage.Html(analysis, PageOptions.Default)).QuerySelector("a[href^='tel:']")?.GetAttribute("href"));
    }
}
