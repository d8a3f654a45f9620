using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Syntax.Inlines;

namespace HealthNotes.Rendering.Html;

/// <summary>In the page's own Markdown, strong text that names a level is its mark, and plain emphasis is small print.</summary>
internal sealed class LevelRenderer : HtmlObjectRenderer<EmphasisInline>
{
    /// <inheritdoc/>
    protected override void Write(HtmlRenderer renderer, EmphasisInline obj)
    {
        string tag = obj.DelimiterCount == 2 ? "strong" : "small";
        renderer.Write('<').Write(tag);
        if (PageStructure.LevelClass(obj) is { } level)
        {
            renderer.Write(" class=\"level ").Write(level).Write('"');
        }

        renderer.Write('>');
        renderer.WriteChildren(obj);
        renderer.Write("</").Write(tag).Write('>');
    }
}

/// <summary>Text, with right-to-left fields set apart from what is around them.</summary>
internal sealed class IsolatedTextRenderer : HtmlObjectRenderer<LiteralInline>
{
    /// <inheritdoc/>
    protected override void Write(HtmlRenderer renderer, LiteralInline obj) => renderer.Write(HtmlText.EscapeIsolated(obj.Content.AsSpan()));
}

/// <summary>Lines as written.</summary>
internal sealed class IsolatedCodeRenderer : HtmlObjectRenderer<CodeInline>
{
    /// <inheritdoc/>
    protected override void Write(HtmlRenderer renderer, CodeInline obj) =>
        renderer.Write("<code>").Write(HtmlText.EscapeIsolated(obj.ContentSpan)).Write("</code>");
}
