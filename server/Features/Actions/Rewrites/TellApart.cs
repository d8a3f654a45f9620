using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Courses;

namespace HealthNotes.Features.Actions.Rewrites;

/// <summary>
/// Gives tags to what is found at one place and not told apart.
/// <para>
/// Several lines of one word at one place in one entry, without tags and without times that tell them apart, are several
/// lumps: they get <c>@a</c>, <c>@b</c> and so on, in the order they are written. Other entries that have as many lines
/// there get the same tags only by an offer of its own, for the order may not be the same.
/// </para>
/// <para>
/// A remark (a comment, or free text below) that is repeated word for word at lines of one place is what tells that lump
/// from others: it becomes a tag of its first telling words, on all lines with the remark. Where the place never has two
/// lines in one entry and no other remark, there is but one lump, and all its lines get the tag. The remark itself stays.
/// </para>
/// </summary>
internal static class TellApart
{
    private const int MostTold = 4;

    public static IEnumerable<ActionOffer> At(Document document, int line)
    {
        if (document.Syntax.Lines[line].Items.OfType<Finding>().FirstOrDefault(found => found.Tag is null) is not { } here)
        {
            yield break;
        }

        List<Noted> place = [.. document.Record.All(here.Word.Word).SelectMany(course => course.Lines).Where(other => other.Item is Finding found && found.Site.Name == here.Site.Name).OrderBy(other => other.Line)];
        HashSet<string> used = [.. place.Select(other => other.Item!.Tag?.Name).OfType<string>()];
        List<IGrouping<int, Noted>> entries = [.. place.Where(other => other.Item!.Tag is null && document.Syntax.Lines[other.Line].Problems.Length == 0).GroupBy(other => document.Note.EntryIndexAt(other.Line))];
        foreach (ActionOffer offer in Several(entries, line, here, used).Concat(Remarked(document, entries, line, here, used)))
        {
            yield return offer;
        }
    }

    private static IEnumerable<ActionOffer> Several(List<IGrouping<int, Noted>> entries, int line, Finding here, HashSet<string> used)
    {
        if (entries.Find(entry => entry.Any(other => other.Line == line)) is not { } lines || lines.Count() is < 2 or > MostTold
            || lines.Select(other => other.Item!.Head.Time).Distinct().Count() > 1)
        {
            yield break;
        }

        string[] tags = [.. Enumerable.Range(0, 26).Select(index => ((char)('a' + index)).ToString()).Where(tag => !used.Contains(tag)).Take(lines.Count())];
        string named = string.Join(", ", tags.Select(tag => "@" + tag));
        yield return Rewrite.Offer("tell-apart", $"Tell {tags.Length} at {here.Site.Name} apart in this entry: {named}", [.. Tagged(lines, tags)]);
        List<IGrouping<int, Noted>> alike = [.. entries.Where(entry => entry.Count() == tags.Length)];
        if (alike.Count > 1)
        {
            yield return Rewrite.Offer("tell-apart", $"Tell {tags.Length} at {here.Site.Name} apart in {alike.Count} entries, in the order written: {named}",
                [.. alike.SelectMany(entry => Tagged(entry, tags))]);
        }
    }

    private static IEnumerable<ActionOffer> Remarked(Document document, List<IGrouping<int, Noted>> entries, int line, Finding here, HashSet<string> used)
    {
        if (Remark.At(document, line) is not { } remark)
        {
            yield break;
        }

        List<(Noted Line, string? Remark)> all = [.. entries.SelectMany(entry => entry).Select(other => (other, Remark.At(document, other.Line)))];
        List<Noted> same = [.. all.Where(other => remark.Equals(other.Remark, StringComparison.OrdinalIgnoreCase)).Select(other => other.Line)];
        if (same.Select(other => document.Note.EntryIndexAt(other.Line)).Distinct().Count() < 2 || Remark.Tag(remark) is not { } tag || used.Contains(tag))
        {
            yield break;
        }

        bool one = entries.TrueForAll(entry => entry.Count() == 1) && all.TrueForAll(other => other.Remark is null || remark.Equals(other.Remark, StringComparison.OrdinalIgnoreCase));
        List<Noted> its = one ? [.. all.Select(other => other.Line)] : same;
        yield return Rewrite.Offer("tag-remark", $"Tag this {here.Word.Word} `@{tag}` in its {its.Count} lines", [.. its.Select(other => Put(other, tag))]);
    }

    private static IEnumerable<DocumentEdit> Tagged(IEnumerable<Noted> lines, string[] tags) => lines.Select((line, index) => Put(line, tags[index]));

    private static DocumentEdit Put(Noted line, string tag) => DocumentEdit.Insert(line.Line, line.Item!.Site!.Span.End, " @" + tag);
}
