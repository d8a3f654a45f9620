using HealthNotes.Rendering.Text;
using Markdig.Extensions.Tables;
using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace HealthNotes.Rendering.Html;

/// <summary>A heading in free text stands out, but isn't a heading of the page.</summary>
internal sealed class FreeHeadingRenderer : HtmlObjectRenderer<HeadingBlock>
{
    /// <inheritdoc/>
    protected override void Write(HtmlRenderer renderer, HeadingBlock obj)
    {
        renderer.Write("<p class=\"heading\">");
        renderer.WriteLeafInline(obj);
        renderer.WriteLine("</p>");
    }
}

/// <summary>A table without the widths and alignments that would need a style of their own.</summary>
internal sealed class FreeTableRenderer : HtmlObjectRenderer<Table>
{
    /// <inheritdoc/>
    protected override void Write(HtmlRenderer renderer, Table obj)
    {
        renderer.WriteLine("<table>");
        foreach (TableRow row in obj.OfType<TableRow>())
        {
            renderer.Write("<tr>");
            foreach (LeafBlock? text in row.Select(cell => ((TableCell)cell).FirstOrDefault() as LeafBlock))
            {
                renderer.Write(row.IsHeader ? "<th scope=\"col\">" : "<td>");
                if (text is not null)
                {
                    renderer.WriteLeafInline(text);
                }

                renderer.Write(row.IsHeader ? "</th>" : "</td>");
            }

            renderer.WriteLine("</tr>");
        }

        renderer.WriteLine("</table>");
    }
}

/// <summary>A link that may be followed, else its text; a picture is never loaded, only named.</summary>
internal sealed class FreeLinkRenderer : HtmlObjectRenderer<LinkInline>
{
    /// <inheritdoc/>
    protected override void Write(HtmlRenderer renderer, LinkInline obj)
    {
        string? target = obj.GetDynamicUrl?.Invoke() ?? obj.Url;
        if (obj.IsImage)
        {
            renderer.Write(HtmlText.Escape(PageWords.PictureStart));
            renderer.WriteChildren(obj);
            renderer.Write(HtmlText.Escape(PageWords.PictureEnd(target)));
        }
        else if (SafeLinks.IsAllowed(target) && !IsInLink(obj))
        {
            FreeAutolinkRenderer.Open(renderer, target!);
            renderer.WriteChildren(obj);
            renderer.Write("</a>");
        }
        else
        {
            renderer.WriteChildren(obj);
        }
    }

    /// <summary>A picture's text may hold a link; within a link it would be a link in a link.</summary>
    private static bool IsInLink(Inline inline)
    {
        for (ContainerInline? parent = inline.Parent; parent is not null; parent = parent.Parent)
        {
            if (parent is LinkInline { IsImage: false })
            {
                return true;
            }
        }

        return false;
    }
}

/// <summary>A target written between angle brackets.</summary>
internal sealed class FreeAutolinkRenderer : HtmlObjectRenderer<AutolinkInline>
{
    /// <inheritdoc/>
    protected override void Write(HtmlRenderer renderer, AutolinkInline obj)
    {
        string target = obj.IsEmail ? "mailto:" + obj.Url : obj.Url;
        if (SafeLinks.IsAllowed(target))
        {
            Open(renderer, target);
            renderer.Write(HtmlText.Escape(obj.Url)).Write("</a>");
        }
        else
        {
            renderer.Write(HtmlText.Escape(obj.Url));
        }
    }

    /// <summary>Opens a link that tells the other side nothing about this page.</summary>
    public static void Open(HtmlRenderer renderer, string target) =>
        renderer.Write("<a rel=\"noopener noreferrer nofollow\" href=\"").WriteEscapeUrl(target).Write("\">");
}
