using System.Text;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Markdown;

/// <summary>Collects the parts of one section. All text given to it is Markdown already; see <see cref="Md"/>.</summary>
internal sealed class SectionBuilder
{
    /// <summary>A column is not padded further than this, so that one long cell does not push all others off the screen.</summary>
    private const int WidestPadding = 36;

    private readonly List<SectionPart> parts = [];
    private readonly StringBuilder text = new();

    /// <summary>True when nothing was added.</summary>
    public bool IsEmpty => parts.Count == 0 && text.Length == 0;

    /// <summary>A paragraph; an empty one adds nothing.</summary>
    public SectionBuilder Paragraph(string markdown)
    {
        if (markdown.Length > 0)
        {
            Gap();
            text.Append(markdown).Append('\n');
        }

        return this;
    }

    /// <summary>A list; each item may have items of its own.</summary>
    public SectionBuilder List(IEnumerable<(string Item, IEnumerable<string> Below)> items)
    {
        bool first = true;
        foreach ((string item, IEnumerable<string> below) in items)
        {
            if (first)
            {
                Gap();
                first = false;
            }

            text.Append("- ").Append(item).Append('\n');
            foreach (string line in below)
            {
                text.Append("  - ").Append(line).Append('\n');
            }
        }

        return this;
    }

    /// <summary>A flat list.</summary>
    public SectionBuilder List(IEnumerable<string> items) => List(items.Select(item => (item, Enumerable.Empty<string>())));

    /// <summary>A table below its caption. Columns that are empty in every row are left out; the first column names the row.</summary>
    public SectionBuilder Table(string caption, string[] headers, IReadOnlyList<string[]> rows)
    {
        if (rows.Count == 0)
        {
            return this;
        }

        int[] columns = [.. Enumerable.Range(0, headers.Length).Where(column => column == 0 || rows.Any(row => row[column].Length > 0))];
        int[] widths = [.. columns.Select(column => Math.Min(WidestPadding, Math.Max(headers[column].Length, rows.Max(row => row[column].Length))))];
        Paragraph(Md.Text(caption));
        Gap();
        Row(headers);
        text.Append('|').AppendJoin('|', widths.Select(width => " " + new string('-', Math.Max(3, width)) + " ")).Append("|\n");
        foreach (string[] row in rows)
        {
            Row(row);
        }

        return this;

        void Row(string[] cells) =>
            text.Append("| ").AppendJoin(" | ", columns.Select((column, at) => cells[column].PadRight(Math.Max(3, widths[at])))).Append(" |\n");
    }

    /// <summary>A line that says how many were left out.</summary>
    public SectionBuilder LeftOut(int count) => count > 0 ? Paragraph(Md.Small(PageWords.LeftOut(count))) : this;

    /// <summary>Free text of the note.</summary>
    public SectionBuilder Free(string markdown)
    {
        EndOwn();
        parts.Add(new FreePart(markdown));
        return this;
    }

    /// <summary>A drawing, with what it says in Markdown.</summary>
    public SectionBuilder Figure(string html, string markdown = "")
    {
        EndOwn();
        parts.Add(new FigurePart(html, markdown));
        return this;
    }

    /// <summary>The section, or null when nothing was added.</summary>
    public PageSection? Build(string key, string title)
    {
        EndOwn();
        return parts.Count == 0 ? null : new PageSection(key, title, [.. parts]);
    }

    private void Gap()
    {
        if (text.Length > 0)
        {
            text.Append('\n');
        }
    }

    private void EndOwn()
    {
        if (text.Length > 0)
        {
            parts.Add(new OwnPart(text.ToString()));
            text.Clear();
        }
    }
}
