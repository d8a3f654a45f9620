using System.Globalization;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Completion.Places;

/// <summary>A place that a word was used with before, and how it was when last noted.</summary>
/// <param name="Site">The site's name.</param>
/// <param name="Tag">The tag without its <c>@</c>; null when there was none.</param>
/// <param name="Size">The size as it is written; empty when none was.</param>
/// <param name="Day">The day it was last noted.</param>
/// <param name="Gone">True when it was noted as gone.</param>
/// <param name="Found">The site.</param>
internal sealed record EarlierFinding(string Site, string? Tag, string Size, DateOnly? Day, bool Gone, Site Found)
{
    /// <summary>The site and the tag, as they are written.</summary>
    public string Name => Tag is null ? Site : $"{Site} @{Tag}";

    /// <summary>How it was, and when: <c>12mm on 2026-10-04</c>.</summary>
    public string Last
    {
        get
        {
            string day = Day is { } date ? "on " + date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : "before";
            return Gone ? $"noted as gone {day}" : Size.Length == 0 ? $"last noted {day}" : $"{Size} {day}";
        }
    }
}

/// <summary>Where a word was used before in this note.</summary>
internal static class EarlierFindings
{
    /// <summary>The most places that are looked for.</summary>
    private const int MostPlaces = 40;

    /// <summary>The places of earlier entries, the latest first, each as it was last noted.</summary>
    /// <param name="note">What is around the line.</param>
    /// <param name="word">The word.</param>
    /// <param name="thisEntryToo">True when the entry of the line is an earlier one: another is about to begin.</param>
    public static List<EarlierFinding> Of(NoteAround note, LineWord word, bool thisEntryToo = false)
    {
        var found = new List<EarlierFinding>();
        var names = new HashSet<(Side, Region?, int?, string?)>();
        int left = Lookback.Lines;
        foreach (Entry entry in thisEntryToo && note.Entry is { } here ? note.EarlierEntries().Prepend(here) : note.EarlierEntries())
        {
            if (found.Count >= MostPlaces || (left -= entry.Items.Length) < 0)
            {
                break;
            }

            for (int index = entry.Items.Length - 1; index >= 0; index--)
            {
                NoteItem item = entry.Items[index].Value;
                if (ReferenceEquals(item.Word, word) && item.Site is { } site && names.Add((site.Side, site.Region, site.Number, item.Tag?.Name)))
                {
                    string size = item.Value is null or Score ? "" : ValuePrinter.Print(item.Value);
                    bool gone = IsGone(item);
                    found.Add(new EarlierFinding(site.Name, item.Tag?.Name, size, entry.Head.Date, gone, site));
                }
            }
        }

        return found;
    }

    /// <summary>The places that the line's own entry names for a word already.</summary>
    public static HashSet<string> InThisEntry(NoteAround note, LineWord word)
    {
        var names = new HashSet<string>();
        foreach (Placed<NoteItem> item in note.OtherItems())
        {
            if (ReferenceEquals(item.Value.Word, word) && item.Value.Site is { } site)
            {
                names.Add(item.Value.Tag is { } tag ? $"{site.Name} @{tag.Name}" : site.Name);
            }
        }

        return names;
    }

    /// <summary>True where a line says that what it is about is there no longer.</summary>
    public static bool IsGone(NoteItem item) => item is NotSeen || item.Words.Any(described => described.Word.Word is "gone" or "resolved" or "removed");
}
