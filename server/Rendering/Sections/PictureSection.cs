using System.Text;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Html;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sections;

/// <summary>The pictures, each with its day and caption; those that can't be shown by name.</summary>
internal static class PictureSection
{
    public static Section? Write(PageModel model)
    {
        Picture[] shown = [.. model.Pictures.Items.Where(picture => picture.Photo is not null)];
        Picture[] named = [.. model.Pictures.Items.Where(picture => picture.Photo is null)];
        return Section.Of(
            "pictures", PageWords.Pictures,
            shown.Length > 0 ? new Figure(Gallery(shown), Block.List(shown.Select(Line))) : null,
            Block.List(named.Select(Line)),
            Block.LeftOut(model.Pictures.LeftOut),
            Block.Paragraph(named.All(picture => picture.Problem is not null) ? "" : Prose.Small(PageWords.PictureNote)));
    }

    private static Prose Line(Picture picture)
    {
        string caption = picture.Caption.Length == 0 ? "" : ", " + picture.Caption;
        string problem = picture.Problem is null ? "" : $" ({PageWords.NotShown(picture.Problem)})";
        return $"{PageWords.Iso(picture.Day)}: " + Prose.Quote(picture.File) + (caption + problem);
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
