using System.Text;
using HealthNotes.Rendering.Html;
using HealthNotes.Rendering.Markdown;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing;

/// <summary>The pictures, each with its day and caption; those that can't be shown by name.</summary>
internal static class PictureSection
{
    public static PageSection? Write(PageModel model)
    {
        Picture[] shown = [.. model.Pictures.Items.Where(picture => picture.Photo is not null)];
        Picture[] named = [.. model.Pictures.Items.Where(picture => picture.Photo is null)];
        SectionBuilder section = new();
        if (shown.Length > 0)
        {
            section.Figure(Gallery(shown), string.Concat(shown.Select(picture => $"- {Line(picture)}\n")));
        }

        return section
            .List(named.Select(Line))
            .LeftOut(model.Pictures.LeftOut)
            .Paragraph(named.Length == 0 ? "" : Md.Small(PageWords.PictureNote))
            .Build("pictures", PageWords.Pictures);
    }

    private static string Line(Picture picture)
    {
        string caption = picture.Caption.Length == 0 ? "" : ", " + Md.Text(picture.Caption);
        string problem = picture.Problem is null ? "" : $" ({Md.Text(PageWords.NotShown(picture.Problem))})";
        return $"{PageWords.Iso(picture.Day)}: {Md.Code(picture.File)}{caption}{problem}";
    }

    private static string Gallery(IEnumerable<Picture> pictures)
    {
        var html = new StringBuilder("<div class=\"gallery\">\n");
        foreach (Picture picture in pictures)
        {
            string caption = picture.Caption.Length == 0 ? picture.File : picture.Caption;
            html.Append("<figure>\n<img alt=\"").Append(HtmlText.Escape(PageWords.PictureOf(caption, picture.Day)))
                .Append($"\" width=\"{picture.Photo!.Width}\" height=\"{picture.Photo.Height}\" src=\"data:image/jpeg;base64,")
                .Append(Convert.ToBase64String(picture.Photo.Jpeg))
                .Append("\">\n<figcaption><time>").Append(PageWords.Iso(picture.Day)).Append("</time> <bdi>").Append(HtmlText.Escape(caption)).Append("</bdi></figcaption>\n</figure>\n");
        }

        return html.Append("</div>\n").ToString();
    }
}
