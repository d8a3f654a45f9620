using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using HealthNotes.Analysis;
using HealthNotes.EndToEnd.Support;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Rendering;
using HealthNotes.Rendering.Card;
using HealthNotes.Rendering.Folder;
using HealthNotes.Rendering.Sheet;
using HealthNotes.Tests.Support;
using Microsoft.Playwright;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;

namespace HealthNotes.EndToEnd;

/// <summary>The check sheet on paper: two sides, and true to scale. The log of home care and the card: one page. And the index of a folder.</summary>
public class CheckSheetTests(Browser browser) : IClassFixture<Browser>
{
    /// <summary>Points of PDF in a millimetre: 72 to the inch of 25.4 mm (ISO 32000-1, 8.3.2.3).</summary>
    private const double PointsInAMillimetre = 72 / 25.4;

    private static readonly DateOnly Today = new(2026, 11, 25);

    public static TheoryData<string, Paper> Sheets
    {
        get
        {
            TheoryData<string, Paper> data = [];
            foreach (string note in NotePages.Notes)
            {
                data.Add(note, Paper.A4);
                data.Add(note, Paper.Letter);
            }

            return data;
        }
    }

    [SkippableTheory]
    [MemberData(nameof(Sheets))]
    public async Task Sheet_is_two_sides_and_measures_true(string note, Paper paper)
    {
        using PdfDocument pdf = PdfDocument.Open(await PrintAsync(CheckSheet.Html(Read(File.ReadAllText(Repository.PathOf(note))), paper)));
        Assert.Equal(2, pdf.NumberOfPages);
        Page back = pdf.GetPage(2);
        (double width, double height) = paper == Paper.A4 ? (210.0, 297.0) : (215.9, 279.4);
        Assert.InRange(back.Width / PointsInAMillimetre, width - 0.5, width + 0.5);
        Assert.InRange(back.Height / PointsInAMillimetre, height - 0.5, height + 0.5);

        PdfRectangle[] boxes = [.. back.Paths.Select(path => path.GetBoundingRectangle()).OfType<PdfRectangle>()];
        // in millimetres, or in sixteenths of an inch of 25.4 mm
        bool us = Read(File.ReadAllText(Repository.PathOf(note))).Pet.ShowUsUnits;
        (double bar, int count, double part) = us ? (101.6, 97, 25.4 / 16) : (100.0, 151, 1.0);
        Assert.True(IsThere(boxes, bar, 1.8), $"the bar that must measure {bar} mm");

        // the ticks of the ruler are the only thin lines that hang from one height
        double[] ticks = [.. boxes.Where(box => Mm(box.Height) is > 2.7 and < 6.2 && Mm(box.Width) < 0.5).GroupBy(box => Math.Round(Mm(box.Top))).MaxBy(row => row.Count())!
            .Select(box => Mm(box.Centroid.X)).Order()];
        Assert.Equal(count, ticks.Length);
        Assert.InRange(ticks[^1] - ticks[0], (count - 1) * part * 0.99, (count - 1) * part * 1.01);
        Assert.All(ticks.Skip(1).Zip(ticks, (right, left) => right - left), step => Assert.InRange(step, part * 0.97, part * 1.03));
        foreach (string thing in new[] { "match-head", "peppercorn", "pea", "blueberry", "grape", "cherry" })
        {
            double size = (double)NoteVocabulary.Default.Objects.Find(thing)!.TypicalMm;
            Assert.True(IsThere(boxes, size, size), $"{thing}, {size} mm");
        }
    }

    [SkippableFact]
    public async Task Thirty_lumps_and_long_facts_still_fit_on_two_sides()
    {
        string note = $"pet {new string('M', 60)}\nspecies dog\n" + string.Concat(Enumerable.Range(0, 5).Select(n => $"med {new string('m', 60)}{n} 5mg every 8h from 2026-10-01\ncall-if rr <{n}0\nknown {new string('x', 300)} {n}\nclinic {new string('y', 300)}\nphone {new string('1', 200)}\n"))
            + "2026-10-01 check\n" + string.Concat(Enumerable.Range(0, 30).Select(n => $"  lump L-shoulder-front @long-name-{n} 12x9x7mm\n")) + "  wound L-shoulder-front @long-name-of-it 90mm\n  wound R-shoulder-front @long-name-of-it 90mm\n  ear L odour brown wax itchy red scabs\n  ear R odour brown wax itchy red scabs\n  coat matted dandruff dry greasy\n"
            + string.Concat(Enumerable.Range(0, 5).Select(n => $"  ask {new string('q', 200)}\n  due {new string('d', 150)}{n} 2026-12-0{n + 1}\n"));
        foreach (Paper paper in Enum.GetValues<Paper>())
        {
            using PdfDocument pdf = PdfDocument.Open(await PrintAsync(CheckSheet.Html(Read(note), paper)));
            Assert.Equal(2, pdf.NumberOfPages);
            using PdfDocument log = PdfDocument.Open(await PrintAsync(CareSheet.Html(Read(note), paper)));
            Assert.Equal(1, log.NumberOfPages);
        }
    }

    [SkippableTheory]
    [InlineData(Species.Dog, Paper.A4)]
    [InlineData(Species.Cat, Paper.A4)]
    [InlineData(Species.Unknown, Paper.A4)]
    [InlineData(Species.Dog, Paper.Letter)]
    [InlineData(Species.Cat, Paper.Letter)]
    [InlineData(Species.Unknown, Paper.Letter)]
    public async Task Card_is_one_page(Species species, Paper paper)
    {
        using PdfDocument pdf = PdfDocument.Open(await PrintAsync(NoteCard.Html(species, paper)));
        Assert.Equal(1, pdf.NumberOfPages);
    }

