using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using HealthNotes.EndToEnd.Support;
using Microsoft.Playwright;

namespace HealthNotes.EndToEnd;

/// <summary>Opens every note's page in a browser and looks at it as a reader would.</summary>
public class PageInBrowserTests(Browser browser) : IClassFixture<Browser>
{
    /// <summary>A phone, a tablet and a desk. The slow look at accessibility takes each colour scheme once, and each layout once.</summary>
    private static readonly (ColorScheme Scheme, int Width, bool Axe)[] Screens =
        [(ColorScheme.Light, 360, true), (ColorScheme.Dark, 768, false), (ColorScheme.Light, 1280, false), (ColorScheme.Dark, 1280, true)];

    public static TheoryData<string> Notes => [.. NotePages.Notes];

    [SkippableTheory]
    [MemberData(nameof(Notes))]
    public async Task Page_is_accessible_silent_and_fits_every_screen(string note)
    {
        IBrowser chromium = await browser.OpenAsync();
        string file = NotePages.Write(note, browser.Folder);
        string url = new Uri(file).AbsoluteUri;
        foreach ((ColorScheme scheme, int width, bool axe) in Screens)
        {
            List<string> heard = [];
            await using IBrowserContext context = await chromium.NewContextAsync(new() { ColorScheme = scheme, ViewportSize = new() { Width = width, Height = 900 } });
            IPage page = await context.NewPageAsync();
            page.Console += (_, message) => heard.Add($"console: {message.Text}");
            page.PageError += (_, error) => heard.Add($"error: {error}");
            page.Request += (_, request) => heard.Add(request.Url);
            await page.GotoAsync(url);
            Assert.Equal([url], heard);

            int documentWidth = await page.EvaluateAsync<int>("document.documentElement.scrollWidth");
            Assert.True(documentWidth <= width, $"{note} is {documentWidth} wide on a screen of {width}");
            await page.ScreenshotAsync(new() { Path = Picture(note, $"{scheme}-{width}.png"), FullPage = true });
            if (axe)
            {
                AxeResult result = await page.RunAxe();
                Assert.True(result.Violations.Length == 0, string.Join("\n", result.Violations.Select(Describe)));
            }
        }
    }

    [SkippableTheory]
    [MemberData(nameof(Notes))]
    public async Task Page_prints_on_both_papers(string note)
    {
        IBrowser chromium = await browser.OpenAsync();
        await using IBrowserContext context = await chromium.NewContextAsync();
        IPage page = await context.NewPageAsync();
        await page.GotoAsync(new Uri(NotePages.Write(note, browser.Folder)).AbsoluteUri);
        foreach (string paper in new[] { "A4", "Letter" })
        {
            byte[] pdf = await page.PdfAsync(new() { Path = Picture(note, paper + ".pdf"), Format = paper, PreferCSSPageSize = true });
            Assert.InRange(CountPages(pdf), 1, 40);
        }
    }

    private string Picture(string note, string name) => Path.Combine(browser.Folder, $"{Path.GetFileNameWithoutExtension(note)}-{name}");

    /// <summary>The pages of a file: its page objects.</summary>
    private static int CountPages(byte[] pdf)
    {
        string text = System.Text.Encoding.Latin1.GetString(pdf);
        return text.Split("/Type /Page\n").Length - 1;
    }

    private static string Describe(AxeResultItem violation) =>
        $"{violation.Id}: {violation.Help} at {string.Join("; ", violation.Nodes.Take(3).Select(node => node.Html))}";
}
