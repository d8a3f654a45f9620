using HealthNotes.Analysis.Findings;

namespace HealthNotes.Cli.Output;

/// <summary>Colour, only where a person looks: on a terminal, and not where NO_COLOR is set (no-color.org).</summary>
internal static class Terminal
{
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

    private static string Paint(string text, string code) => HasColour ? $"\u001b[{code}m{text}\u001b[0m" : text;
}
