using System.Globalization;
using System.Text;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>A finding's sentence as prose: no codes of the notation, no numbers of lines, days as people write them.</summary>
internal static class FindingText
{
    /// <summary>The text without its marks; a site such as <c>RH-thigh</c> becomes <c>right hind thigh</c>.</summary>
    public static string Of(string found, DateOnly today) =>
        InWords(WithoutLineNumbers(NoteText.Block(found).Replace('\n', ' ')).Replace("`", "", StringComparison.Ordinal), today).TrimEnd('.');

    /// <summary>An owner's own words, letter by letter but for sites and days.</summary>
    public static string InWords(string text, DateOnly today)
    {
        var prose = new StringBuilder();
        foreach (string word in text.Split(' '))
        {
            string bare = word.Trim(',', '.', ';', ':', '(', ')');
            string said = bare.Length == 0 ? "" : Said(bare, today);
            prose.Append(prose.Length == 0 ? "" : " ").Append(said.Length == 0 || said == bare ? word : word.Replace(bare, said, StringComparison.Ordinal));
        }

        return prose.ToString();
    }

    private static string Said(string word, DateOnly today)
    {
        if (DateOnly.TryParseExact(word, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day))
        {
            return PageWords.On(day, today);
        }

        if (DateOnly.TryParseExact(word, "yyyy-MM", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly month))
        {
            return month.ToString("MMM yyyy", CultureInfo.InvariantCulture);
        }

        int dash = word.IndexOf('-', StringComparison.Ordinal);
        if (dash < 0)
        {
            return Enum.TryParse(word, out Side alone) && alone is not (Side.None or Side.Mid) && !char.IsAsciiDigit(word[0]) && char.IsUpper(word[0]) && word.Length <= 2 ? PageWords.NameOf(alone) : word;
        }

        string place = word[(dash + 1)..];
        string region = place.TrimEnd('0', '1', '2', '3', '4', '5', '6', '7', '8', '9');
        return Enum.TryParse(word[..dash], ignoreCase: true, out Side side) && side != Side.None && !char.IsAsciiDigit(word[0]) && NoteVocabulary.Default.Regions.Find(region) is not null
            ? string.Join(' ', new[] { PageWords.NameOf(side), region.Replace('-', ' '), place[region.Length..] }.Where(part => part.Length > 0))
            : NoteVocabulary.Default.Regions.Find(word) is not null || NoteVocabulary.Default.LineWords.Find(word) is not null ? word.Replace('-', ' ') : word;
    }

    /// <summary>Takes out <c>(line 5: …)</c> and <c>(line 5)</c>: the appendix has the lines.</summary>
    private static string WithoutLineNumbers(string text)
    {
        int at;
        while ((at = text.IndexOf("(line ", StringComparison.Ordinal)) >= 0 && text.IndexOf(')', at) is >= 0 and int end)
        {
            text = text[..at].TrimEnd() + text[(end + 1)..];
        }

        return text;
    }
}
