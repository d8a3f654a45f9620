using System.Text;
using HealthNotes.Rendering.Blocks;

namespace HealthNotes.Rendering.Markdown;

/// <summary>Writes a tree of blocks as Markdown that also reads well as plain text.</summary>
internal static class MarkdownWriter
{
    /// <summary>A column is not padded further than this, so that one long cell does not push all others off the screen.</summary>
    private const int WidestPadding = 36;

    /// <summary>The page as one file.</summary>
    public static string Of(BlockPage page)
    {
        var text = new StringBuilder("# ").Append(MarkdownText.Of(page.Name)).Append("\n\n");
        text.AppendJoin("\n\n", page.Intro.Select(prose => Of(prose, Place.Start))).Append('\n');
        foreach (Block block in page.Head?.Blocks ?? [])
        {
            Write(text, block, 2);
        }

        foreach (Section section in page.Sections.Concat(page.Closing is null ? [] : [page.Closing]))
        {
            Write(text, section, 2);
        }

        return text.Append("\n**").Append(page.LastWord).Append("**\n").Append(PageMark.Markdown).ToString();
    }

    /// <summary>Where running text stands: more marks act at the start of a line, and a bar ends a cell.</summary>
    private enum Place
    {
        Within,
        Start,
        Cell,
    }

    private static void Write(StringBuilder text, Block block, int rank)
    {
        if (block is Figure { InWords: var words })
        {
            if (words is not null)
            {
                Write(text, words, rank);
            }

            return;
        }

        if (block is Group group)
        {
            foreach (Block inner in group.Blocks)
            {
                Write(text, inner, rank);
            }

            return;
        }

        text.Append('\n');
        switch (block)
        {
            case Section section:
                text.Append('#', rank).Append(' ').Append(Of(section.Title, Place.Within)).Append('\n');
                foreach (Block inner in section.Blocks)
                {
                    Write(text, inner, rank + 1);
                }

                break;
            case Paragraph paragraph:
                text.Append(Of(paragraph.Text, Place.Start)).Append('\n');
                break;
            case BulletList list:
                for (int i = 0; i < list.Items.Length; i++)
                {
                    text.Append(list.IsNumbered ? $"{i + 1}. " : "- ").Append(Of(list.Items[i].Text, Place.Start)).Append('\n');
                    text.Append(string.Concat(list.Items[i].Below.Select(below => $"{(list.IsNumbered ? "   " : "  ")}- {Of(below, Place.Start)}\n")));
                }

                break;
            case Table table:
                Write(text, table);
                break;
            case CopyBlock copy:
                string fence = MarkdownText.Fence(copy.Text);
                text.Append(fence).Append('\n').Append(copy.Text).Append(fence).Append('\n');
                break;
            case FreeBlock free:
                foreach (string line in free.Markdown.Split('\n'))
                {
                    text.Append(line.Length == 0 ? ">" : "> ").Append(MarkdownText.Inert(line)).Append('\n');
                }

                break;
        }
    }

    private static void Write(StringBuilder text, Table table)
    {
        string[][] rows = [[.. table.Headers], .. table.Rows.Select(row => row.Select(cell => Of(cell, Place.Cell)).ToArray())];
        int[] widths = [.. table.Headers.Select((_, column) => Math.Min(WidestPadding, Math.Max(3, rows.Max(row => row[column].Length))))];
        text.Append(MarkdownText.AtStart(table.Caption)).Append("\n\n");
        Row(rows[0]);
        text.Append('|').AppendJoin('|', widths.Select(width => " " + new string('-', width) + " ")).Append("|\n");
        foreach (string[] row in rows[1..])
        {
            Row(row);
        }

        void Row(string[] cells) => text.Append("| ").AppendJoin(" | ", cells.Select((cell, column) => cell.PadRight(widths[column]))).Append(" |\n");
    }

    private static string Of(Prose prose, Place place) => string.Concat(prose.Parts.Select((part, at) => part switch
    {
        Words words => at == 0 && place == Place.Start ? MarkdownText.AtStart(words.Text) : MarkdownText.Of(words.Text),
        Quoted quoted => place == Place.Cell && quoted.Text.AsSpan().IndexOfAny('|', '`', '\\') >= 0 ? MarkdownText.Of(quoted.Text) : MarkdownText.Code(quoted.Text),
        Strong strong => $"**{MarkdownText.Of(strong.Text)}**",
        LevelMark mark => $"**{MarkdownText.Of(mark.Name)}**{(at + 1 < prose.Parts.Length ? " \u00B7" : "")}",
        Blank => "____",
        Small small => $"*{Of(small.Text, Place.Within)}*",
        Link { Target: ['#', ..] or ['t', 'e', 'l', ':', ..] } link => Of(link.Text, Place.Within),
        Link link => $"[{Of(link.Text, Place.Within)}]({link.Target})",
        _ => "",
    }));
}
