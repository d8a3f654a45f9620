using System.Text;
using HealthNotes.Analysis.Findings;
using HealthNotes.Files;

namespace HealthNotes.Cli.Output;

/// <summary>
/// The one place that prints and asks. Nothing of a note, a name or an argument drives the terminal. Colour only where a person looks:
/// on a terminal, and not where NO_COLOR is set (no-color.org).
/// </summary>
internal static class Terminal
{
    /// <summary>Standard output, for text.</summary>
    public static TextWriter Output { get; } = new SafeWriter(Console.Out);

    /// <summary>Standard error.</summary>
    public static TextWriter Error { get; } = new SafeWriter(Console.Error);

    /// <summary>True where a person can be asked.</summary>
    public static bool CanAsk => !Console.IsInputRedirected && !Console.IsErrorRedirected;

    /// <summary>True where input comes from a file or another program.</summary>
    public static bool IsInputRedirected => Console.IsInputRedirected;

    /// <summary>Standard output, for the bytes of a result that is too long to be kept.</summary>
    public static Stream OpenOutput() => Console.OpenStandardOutput();

    /// <summary>Standard input, for a note.</summary>
    public static Stream OpenInput() => Console.OpenStandardInput();

    /// <summary>The answer of a person; null at the end of input.</summary>
    public static string? ReadLine() => Console.ReadLine();

    /// <summary>Writes the bytes of a result: exactly to a file or another program, safely to a person.</summary>
    public static void WriteResult(ReadOnlySpan<byte> bytes)
    {
        if (!Console.IsOutputRedirected)
        {
            Output.Write(Encoding.UTF8.GetString(bytes));
            return;
        }

        Output.Flush();
        using Stream standard = Console.OpenStandardOutput();
        standard.Write(bytes);
    }

    /// <summary>Writes the text of a note: exactly to a file or another program, safely to a person.</summary>
    public static void WriteNote(string text)
    {
        if (Console.IsOutputRedirected)
        {
            Console.Out.Write(text);
        }
        else
        {
            Output.Write(text);
        }
    }

    /// <summary>Writes JSON: what is not shown as it is stands there as an escape, which says the same.</summary>
    public static void WriteJson(string json) => Console.Out.WriteLine(
        string.Concat(json.Select(c => ShownText.IsControl(c) && c is not ('\n' or '\r') ? $"\\u{(int)c:x4}" : c.ToString())));

    /// <summary>Puts a text in place of the last line of standard error, where a person looks.</summary>
    public static void ReplaceLine(string text)
    {
        if (!Console.IsErrorRedirected)
        {
            Console.Error.Write("\r\u001b[2K" + ShownText.Of(text));
        }
    }

    private const int NarrowestWrapped = 40;

    /// <summary>True when colour may be written to standard output.</summary>
    public static bool HasColour { get; } = !Console.IsOutputRedirected
        && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"))
        && Environment.GetEnvironmentVariable("TERM") is not ("dumb" or null or "");

    /// <summary>The text in the colour of a level.</summary>
    public static string InColour(string text, FindingLevel level) => level switch
    {
        FindingLevel.Urgent => Paint(text, "1;97;41"),
        FindingLevel.Call => Paint(text, "1;31"),
        FindingLevel.Watch => Paint(text, "33"),
        FindingLevel.Error => Paint(text, "1;35"),
        _ => Paint(text, "36"),
    };

    /// <summary>The text, less prominent.</summary>
    public static string Faint(string text) => Paint(text, "2");

    /// <summary>The text, more prominent.</summary>
    public static string Strong(string text) => Paint(text, "1");

    /// <summary>Where lines are broken and whether they have colour, in few letters.</summary>
    public static string Look => $"{Width()} {HasColour}";

    /// <summary>The text in lines that fit the terminal, broken at blanks; one line where it goes to a file.</summary>
    public static IEnumerable<string> Wrap(string text, int indent)
    {
        int width = Width() - indent;
        while (text.Length > width)
        {
            int blank = text.LastIndexOf(' ', width);
            if (blank <= 0)
            {
                break;
            }

            yield return text[..blank];
            text = text[(blank + 1)..];
        }

        yield return text;
    }

    /// <summary>The columns of the terminal; without end where the output goes to a file.</summary>
    public static int Width()
    {
        try
        {
            return Console.IsOutputRedirected || Console.WindowWidth < NarrowestWrapped ? int.MaxValue : Console.WindowWidth;
        }
        catch (IOException)
        {
            return int.MaxValue;
        }
    }

    private static string Paint(string text, string code) => HasColour ? $"{SafeWriter.ColourStart}{code}{SafeWriter.ColourEnd}{text}{SafeWriter.ColourStart}0{SafeWriter.ColourEnd}" : text;
}
