using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>The entries before the current period: days and kinds, latest year first.</summary>
internal static class EarlierBuilder
{
    public static EarlierEntries Build(PageContext context)
    {
        Shown<DatedEntry> shown = Shown<DatedEntry>.Last(context.Period.Earlier, PageLimits.EarlierEntries);
        return new EarlierEntries(
            [.. shown.Items.GroupBy(entry => entry.Day?.Year).OrderByDescending(year => year.Key)
                .Select(year => new PetFact(year.Key is { } number ? $"{number:0000}" : PageWords.NoDay, [.. year.Select(Short)]))],
            shown.LeftOut,
            shown.LeftOut > 0 ? context.Period.Earlier[0].Day : null);
    }

    private static string Short(DatedEntry entry) => (entry.Day is { } day ? $"{day:MM-dd} " : "") + entry.Entry.Head.Kind;
}
