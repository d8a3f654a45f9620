using System.Collections.Immutable;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Blocks;

/// <summary>A block of a page. One tree of them makes a page; the writers of HTML and Markdown only write it down.</summary>
internal abstract record Block
{
    /// <summary>A paragraph; null when it is empty.</summary>
    public static Block? Paragraph(Prose text) => text.IsEmpty ? null : new Paragraph(text);

    /// <summary>A flat list; null when nothing is on it.</summary>
    public static Block? List(IEnumerable<Prose> items, bool numbered = false) => List(items.Select(item => new ListItem(item, [])), numbered);

    /// <summary>A list; null when nothing is on it.</summary>
    public static Block? List(IEnumerable<ListItem> items, bool numbered = false) => new BulletList([.. items], numbered) is { Items.IsEmpty: false } list ? list : null;

    /// <summary>A table; null without rows. Columns that are empty in every row are left out, except the first, which names the row.</summary>
    public static Block? Table(string caption, string[] headers, IReadOnlyList<Prose[]> rows)
    {
        int[] columns = [.. Enumerable.Range(0, headers.Length).Where(column => column == 0 || rows.Any(row => !row[column].IsEmpty))];
        return rows.Count == 0 ? null : new Table(caption, [.. columns.Select(column => headers[column])], [.. rows.Select(row => columns.Select(column => row[column]).ToImmutableArray())]);
    }

    /// <summary>A line that says how many were left out; null when none were.</summary>
    public static Block? LeftOut(int count) => count > 0 ? new Paragraph(Prose.Small(PageWords.LeftOut(count))) : null;
}

/// <summary>A paragraph; its class is that of its style.</summary>
internal sealed record Paragraph(Prose Text, string? Class = null) : Block;

/// <summary>Blocks that stand beside each other.</summary>
internal sealed record Group(string Class, ImmutableArray<Block> Blocks) : Block;

/// <summary>An item, and what stands below it.</summary>
internal sealed record ListItem(Prose Text, ImmutableArray<Prose> Below);

/// <summary>A list.</summary>
internal sealed record BulletList(ImmutableArray<ListItem> Items, bool IsNumbered) : Block;

/// <summary>A table under its caption. A row of one cell is the heading of those below it.</summary>
internal sealed record Table(string Caption, ImmutableArray<string> Headers, ImmutableArray<ImmutableArray<Prose>> Rows) : Block
{
    /// <summary>What its style is called.</summary>
    public string? Class { get; init; }

    /// <summary>True where the first cell of a row names it.</summary>
    public bool HasNames { get; init; } = true;
}

/// <summary>A drawing.</summary>
/// <param name="Html">Our own markup: every text in it is escaped, and it holds no style and no script.</param>
/// <param name="InWords">The same told in words, for the file without drawings; null when the section says it elsewhere.</param>
internal sealed record Figure(string Html, Block? InWords = null) : Block;

/// <summary>Lines of plain text to be copied as they are.</summary>
internal sealed record CopyBlock(string Text) : Block;

/// <summary>Free text of the note: Markdown of its owner, which must not touch the rest of the page.</summary>
internal sealed record FreeBlock(string Markdown) : Block;

/// <summary>Blocks under a heading.</summary>
/// <param name="Key">Its anchor and its class in HTML; never shown.</param>
/// <param name="Title">Its heading.</param>
/// <param name="Blocks">What it holds; sections below it have headings of the next rank.</param>
/// <param name="Class">What its style is called, where several sections share one.</param>
internal sealed record Section(string Key, Prose Title, ImmutableArray<Block> Blocks, string? Class = null) : Block
{
    /// <summary>The section of what there is; null when there is nothing.</summary>
    public static Section? Of(string key, Prose title, params IEnumerable<Block?> blocks) =>
        new Section(key, title, [.. blocks.OfType<Block>()]) is { Blocks.IsEmpty: false } section ? section : null;
}

/// <summary>A whole page.</summary>
/// <param name="Title">The title of the file.</param>
/// <param name="Name">Its first heading.</param>
/// <param name="Intro">What the page is.</param>
/// <param name="Head">What stands first.</param>
/// <param name="Sections">What it says.</param>
/// <param name="Closing">What stands last, before the last word.</param>
/// <param name="LastWord">The closing line.</param>
internal sealed record BlockPage(string Title, string Name, ImmutableArray<Prose> Intro, Section? Head, ImmutableArray<Section> Sections, Section? Closing, string LastWord);
