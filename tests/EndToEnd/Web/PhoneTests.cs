using System.Diagnostics;
using System.Text;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using HealthNotes.EndToEnd.Support;
using HealthNotes.Tests.Support;
using Microsoft.Playwright;
using Xunit.Abstractions;

namespace HealthNotes.EndToEnd.Web;

/// <summary>The web editor as an owner holds it: a phone, and no network after the first visit.</summary>
public class PhoneTests(Browser browser, ITestOutputHelper output) : IClassFixture<Browser>
{
    private const string Today = "2026-11-25";

    [SkippableFact]
    public async Task A_check_is_written_and_its_page_shown_without_a_network()
    {
        using WebEditor editor = await WebEditor.StartAsync();
        List<string> heard = [];
        await using IBrowserContext context = await PhoneAsync(ColorScheme.Light);
        IPage page = await VisitAsync(context, editor, heard);
        await NewNoteAsync(page, "Marlow");
        await page.WaitForSelectorAsync("body[data-offline=ready]");
        await context.SetOfflineAsync(true);
        await page.ReloadAsync();
        await page.WaitForSelectorAsync("body[data-server=ready]");

        // typed, found, fixed with a tap
        await page.ClickAsync(".cm-content");
        await page.Keyboard.PressAsync("Control+End");
        await page.Keyboard.TypeAsync("2026-11-20 check\nrr 17/30s asleep\ngumz pink\n");
        await page.GetByText("= 34/min").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Problems: 2" }).ClickAsync();
        Assert.Contains("above 30 a minute", await page.InnerTextAsync("#problems-list"), StringComparison.Ordinal);
        await AssertAccessibleAsync(page, "problems");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write: gums pink" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Problems: 1" }).WaitForAsync();

        // the walk: a tap, a count, words
        await page.ClickAsync("#walk-open");
        await page.Locator("#walk-title").Filter(new() { HasText = "Breathing" }).WaitForAsync();
        await AssertAccessibleAsync(page, "walk");
        await page.ClickAsync("text=15 s");
        for (int tap = 0; tap < 6; tap++)
        {
            await page.DispatchEventAsync(".tap", "pointerdown");
        }

        await page.GetByRole(AriaRole.Button, new() { Name = "Write the count" }).ClickAsync(new() { Timeout = 60_000 });
        await page.GetByRole(AriaRole.Button, new() { Name = "OK", Exact = true }).ClickAsync();
        await page.FillAsync("#walk-words", "square");
        await page.Keyboard.PressAsync("Enter");
        await page.ClickAsync("#walk-back");
        await page.ClickAsync("#walk .close");
        string text = await NoteAsync(page);
        Assert.EndsWith("gums pink\n\n2026-11-25 check\n  rr 5/15s asleep\n  alert ok\n", text, StringComparison.Ordinal);

        // the page, and the other pages
        await page.ClickAsync("#page-open");
        await page.FrameLocator("#frame").GetByText("Breathing").First.WaitForAsync();
        await AssertAccessibleAsync(page, "page");
        await page.SelectOptionAsync("#page-kind", "sheet");
        await page.FrameLocator("#frame").Locator(".ruler, svg").First.WaitForAsync();
        await page.ClickAsync("#page-open");

        Assert.DoesNotContain(heard, said => !said.StartsWith(editor.Origin, StringComparison.Ordinal) && !said.StartsWith("data:", StringComparison.Ordinal) && !said.StartsWith("blob:", StringComparison.Ordinal));
    }

    [SkippableTheory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task Nothing_is_wider_than_a_small_phone_and_all_of_it_is_accessible(ColorScheme scheme)
    {
        using WebEditor editor = await WebEditor.StartAsync();
        await using IBrowserContext context = await PhoneAsync(scheme, 360);
        IPage page = await VisitAsync(context, editor, []);
        await AssertAccessibleAsync(page, "start");
        await NewNoteAsync(page, "Tansy");
        foreach ((string open, string dialog) in new[] { ("#notes-open", "#notes"), ("#outline-open", "#outline"), ("#more-open", "#more"), ("#walk-open", "#walk") })
        {
            await page.ClickAsync(open);
            await page.WaitForSelectorAsync($"{dialog}[open]");
            await AssertAccessibleAsync(page, $"{scheme}{dialog}");
            await page.ClickAsync($"{dialog} .close");
        }

        await page.ScreenshotAsync(new() { Path = Path.Combine(browser.Folder, $"web-{scheme}.png") });
        Assert.Equal(360, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
    }

    /// <summary>What was typed a moment before the tab went away is there; a second tab only shows the note.</summary>
    [SkippableFact]
    public async Task Nothing_typed_is_lost_and_two_tabs_do_not_write_over_each_other()
    {
        using WebEditor editor = await WebEditor.StartAsync();
        await using IBrowserContext context = await PhoneAsync(ColorScheme.Light);
        IPage page = await VisitAsync(context, editor, []);
        await NewNoteAsync(page, "Marlow");
        await page.Keyboard.PressAsync("Control+End");
        await page.Keyboard.TypeAsync("known heart murmur grade 2 since 2026-01");
        IPage second = await context.NewPageAsync();
        await second.GotoAsync($"{editor.Origin}/?today={Today}");
        await second.GetByText("open in another tab").WaitForAsync();
        await page.WaitForTimeoutAsync(1000);
        await page.CloseAsync();
        await second.ReloadAsync();
        await second.GetByText("heart murmur grade 2 since 2026-01").WaitForAsync();
        Assert.Equal("kept on this device", await second.InnerTextAsync("#state"));
    }

    /// <summary>A photo is kept without where and with what it was taken, and is on the page.</summary>
    [SkippableFact]
    public async Task A_photo_is_drawn_anew()
    {
        using WebEditor editor = await WebEditor.StartAsync();
        await using IBrowserContext context = await PhoneAsync(ColorScheme.Light);
        IPage page = await VisitAsync(context, editor, []);
        await NewNoteAsync(page, "Marlow");
        await page.SetInputFilesAsync("#photo-file", Repository.PathOf("editor-client/vscode/images/icon.png"));
        await page.GetByText("photo 2026-11-25-1.jpg").WaitForAsync();
        await page.ClickAsync("#page-open");
        await page.FrameLocator("#frame").Locator("img").First.WaitForAsync();
        Assert.StartsWith("data:image/jpeg", await page.FrameLocator("#frame").Locator("img").First.GetAttributeAsync("src"), StringComparison.Ordinal);
    }

    /// <summary>A phone writes where it was, and with what, into the file.</summary>
    [SkippableFact]
    public async Task What_a_phone_wrote_into_a_photo_is_gone()
    {
        using WebEditor editor = await WebEditor.StartAsync();
        await using IBrowserContext context = await PhoneAsync(ColorScheme.Light);
        IPage page = await VisitAsync(context, editor, []);
        await NewNoteAsync(page, "Marlow");
        byte[] photo = WithExif(await File.ReadAllBytesAsync(Repository.PathOf("samples/left-ear-261121.jpg")));
        Assert.Contains("A camera", Encoding.Latin1.GetString(photo), StringComparison.Ordinal);
        await page.SetInputFilesAsync("#photo-file", new FilePayload { Name = "from-a-phone.jpg", MimeType = "image/jpeg", Buffer = photo });
        await page.GetByText("photo 2026-11-25-1.jpg").WaitForAsync();
        string kept = await page.EvaluateAsync<string>(
            """
            () => new Promise((resolve) => {
              indexedDB.open('hnote').onsuccess = (opened) => {
                opened.target.result.transaction('pictures').objectStore('pictures').getAll().onsuccess = (found) => resolve([...found.target.result[0].bytes].map((one) => String.fromCharCode(one)).join(''));
              };
            })
            """);
        Assert.StartsWith("\u00ff\u00d8\u00ff", kept, StringComparison.Ordinal);
        Assert.All(["A camera", "Exif", "from-a-phone", "http://ns.adobe.com"], trace => Assert.DoesNotContain(trace, kept, StringComparison.Ordinal));
    }

    /// <summary>A browser without room says so at once, keeps what is typed in front, and keeps it for good when there is room again.</summary>
    [SkippableFact]
    public async Task Without_room_nothing_is_said_to_be_kept()
    {
        using WebEditor editor = await WebEditor.StartAsync();
        await using IBrowserContext context = await PhoneAsync(ColorScheme.Light);
        // a full store aborts the transaction: this is how, without filling a disk
        await context.AddInitScriptAsync(
            """
            const put = IDBObjectStore.prototype.put;
            IDBObjectStore.prototype.put = function (...given) {
              const request = put.apply(this, given);
              if (window.full) this.transaction.abort();
              return request;
            };
            """);
        IPage page = await VisitAsync(context, editor, []);
        await NewNoteAsync(page, "Marlow");
        await NoteAsync(page);
        await page.EvaluateAsync("window.full = true");
        await page.Keyboard.PressAsync("Control+End");
        await page.Keyboard.TypeAsync("known heart murmur");
        await page.GetByText("not saved", new() { Exact = true }).WaitForAsync();
        await page.GetByText("this browser has no room left. Export it now.").WaitForAsync();
        await page.SetInputFilesAsync("#photo-file", Repository.PathOf("samples/left-ear-261121.jpg"));
        await page.GetByText("The picture is not kept: this browser has no room left.").WaitForAsync();
        Assert.DoesNotContain("photo", await page.InnerTextAsync(".cm-content"), StringComparison.Ordinal);

        await page.EvaluateAsync("window.full = false");
        await page.ClickAsync(".cm-content");
        await page.Keyboard.PressAsync("Control+End");
        await page.Keyboard.TypeAsync(" grade 2");
        Assert.Contains("known heart murmur grade 2", await NoteAsync(page), StringComparison.Ordinal);
    }

    /// <summary>A JPEG with a camera's name and a place in its Exif block, and an XMP block, as phones write them.</summary>
    private static byte[] WithExif(byte[] jpeg)
    {
        byte[] exif =
        [
            .. "Exif\0\0II*\0\b\0\0\0"u8, 2, 0,
            0x0F, 0x01, 2, 0, 9, 0, 0, 0, 38, 0, 0, 0, // who made the camera
            0x25, 0x88, 4, 0, 1, 0, 0, 0, 48, 0, 0, 0, // where the place stands
            0, 0, 0, 0, .. "A camera\0\0"u8,
            1, 0, 1, 0, 2, 0, 2, 0, 0, 0, (byte)'N', 0, 0, 0, 0, 0, 0, 0, // north
        ];
        byte[] xmp = [.. "http://ns.adobe.com/xap/1.0/\0<x:xmpmeta xmlns:x='adobe:ns:meta/'>from-a-phone</x:xmpmeta>"u8];
        static byte[] Block(byte[] content) => [0xFF, 0xE1, (byte)((content.Length + 2) >> 8), (byte)(content.Length + 2), .. content];
        return [.. jpeg[..2], .. Block(exif), .. Block(xmp), .. jpeg[2..]];
    }

    /// <summary>How long an owner waits, on this machine and on one a quarter as fast. The bounds are wide: a build server is busy.</summary>
    [SkippableTheory]
    [InlineData(1, 15_000, 2_500)]
    [InlineData(4, 60_000, 10_000)]
    public async Task It_follows_the_keys(int slower, int start, int key)
    {
        using WebEditor editor = await WebEditor.StartAsync();
        await using IBrowserContext context = await PhoneAsync(ColorScheme.Light, 1200);
        IPage page = await VisitAsync(context, editor, []);
        await page.WaitForSelectorAsync("body[data-offline=ready]");
        await page.SetInputFilesAsync("#import-file", Repository.PathOf("samples/tansy.hnote"));
        await page.FrameLocator("#frame").GetByText("Tansy").First.WaitForAsync();
        ICDPSession session = await context.NewCDPSessionAsync(page);
        await session.SendAsync("Emulation.setCPUThrottlingRate", new() { ["rate"] = slower });
        var watch = Stopwatch.StartNew();
        await page.ReloadAsync();
        await page.WaitForSelectorAsync(".hint");
        long installed = watch.ElapsedMilliseconds;
        await page.FrameLocator("#frame").GetByText("Tansy").First.WaitForAsync();
        await page.ClickAsync(".cm-content");
        await page.Keyboard.PressAsync("Control+End");
        await page.Keyboard.TypeAsync("2026-11-25 check\n");
        await page.WaitForTimeoutAsync(2000 * slower);
        List<long> hints = [], pages = [];
        for (int count = 21; count < 26; count++)
        {
            await page.Keyboard.TypeAsync($"hr {count}/15");
            await page.WaitForTimeoutAsync(1000 * slower);
            long[] took = await page.EvaluateAsync<long[]>(
                """
                async (label) => {
                  const start = performance.now();
                  const since = () => Math.round(performance.now() - start);
                  const frame = document.getElementById('frame');
                  const page = new Promise((resolve) => frame.addEventListener('load', () => resolve(since()), { once: true }));
                  const hint = new Promise((resolve) => {
                    const look = () => ([...document.querySelectorAll('.hint')].some((one) => one.textContent.includes(label)) ? resolve(since()) : setTimeout(look, 5));
                    look();
                  });
                  document.execCommand('insertText', false, 's');
                  const late = new Promise((_, reject) => setTimeout(() => reject(new Error('nothing followed the key')), 60000));
                  return Promise.race([Promise.all([hint, page]), late]);
                }
                """,
                $"= {count * 4}/min");
            hints.Add(took[0]);
            pages.Add(took[1]);
            await page.Keyboard.PressAsync("Enter");
            await page.WaitForTimeoutAsync(500 * slower);
        }

        output.WriteLine($"{slower} times slower: installed start {installed} ms, a key to its hint {Middle(hints)} ms, to the page {Middle(pages)} ms");
        Assert.True(installed < start && Middle(hints) < key && Middle(pages) < key, $"start {installed}, hints {string.Join(' ', hints)}, pages {string.Join(' ', pages)}");
    }

    private static long Middle(List<long> values) => values.Order().ElementAt(values.Count / 2);

    private async Task<IBrowserContext> PhoneAsync(ColorScheme scheme, int width = 390) =>
        await (await browser.OpenAsync()).NewContextAsync(new() { ColorScheme = scheme, ReducedMotion = ReducedMotion.Reduce, ViewportSize = new() { Width = width, Height = 844 }, HasTouch = true, IsMobile = width < 900 });

    private static async Task<IPage> VisitAsync(IBrowserContext context, WebEditor editor, List<string> heard)
    {
        IPage page = await context.NewPageAsync();
        page.Console += (_, message) => heard.Add($"console: {message.Text}");
        page.PageError += (_, error) => heard.Add($"error: {error}");
        page.Request += (_, request) => heard.Add(request.Url);
        await page.GotoAsync(editor.Address);
        await page.GotoAsync($"{editor.Origin}/?today={Today}");
        await page.WaitForSelectorAsync("body[data-server=ready]", new() { Timeout = 60_000 });
        return page;
    }

    private static async Task NewNoteAsync(IPage page, string pet)
    {
        await page.ClickAsync("#start-new");
        await page.FillAsync("#new-pet", pet);
        await page.FillAsync("#new-born", "2017-03");
        await page.ClickAsync("#new .main");
        await page.WaitForSelectorAsync(".cm-content");
        await page.ClickAsync(".cm-content");
    }

    /// <summary>The text as the browser keeps it.</summary>
    private static async Task<string> NoteAsync(IPage page)
    {
        await page.GetByText("kept on this device").WaitForAsync();
        return await page.EvaluateAsync<string>(
            """
            () => new Promise((resolve) => {
              indexedDB.open('hnote').onsuccess = (opened) => {
                opened.target.result.transaction('notes').objectStore('notes').getAll().onsuccess = (found) => resolve(found.target.result[0].text);
              };
            })
            """);
    }

    private static async Task AssertAccessibleAsync(IPage page, string where)
    {
        // the frame may run no scripts, so nothing answers in it; the page has tests of its own
        AxeResult result = await page.RunAxe(new AxeRunOptions { Iframes = false });
        Assert.True(result.Violations.Length == 0, where + "\n" + string.Join("\n", result.Violations.Select(violation => $"{violation.Id}: {violation.Help} at {string.Join("; ", violation.Nodes.Take(3).Select(node => node.Html))}")));
    }
}
