using HealthNotes.Analysis.Findings;
using HealthNotes.Rendering.Text;
using Markdig.Extensions.Tables;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace HealthNotes.Rendering.Html;

/// <summary>
/// Gives the page's own Markdown the structure that HTML has and Markdown lacks: a paragraph right above a table is its
/// caption, and a list item that opens with a level is marked with it. Free text never passes through here.
/// </summary>
internal static class PageStructure
{
    /// <summary>Where a table keeps its caption.</summary>
    public static object CaptionKey { get; } = new();

    private static readonly FindingLevel[] Levels = [FindingLevel.Urgent, FindingLevel.Call, FindingLevel.Watch, FindingLevel.Info];

    /// <summary>Changes the tree in place.</summary>
    public static void Apply(MarkdownDocument document)
    {
        for (int i = document.Count - 1; i >= 0; i--)
        {
            if (document[i] is ListBlock list)
            {
                MarkItems(list);
            }
            else if (i > 0 && document[i] is Table table && document[i - 1] is ParagraphBlock caption)
            {
                document.RemoveAt(i - 1);
                table.SetData(CaptionKey, caption);
                i--;
            }
        }
    }

    /// <summary>The style class of the level that an element names in so many words, or null.</summary>
    public static string? LevelClass(Inline? inline)
    {
        if (inline is not EmphasisInline { DelimiterCount: 2, FirstChild: LiteralInline { NextSibling: null } literal })
        {
            return null;
        }

        string text = literal.Content.ToString();
        foreach (FindingLevel level in Levels)
        {
            if (text == PageWords.LevelName(level))
            {
                return ClassOf(level);
            }
        }

        return null;
    }

    private static string ClassOf(FindingLevel level) => level switch
    {
        FindingLevel.Urgent => "urgent",
        FindingLevel.Call => "call",
        FindingLevel.Watch => "watch",
        _ => "info",
    };

    private static void MarkItems(ListBlock list)
    {
        foreach (Block item in list)
        {
            if (item is ListItemBlock { Count: > 0 } marked && marked[0] is ParagraphBlock { Inline.FirstChild: var first } && LevelClass(first) is { } level)
            {
                list.GetAttributes().Classes ??= ["findings"];
                marked.GetAttributes().AddClass(level);
            }
        }
    }
}
