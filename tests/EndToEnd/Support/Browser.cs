using Microsoft.Playwright;

namespace HealthNotes.EndToEnd.Support;

/// <summary>One browser for all tests of a class, started by the first test that asks for it. It reaches no network of its own accord.</summary>
public sealed class Browser : IAsyncLifetime
{
    private static readonly string[] Arguments =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
        "--disable-component-update", "--disable-sync",
    ];

    private IPlaywright? playwright;
    private IBrowser? browser;

    /// <summary>Where pages and screenshots of this run lie.</summary>
    public string Folder { get; } =
        Environment.GetEnvironmentVariable("HNOTE_SCREENSHOTS") ?? Path.Combine(Path.GetTempPath(), $"hnote-pages-{Environment.ProcessId}");

    public Task InitializeAsync()
    {
        Directory.CreateDirectory(Folder);
        return Task.CompletedTask;
    }

    public async Task<IBrowser> OpenAsync()
    {
        string chromium = ExternalTool.Chromium;
        playwright ??= await Playwright.CreateAsync();
        return browser ??= await playwright.Chromium.LaunchAsync(new() { ExecutablePath = chromium, Args = Arguments });
    }

    public async Task DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.DisposeAsync();
        }

        playwright?.Dispose();
    }
}
