using System.Text;

namespace HealthNotes.Rendering.Markdown;

/// <summary>Puts the page together as one Markdown file.</summary>
internal static class MarkdownPage
{
    public static string Of(PageText page)
    {
        var text = new StringBuilder();
        text.Append("# ").Append(Md.Text(page.Name)).Append("\n\n").Append(Md.Text(page.Intro)).Append('\n').Append(Md.Text(page.Summary)).Append('\n');
        Parts(text, page.Pet);
        foreach (PageSection section in page.Sections.Append(page.Closing))
        {
            text.Append("\n## ").Append(section.Title).Append('\n');
            Parts(text, section);
        }

        return text.Append("\n**").Append(page.LastWord).Append("**\n").Append(PageMark.Markdown).ToString();
    }

    private static void Parts(StringBuilder text, PageSection section)
    {
        foreach (SectionPart part in section.Parts.Where(part => part is not FigurePart { Markdown.Length: 0 }))
        {
            text.Append('\n');
            if (part is OwnPart own)
            {
                text.Append(own.Markdown);
            }
            else if (part is FigurePart figure)
            {
                text.Append(figure.Markdown);
            }
            else if (part is FreePart free)
            {
                foreach (string line in free.Markdown.Split('\n'))
                {
                    text.Append(line.Length == 0 ? ">" : "> ").Append(Inert(line)).Append('\n');
                }
            }
        }
    }

    /// <summary>Free text keeps its own marks, but a tag in it stays text for readers that would run it.</summary>
    private static string Inert(string line)
    {
        if (!line.Contains('<', StringComparison.Ordinal))
        {
            return line;
        }

        var inert = new StringBuilder(line.Length + 8);
        bool escaped = false;
        for (int i = 0; i < line.Length; i++)
        {
            bool tag = line[i] == '<' && i + 1 < line.Length && (char.IsAsciiLetter(line[i + 1]) || line[i + 1] is '/' or '!' or '?');
            inert.Append(tag && !escaped ? "\\" : "").Append(line[i]);
            escaped = line[i] == '\\' && !escaped;
        }

        return inert.ToString();
    }
}
