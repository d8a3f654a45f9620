using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Features.Actions.Rewrites;

/// <summary>A line about something found on the body, with its entry.</summary>
internal sealed record FoundLine(Entry Entry, int Line, Finding Finding)
{
    /// <summary>The site and the tag, as they are written: <c>L-flank @lower</c>.</summary>
    public string Name => NameOf(Finding.Site, Finding.Tag);

    /// <summary>True where the line says that it is there no longer.</summary>
    public bool IsGone => Completion.Places.EarlierFindings.IsGone(Finding);

    /// <summary>A site and a tag, as they are written.</summary>
    public static string NameOf(Site site, FindingTag? tag) => tag is null ? site.Name : $"{site.Name} @{tag.Name}";
}

/// <summary>The lumps of a note: each has a site, and a tag where there are several at one site.</summary>
internal static class KnownLumps
{
    /// <summary>Every line of a word (<c>lump</c>, <c>wound</c>, <c>pain-site</c>) in file order.</summary>
    public static IEnumerable<FoundLine> Lines(Document document, string word)
    {
        foreach (Entry entry in document.Note.Entries)
        {
            foreach (Placed<NoteItem> item in entry.Items)
            {
                if (item.Value is Finding finding && finding.Word.Word == word)
                {
                    yield return new FoundLine(entry, item.Line, finding);
                }
            }
        }
    }

    /// <summary>
    /// The lumps that were there when last noted before an entry, in the order they were first noted: those the entry does
    /// not name yet. An entry without a date counts by its place in the file.
    /// </summary>
    public static List<FoundLine> NotIn(Document document, Entry? entry, DateOnly? day)
    {
        var last = new Dictionary<string, FoundLine>();
        var order = new List<string>();
        foreach (FoundLine line in Lines(document, "lump"))
        {
            bool before = line.Entry.Line != entry?.Line && (line.Entry.Head.Date is { } date && day is { } until ? date <= until : entry is null || line.Line < entry.Line);
            if (!before)
            {
                continue;
            }

            if (!last.TryGetValue(line.Name, out FoundLine? known))
            {
                order.Add(line.Name);
            }

            if (known is null || !(line.Entry.Head.Date < known.Entry.Head.Date))
            {
                last[line.Name] = line;
            }
        }

        HashSet<string> named = [.. (entry?.Items ?? []).Select(item => Named(item.Value)).OfType<string>()];
        return [.. order.Where(name => !named.Contains(name) && !last[name].IsGone && CanBe(document, name)).Select(name => last[name])];
    }

    /// <summary>False for a lump at a place that cannot be, such as a fifth gland in a cat: its line is to be mended, not repeated.</summary>
    public static bool CanBe(Document document, string name) =>
        new Trial(document.Note.Opening.Species, "check", document.Today).Read("lump " + name).Errors.Length == 0;

    private static string? Named(NoteItem item) => item switch
    {
        Finding { Word.Word: "lump" } lump => FoundLine.NameOf(lump.Site, lump.Tag),
        Skipped { Item.Word: "lump", Site: { } site } skipped => FoundLine.NameOf(site, skipped.Tag),
        _ => null,
    };
}
