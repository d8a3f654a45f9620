using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Readings;

namespace HealthNotes.Features.Hover;

/// <summary>On a lump, wound or sore place and its tag: since when it is known, and its sizes so far.</summary>
internal static class TagHover
{
    private const int Most = 8;

    public static string? At(HoverLine at)
    {
        (Site? site, FindingTag? tag) = (at.Item?.Site, at.Item?.Tag);
        string what = (at.Item?.About ?? at.Item?.Word)?.Word ?? "";
        return tag is null || site is null ? null : Md.Join([$"**@{Md.Escape(tag.Name)}** tells this {Md.Escape(what)} apart from others at {site.Name}.", .. History(at, what, site.Name, tag.Name)]);
    }

    /// <summary>When something at a place was first noted, and its sizes up to this line.</summary>
    public static IEnumerable<string> History(HoverLine at, string what, string site, string? tag)
    {
        if (FirstSeen(at, what, site, tag) is { } first)
        {
            yield return first;
        }

        NoteReading[] sizes = [.. at.Document.Analysis.Record.Readings.Where(reading =>
            reading.Line < at.Index && reading.Day is not null && reading.What == what && reading.Site == site && Same(reading.Tag, tag))];
        if (sizes.Length > 0)
        {
            string cut = sizes.Length > Most ? "… " : "";
            yield return $"**Sizes so far:** {cut}{string.Join(" · ", sizes.TakeLast(Most).Select(size => $"{DayWords.Iso(size.Day!.Value)} {Earlier.Show(size.Value, at.Us)}"))}.";
        }
    }

    private static string? FirstSeen(HoverLine at, string what, string site, string? tag)
    {
        foreach (Entry entry in at.Document.Note.Entries)
        {
            foreach (Placed<NoteItem> item in entry.Items)
            {
                if (item.Value is Finding finding && finding.Word.Word == what && finding.Site.Name == site && Same(finding.Tag?.Name, tag))
                {
                    string when = entry.Head.Date is { } day ? $"{DayWords.Iso(day)}, {DayWords.From(at.Document.Today, day)}" : "on a day that is not written";
                    return item.Line == at.Index ? "First noted here." : $"**First noted:** {when} (line {item.Line + 1}).";
                }
            }
        }

        return null;
    }

    private static bool Same(string? left, string? right) => string.Equals(left, right, StringComparison.OrdinalIgnoreCase);
}
