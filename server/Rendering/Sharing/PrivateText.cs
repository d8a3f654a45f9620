using System.Globalization;
using System.Text;

namespace HealthNotes.Rendering.Sharing;

/// <summary>Finds what reaches a person in free words: names that the note gives, telephone numbers, and addresses of mail and pages.</summary>
/// <param name="contacts">What the note says of people: names, places, numbers. Each word of it is private, in any case.</param>
/// <param name="open">Words that may stay: the pet's own name.</param>
internal sealed class PrivateText(IEnumerable<string> contacts, string open)
{
    /// <summary>What stands in the place of what was taken out.</summary>
    public const string Mark = "[left out]";

    /// <summary>So many digits, whatever stands between them, may be a telephone or chip number (common practice, no source).</summary>
    private const int LeastDigits = 6;

    /// <summary>Stands for the mark while the text is searched, so that no word of the mark is found.</summary>
    private const char Taken = '\uE000';

    private const int MostMarksBetween = 3;
    private const int DateLength = 10;
    private const int MonthLength = 7;
    private const int EarliestYear = 1980;

    /// <summary>A longer name is also found inside another word; a shorter one would be found in half of all words.</summary>
    private const int LongName = 5;

    private static readonly HashSet<string> Small = new(
        ["the", "a", "an", "of", "and", "at", "in", "on", "to", "for", "my", "our", "is", "no", "or", "by", "with", "from", "vet", "veterinarian", "clinic", "technician", "nurse", "owner", "dog", "cat"],
        StringComparer.OrdinalIgnoreCase);

    private readonly HashSet<string> names = new(contacts.SelectMany(Words).Where(IsName).Except(Words(open), StringComparer.OrdinalIgnoreCase), StringComparer.OrdinalIgnoreCase);

    /// <summary>The text with every one of them replaced by <see cref="Mark"/>.</summary>
    public string Masked(string text)
    {
        string[] parts = text.Split(' ');
        for (int index = 0; index < parts.Length; index++)
        {
            parts[index] = IsAddress(parts[index]) ? Taken.ToString() : parts[index];
        }

        return string.Join(' ', WithoutNumbers(string.Join(' ', parts)).Split(' ').Select(WithoutNames)).Replace(Taken.ToString(), Mark, StringComparison.Ordinal);
    }

    private static bool IsName(string word) => !Small.Contains(word) && (word.Any(char.IsLetter) ? word.Length >= 2 : word.Length >= 3);

    private static IEnumerable<string> Words(string text)
    {
        int start = -1;
        for (int at = 0; at <= text.Length; at++)
        {
            bool inside = at < text.Length && IsOfWord(text[at]);
            if (inside && start < 0)
            {
                start = at;
            }
            else if (!inside && start >= 0)
            {
                yield return text[start..at];
                start = -1;
            }
        }
    }

    private static bool IsOfWord(char c) => char.IsLetterOrDigit(c) || char.IsSurrogate(c) || char.GetUnicodeCategory(c) is UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark;

    /// <summary>An at-sign anywhere, with a dot or without; the address of a page.</summary>
    private static bool IsAddress(string part) => part.Contains('@', StringComparison.Ordinal) || part.Contains('＠', StringComparison.Ordinal)
        || part.Contains("://", StringComparison.Ordinal) || part.Contains("www.", StringComparison.OrdinalIgnoreCase);

    private string WithoutNames(string part)
    {
        if (names.Any(name => name.Length >= LongName && part.Contains(name, StringComparison.OrdinalIgnoreCase)))
        {
            return Taken.ToString();
        }

        var text = new StringBuilder();
        for (int at = 0; at < part.Length;)
        {
            int end = at;
            while (end < part.Length && IsOfWord(part[end]))
            {
                end++;
            }

            text.Append(end == at ? part[end..++end] : names.Contains(part[at..end]) ? Taken.ToString() : part[at..end]);
            at = end;
        }

        return text.ToString();
    }

    private static string WithoutNumbers(string line)
    {
        var text = new StringBuilder();
        int at = 0;
        while (at < line.Length)
        {
            if (DateAt(line, at) is > 0 and var length)
            {
                text.Append(line, at, length);
                at += length;
                continue;
            }

            (int end, int digits) = Run(line, at);
            if (digits >= LeastDigits)
            {
                text.Append(Taken);
                at = end;
            }
            else
            {
                int next = Math.Max(end, at + 1);
                text.Append(line, at, next - at);
                at = next;
            }
        }

        return text.ToString();
    }

    /// <summary>Digits with whatever stands between them that is not a letter, such as any dash there is; where they end, and how many there are.</summary>
    private static (int End, int Digits) Run(string line, int from)
    {
        int digits = 0;
        int end = from;
        for (int at = from; at < line.Length && !char.IsLetter(line[at]) && at - end < MostMarksBetween + 1 && DateAt(line, at) == 0; at++)
        {
            if (char.IsDigit(line[at]))
            {
                digits++;
                end = at + 1;
            }
            else if (digits == 0)
            {
                break;
            }
        }

        return (end, digits);
    }

    /// <summary>How long the date is that starts here, a day or a month; 0 where none does.</summary>
    private static int DateAt(string line, int at)
    {
        foreach ((string form, int length) in (ReadOnlySpan<(string, int)>)[("yyyy-MM-dd", DateLength), ("yyyy-MM", MonthLength)])
        {
            int end = at + length;
            if (end <= line.Length && (at == 0 || !IsOfNumber(line[at - 1])) && (end == line.Length || !IsOfNumber(line[end]))
                && DateOnly.TryParseExact(line.AsSpan(at, length), form, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date) && date.Year >= EarliestYear)
            {
                return length;
            }
        }

        return 0;
    }

    private static bool IsOfNumber(char c) => char.IsDigit(c) || c is '-' or '/';
}
