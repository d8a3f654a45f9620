using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Record.Lumps;

/// <summary>Whether free words name a lump, a wound or a node at a place: <c>known fatty lump L-flank, needled 2024-09</c>.</summary>
public static class NamedSite
{
    private static readonly char[] Breaks = [' ', '\t', ',', ';', ':', '(', ')'];

    /// <summary>
    /// True when the text has the part's word and the site, as <c>L-flank</c> or <c>left flank</c>. A tag in the text has to
    /// be that of the finding; a text without one speaks of every tag there.
    /// </summary>
    public static bool Names(string text, LineWord part, Site? site, string? tag)
    {
        string[] said = WordsOf(text);
        return part.Synonyms.Append(part.Word).Any(name => Says(said, name) || Says(said, name + "s"))
            && (site is null || Says(said, site.Name) || (SaysRegion(said, text, site) && SaysSide(said, site.Side)))
            && (Array.Find(said, word => word.StartsWith('@')) is not { } named || named.AsSpan(1).Equals(tag, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>True when the text names the other side, or another tooth, and not this one: <c>cataract in the left eye</c> says nothing of the right.</summary>
    public static bool NamesElsewhere(string text, Site? site)
    {
        string[] said = WordsOf(text);
        if (site is { Region: null, Number: { } tooth })
        {
            string[] numbers = Array.FindAll(said, word => word.Length == 3 && word.All(char.IsAsciiDigit));
            return numbers.Length > 0 && !numbers.Contains(tooth.ToString(System.Globalization.CultureInfo.InvariantCulture));
        }

        return site is not null && OtherSide.Of(site.Side) is { } other && SaysSideOrStarts(said, other) && !SaysSideOrStarts(said, site.Side) && !Says(said, "both");
    }

    /// <summary>True when the text has the word, in whichever case.</summary>
    public static bool Says(string text, string word) => Says(WordsOf(text), word);

    private static string[] WordsOf(string text) => [.. text.Split(Breaks, StringSplitOptions.RemoveEmptyEntries).Select(word => word.TrimEnd('.'))];

    private static bool SaysRegion(string[] said, string text, Site site) => site.Region is { } region
        && region.Synonyms.Append(region.Word).Any(name =>
            name.Contains(' ') ? text.Contains(name, StringComparison.OrdinalIgnoreCase) : Says(said, name + site.Number) || (site.Number is null && Says(said, name)));

    /// <summary>The side as a word, or at the start of a site: <c>L-ear</c>.</summary>
    private static bool SaysSideOrStarts(string[] said, Side side) =>
        SaysSide(said, side) || said.Any(word => word.StartsWith(side + "-", StringComparison.OrdinalIgnoreCase));

    private static bool SaysSide(string[] said, Side side) => side switch
    {
        Side.None or Side.Mid => true,
        Side.L => Says(said, "L") || Says(said, "left"),
        Side.R => Says(said, "R") || Says(said, "right"),
        Side.Both => Says(said, "both"),
        Side.Front => Says(said, "front") || Says(said, "fore"),
        Side.Hind => Says(said, "hind") || Says(said, "back"),
        Side.LF => Says(said, "LF") || (Says(said, "left") && (Says(said, "front") || Says(said, "fore"))),
        Side.RF => Says(said, "RF") || (Says(said, "right") && (Says(said, "front") || Says(said, "fore"))),
        Side.LH => Says(said, "LH") || (Says(said, "left") && (Says(said, "hind") || Says(said, "back"))),
        _ => Says(said, "RH") || (Says(said, "right") && (Says(said, "hind") || Says(said, "back"))),
    };

    private static bool Says(string[] said, string word) => said.Contains(word, StringComparer.OrdinalIgnoreCase);
}