    [SkippableFact]
    public async Task Sheet_and_index_are_accessible_and_silent()
    {
        string marlow = File.ReadAllText(Repository.PathOf("samples/marlow.hnote"));
        (string Name, string Html)[] pages =
        [
            ("sheet-dog", CheckSheet.Html(Read(marlow), Paper.A4)),
            ("sheet-cat", CheckSheet.Html(Read(File.ReadAllText(Repository.PathOf("samples/tansy.hnote"))), Paper.Letter)),
            ("log", CareSheet.Html(Read(marlow), Paper.A4)),
            ("card", NoteCard.Html(Species.Unknown, Paper.A4)),
            ("folder", FolderPage.Html([new FolderNote("marlow.hnote", "marlow.html", Read(marlow), null), new FolderNote("x.hnote", null, null, "it is not text")], Today)),
        ];
        IBrowser chromium = await browser.OpenAsync();
        foreach ((string name, string html) in pages)
        {
            string file = Path.Combine(browser.Folder, name + ".html");
            await File.WriteAllTextAsync(file, html);
            string url = new Uri(file).AbsoluteUri;
            foreach ((ColorScheme scheme, int width) in new[] { (ColorScheme.Light, 1280), (ColorScheme.Dark, 360) })
            {
                List<string> heard = [];
                await using IBrowserContext context = await chromium.NewContextAsync(new() { ColorScheme = scheme, ViewportSize = new() { Width = width, Height = 900 } });
                IPage page = await context.NewPageAsync();
                page.Console += (_, message) => heard.Add($"console: {message.Text}");
                page.PageError += (_, error) => heard.Add($"error: {error}");
                page.Request += (_, request) => heard.Add(request.Url);
                await page.GotoAsync(url);
                Assert.Equal([url], heard);
                await page.ScreenshotAsync(new() { Path = Path.Combine(browser.Folder, $"{name}-{width}.png"), FullPage = true });
                AxeResult result = await page.RunAxe();
                Assert.True(result.Violations.Length == 0, $"{name}: " + string.Join("\n", result.Violations.Select(violation => $"{violation.Id}: {violation.Help} at {string.Join("; ", violation.Nodes.Take(3).Select(node => node.Html))}")));
            }
        }
    }

    private static NoteAnalysis Read(string note) => NoteAnalysis.Of(Note.Read(note), Today);

    private async Task<byte[]> PrintAsync(string html)
    {
        IBrowser chromium = await browser.OpenAsync();
        await using IBrowserContext context = await chromium.NewContextAsync();
        IPage page = await context.NewPageAsync();
        await page.SetContentAsync(html);
        return await page.PdfAsync(new() { PreferCSSPageSize = true, PrintBackground = true });
    }

    /// <summary>True when something is drawn that is as wide and as high, each within 1 % (of the shape, less the width of its line).</summary>
    private static bool IsThere(IEnumerable<PdfRectangle> boxes, double width, double height) =>
        boxes.Any(box => Math.Abs(Mm(box.Width) - width) <= width * 0.01 && Math.Abs(Mm(box.Height) - height) <= Math.Max(height * 0.01, 0.05));

    private static double Mm(double points) => points / PointsInAMillimetre;

    [SkippableFact]
    public async Task What_is_tapped_on_a_phone_is_read_whole()
    {
        string path = Path.Combine(browser.Folder, "fill.html");
        await File.WriteAllTextAsync(path, FillSheet.Html(Read(File.ReadAllText(Repository.PathOf("samples/marlow.hnote")))));
        await using IBrowserContext context = await (await browser.OpenAsync()).NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 844 } });
        IPage page = await context.NewPageAsync();
        List<string> said = [];
        page.Console += (_, message) => said.Add(message.Text);
        page.Request += (_, request) => said.AddRange(request.Url.StartsWith("file:", StringComparison.Ordinal) ? [] : [request.Url]);
        await page.GotoAsync("file://" + path);
        ILocator Part(string start) => page.Locator($"section[data-start='{start}']");
        await page.FillAsync("#day", "2026-11-25");
        await page.FillAsync("#time", "08:15");
        await Part("gums").GetByRole(AriaRole.Button, new() { Name = "pink", Exact = true }).ClickAsync();
        await Part("gums").GetByRole(AriaRole.Button, new() { Name = "moist", Exact = true }).ClickAsync();
        await Part("ear").GetByRole(AriaRole.Button, new() { Name = "L", Exact = true }).ClickAsync();
        await Part("ear").Locator(".own").FillAsync("brown # wax");
        await Part("stance").Locator(".ok").CheckAsync();
        await Part("weight").Locator(".n").FillAsync("26.4");
        await Part("hr").Locator(".seconds").SelectOptionAsync("15");
        for (int press = 0; press < 20; press++)
        {
            await Part("hr").Locator(".tap").ClickAsync();
        }

        await Part("hr").Locator(".undo").ClickAsync();
        await page.CheckAsync("#rest");
        await page.FillAsync("#question", "does the ear need drops?");
        await page.ClickAsync("#copy");
        string entry = await page.InputValueAsync("#text");
        Assert.Equal(
            "2026-11-25 08:15 check\n  stance ok\n  weight 26.4kg\n  ear L brown wax\n  gums pink, moist\n  hr 18/15s\n  else ok\n  ask does the ear need drops?\n", entry);
        Assert.Empty(Note.Read($"pet M\nspecies dog\n\n{entry}").Entries[0].NotUnderstood);
        Assert.Empty(said);
    }
}
