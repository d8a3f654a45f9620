using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Courses;

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
        Course course = at.Document.Record.Of(new CourseKey(what, tag is null ? site : $"{site} @{tag}"));
        if (course.Lines.FirstOrDefault(line => line.Item is Finding) is { } first)
        {
            yield return first.Line == at.Index ? "First noted here." : $"**First noted:** {DayWords.Iso(first.Day)}, {DayWords.From(at.Document.Today, first.Day)} (line {first.Line + 1}).";
        }

        Noted[] sizes = [.. course.Lines.Where(line => line.Reading is not null && line.Line < at.Index)];
        if (sizes.Length > 0)
        {
            string cut = sizes.Length > Most ? "… " : "";
            yield return $"**Sizes so far:** {cut}{string.Join(" · ", sizes.TakeLast(Most).Select(size => $"{DayWords.Iso(size.Day)} {ValuesBefore.Show(size.Reading!.Value, at.Us)}"))}.";
        }
    }
}
