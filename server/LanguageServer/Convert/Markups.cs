using System.Text;
using HealthNotes.LanguageServer.Protocol;

namespace HealthNotes.LanguageServer.Convert;

/// <summary>From Markdown to what the client shows.</summary>
internal static class Markups
{
    /// <summary>The text as Markdown, or, for a client that shows none, without its marks.</summary>
    public static MarkupContent Of(string markdown, bool showsMarkdown) =>
        showsMarkdown ? new MarkupContent(MarkupKind.Markdown, markdown) : new MarkupContent(MarkupKind.PlainText, Plain(markdown));

    /// <summary>The text without marks of emphasis, headings and code, and without the backslashes that keep other characters from being marks.</summary>
    public static string Plain(string markdown)
    {
        var text = new StringBuilder(markdown.Length);
        bool lineStart = true;
        for (int i = 0; i < markdown.Length; i++)
        {
            char c = markdown[i];
            if (c == '\\' && i + 1 < markdown.Length && char.IsAsciiLetterOrDigit(markdown[i + 1]) is false && markdown[i + 1] is not ('\n' or '\r' or ' '))
            {
                text.Append(markdown[++i]);
            }
            else if (c is '*' or '`' || (c == '#' && lineStart))
            {
                while (c == '#' && i + 1 < markdown.Length && markdown[i + 1] is '#' or ' ')
                {
                    i++;
                }
            }
            else
            {
                text.Append(c);
            }

            lineStart = c == '\n';
        }

        return text.ToString();
    }
}
