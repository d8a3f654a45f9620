using System.Globalization;
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

/// <summary>Text, with right-to-left fields set apart from what is around them, and dates kept in one piece.</summary>
internal sealed class IsolatedTextRenderer : HtmlObjectRenderer<LiteralInline>
{
    private const int DateLength = 10;

    /// <inheritdoc/>
    protected override void Write(HtmlRenderer renderer, LiteralInline obj)
    {
        ReadOnlySpan<char> text = obj.Content.AsSpan();
        int from = 0;
        for (int at = 0; at + DateLength <= text.Length; at++)
        {
            if (!IsDate(text, at))
            {
                continue;
            }

            renderer.Write(HtmlText.EscapeIsolated(text[from..at]));
            renderer.Write($"<time>{text.Slice(at, DateLength)}</time>");
            from = at + DateLength;
            at = from - 1;
        }

        renderer.Write(HtmlText.EscapeIsolated(text[from..]));
    }

    /// <summary>True for <c>2026-10-04</c> that no digit follows or precedes, and that the calendar has.</summary>
    private static bool IsDate(ReadOnlySpan<char> text, int at) =>
        text[at + 4] == '-' && text[at + 7] == '-'
        && (at == 0 || !char.IsAsciiDigit(text[at - 1])) && (at + DateLength == text.Length || !char.IsAsciiDigit(text[at + DateLength]))
        && DateOnly.TryParseExact(text.Slice(at, DateLength), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _);
}

/// <summary>Lines as written.</summary>
internal sealed class IsolatedCodeRenderer : HtmlObjectRenderer<CodeInline>
{
    /// <inheritdoc/>
    protected override void Write(HtmlRenderer renderer, CodeInline obj) =>
        renderer.Write("<code>").Write(HtmlText.EscapeIsolated(obj.ContentSpan)).Write("</code>");
}
