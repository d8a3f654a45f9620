using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record;
using HealthNotes.Record.Checks;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Lumps;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Rules;

/// <summary>Lumps that were there and that the latest full check does not mention.</summary>
public sealed class LumpNotSeenRule : ICourseRule
{
    private const int NamedAtMost = 6;

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("lump-not-seen", "lumps-left", 1);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key == CourseKey.Note;

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        ImmutableArray<Course> lumps = at.All("lump");
        if (lumps.IsEmpty || LastFull(at.Of(CourseKey.WholeChecks), at.Facts.Pet) is not { } check)
        {
            yield break;
        }

        int oldest = check.Day.DayNumber - (int)LumpNumbers.Default["left-days"];
        ImmutableArray<LumpLife> left = [.. lumps
            .Where(lump => lump.Last is { } last && last.Day < check.Day && last.Day.DayNumber >= oldest && LumpWords.End(last.Item) is null)
            .Select(lump => LumpLife.Of(lump)!)
            .Where(life => !IsMentioned(life, check.Entry!))
            .OrderBy(life => life.Name, StringComparer.Ordinal)];
        if (left.IsEmpty)
        {
            yield break;
        }

        string more = left.Length > NamedAtMost ? $" and {left.Length - NamedAtMost} more" : "";
        string names = string.Join(", ", left.Take(NamedAtMost).Select(life => Describe(life, at.Facts.Pet.ShowUsUnits))) + more;
        yield return this.At(FindingLevel.Info, check.Line, check.Head.DateSpan,
            $"Noted before, but not in this check: {(left.Length == 1 ? "lump" : "lumps")} {names}. If it is no longer there, write it with `gone`; if it was not looked at, with `skip`.",
            LumpNumbers.Default.SourceOf("left-days"), left.Select(life => life.Last.Line));
    }

    private static string Describe(LumpLife life, bool us) =>
        $"{life.Name} ({(life.LastSize is { } size ? SizeWording.Show(size, us) + ", " : "")}last {life.Last.Day:yyyy-MM-dd})";

    /// <summary>The latest check that looked at the whole animal.</summary>
    private static Noted? LastFull(Course checks, PetProfile pet)
    {
        ImmutableHashSet<string> items = [.. CheckItems.For(pet).Select(item => item.Word.Word)];
        for (int index = checks.Lines.Length - 1; index >= 0; index--)
        {
            if (IsFull(checks.Lines[index].Entry!, items))
            {
                return checks.Lines[index];
            }
        }

        return null;
    }

    /// <summary>It says <c>else ok</c>, names half of the items at least, or notes a lump.</summary>
    private static bool IsFull(Entry check, ImmutableHashSet<string> items)
    {
        var named = new HashSet<string>();
        foreach ((_, NoteItem item) in check.Items)
        {
            if (item is RestOk or Finding { Word.Word: "lump" })
            {
                return true;
            }

            if (item is Reading or Examined && items.Contains(item.Word.Word))
            {
                named.Add(item.Word.Word);
            }
        }

        return named.Count * 2 >= items.Count;
    }

    /// <summary>
    /// True when the check has the lump, leaves it out by a <c>skip</c>, or looked at its place. A lump without a tag and
    /// one with a tag in the same place may be the same one.
    /// </summary>
    private static bool IsMentioned(LumpLife life, Entry check)
    {
        string? site = life.Site?.Name;
        foreach ((_, NoteItem item) in check.Items)
        {
            bool mentioned = item switch
            {
                Finding { Word.Word: "lump" } lump => lump.Site.Name == site && (lump.Tag?.Name == life.Tag || lump.Tag is null || life.Tag is null),
                Skipped { Item.Word: "lump" or "skin" } skipped => skipped.Site is null || skipped.Site.Name == site,
                Examined examined => examined.Site?.Name == site,
                _ => false,
            };
            if (mentioned)
            {
                return true;
            }
        }

        return false;
    }
}
