using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using HealthNotes.Files;
using HealthNotes.Rendering;

namespace HealthNotes.Cli.Files;

/// <summary>Prints a page to PDF with a Chromium that is installed; the page itself says the size of its paper.</summary>
internal static class PdfPrinter
{
    /// <summary>Names another browser of the Chromium family.</summary>
    public const string Variable = "HNOTE_CHROMIUM";

    private const int PatienceMs = 120_000;
    private static readonly string[] Names = ["chromium", "chromium-browser", "chrome", "google-chrome", "google-chrome-stable"];

    /// <summary>The bytes of the PDF.</summary>
    /// <param name="html">The page.</param>
    /// <param name="today">The day that the PDF says it was made on: the same page and day give the same bytes.</param>
    /// <exception cref="RefusedException">No browser is there, or it did not print.</exception>
    public static byte[] Print(string html, DateOnly today)
    {
        string browser = Find() ?? throw new RefusedException(
            $"a PDF needs Chromium, and none was found. Install it (Debian: apt install chromium), or name one in {Variable}, or make an HTML page and print it from your browser");
        DirectoryInfo folder = Directory.CreateTempSubdirectory("hnote-pdf-");
        try
        {
            string page = Path.Combine(folder.FullName, "page.html");
            string pdf = Path.Combine(folder.FullName, "page.pdf");
            File.WriteAllText(page, html);
            Run(browser, folder.FullName, page, pdf);
            return File.Exists(pdf) ? [.. OnDay(File.ReadAllBytes(pdf), today), .. Encoding.ASCII.GetBytes(PageMark.Pdf)] : throw new RefusedException($"{browser} did not print the page");
        }
        finally
        {
            TryDelete(folder);
        }
    }

    private static string? Find()
    {
        if (Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } named)
        {
            return File.Exists(named) ? named : throw new RefusedException($"{Variable} names {named}, and there is no such file");
        }

        string ending = OperatingSystem.IsWindows() ? ".exe" : "";
        return (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
            .SelectMany(_ => Names, (folder, name) => Path.Combine(folder, name + ending))
            .FirstOrDefault(File.Exists);
    }

    private static void Run(string browser, string folder, string page, string pdf)
    {
        var start = new ProcessStartInfo(browser) { RedirectStandardError = true, RedirectStandardOutput = true, RedirectStandardInput = true };
        string[] arguments =
        [
            "--headless", "--disable-gpu", "--no-first-run", "--disable-extensions", "--disable-background-networking", "--disable-component-update", "--disable-sync",
            $"--user-data-dir={Path.Combine(folder, "profile")}", "--no-pdf-header-footer", $"--print-to-pdf={pdf}", new Uri(page).AbsoluteUri,
        ];
        foreach (string argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        // Chromium's own sandbox refuses to start for root; what it opens is our own page, which holds no script.
        if (OperatingSystem.IsLinux() && Environment.UserName == "root")
        {
            start.ArgumentList.Insert(0, "--no-sandbox");
        }

        try
        {
            using Process process = Process.Start(start) ?? throw new RefusedException($"{browser} did not start");
            process.StandardInput.Close();
            process.BeginErrorReadLine();
            process.BeginOutputReadLine();
            if (!process.WaitForExit(PatienceMs))
            {
                process.Kill(entireProcessTree: true);
                throw new RefusedException($"{browser} took longer than {PatienceMs / 1_000} seconds, and was stopped");
            }
        }
        catch (Win32Exception)
        {
            throw new RefusedException($"{browser} can't be started");
        }
    }

    /// <summary>
    /// The two moments that a PDF names, set to the start of the day with no time zone, and the name of the program and system that
    /// printed it, blanked; the lengths stay, so that every offset in the file holds.
    /// </summary>
    private static byte[] OnDay(byte[] pdf, DateOnly today)
    {
        string moment = today.ToString("yyyyMMdd", CultureInfo.InvariantCulture) + "000000+00'00'";
        foreach (string name in new[] { "/CreationDate (D:", "/ModDate (D:" })
        {
            Overwrite(pdf, name, length => moment.Length >= length ? moment[..length] : moment.PadRight(length));
        }

        Overwrite(pdf, "/Creator (", length => "hnote".PadRight(length)[..length]);
        return pdf;
    }

    /// <summary>Overwrites the string behind a name, up to its bracket.</summary>
    private static void Overwrite(byte[] pdf, string name, Func<int, string> text)
    {
        int start = pdf.AsSpan().IndexOf(Encoding.ASCII.GetBytes(name));
        if (start < 0)
        {
            return;
        }

        start += name.Length;
        int end = start;
        while (end < pdf.Length && pdf[end] != (byte)')')
        {
            end += pdf[end] == (byte)'\\' ? 2 : 1;
        }

        if (end < pdf.Length)
        {
            Encoding.ASCII.GetBytes(text(end - start)).CopyTo(pdf.AsSpan(start));
        }
    }

    private static void TryDelete(DirectoryInfo folder)
    {
        try
        {
            folder.Delete(recursive: true);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // the browser may still hold a file of its profile; the folder is among the temporary ones
        }
    }
}
