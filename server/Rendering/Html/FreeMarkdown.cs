using Markdig;
using Markdig.Extensions.Tables;
using Markdig.Parsers;
using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Renderers.Html.Inlines;

namespace HealthNotes.Rendering.Html;

/// <summary>
/// The one way from an owner's free text to HTML. The only extension is pipe tables; raw HTML is text. Each piece is read on
/// its own, so nothing defined in one is known in another.
/// </summary>
internal static class FreeMarkdown
{
    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder().UsePipeTables().DisableHtml().Build();

    /// <summary>The text as HTML; when it is nested too deeply to be read, the text itself.</summary>
    public static string ToHtml(string markdown)
    {
        if (MostCells(markdown) > PageLimits.FreeTextCells)
        {
            return Plain(markdown);
        }

        try
        {
            using var writer = new StringWriter { NewLine = "\n" };
            var renderer = new HtmlRenderer(writer) { LinkRewriter = SafeLinks.Rewrite };
            Pipeline.Setup(renderer);
            renderer.ObjectRenderers.ReplaceOrAdd<HtmlTableRenderer>(new FreeTableRenderer());
            renderer.ObjectRenderers.ReplaceOrAdd<HeadingRenderer>(new FreeHeadingRenderer());
            renderer.ObjectRenderers.ReplaceOrAdd<LinkInlineRenderer>(new FreeLinkRenderer());
            renderer.ObjectRenderers.ReplaceOrAdd<AutolinkInlineRenderer>(new FreeAutolinkRenderer());
            renderer.Render(MarkdownParser.Parse(markdown, Pipeline));
            return writer.ToString();
        }
        catch (ArgumentException)
        {
            return Plain(markdown);
        }
    }

    private static string Plain(string markdown) => $"<pre>{HtmlText.Escape(markdown)}</pre>\n";

    /// <summary>How many cells a table could have: every row is filled up to the longest, so that a few letters make millions.</summary>
    private static long MostCells(string markdown)
    {
        long longest = 0;
        long rows = 0;
        foreach (ReadOnlySpan<char> line in markdown.AsSpan().EnumerateLines())
        {
            int marks = line.Count('|');
            rows += marks > 0 ? 1 : 0;
            longest = Math.Max(longest, marks + 1);
        }

        return rows * longest;
    }
}
