using System.Text;
using HealthNotes.Rendering.Html;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>What a count in 15 seconds is in a minute.</summary>
internal static class SheetCounting
{
    private const int Seconds = 15;
    private const int Minute = 60;
    private const int First = 2;
    private const int Last = 61;
    private const int Columns = 20;

    public static void Write(StringBuilder html)
    {
        html.Append("<table class=\"counting\">\n<caption>").Append(HtmlText.Escape(PageWords.SheetCounting)).Append("</caption>\n<tbody>\n");
        for (int row = First; row <= Last; row += Columns)
        {
            int[] counts = [.. Enumerable.Range(row, Math.Min(Columns, Last - row + 1))];
            html.Append("<tr><th scope=\"row\">").Append(HtmlText.Escape(PageWords.SheetCount)).Append("</th>").Append(string.Concat(counts.Select(count => $"<td>{count}</td>"))).Append("</tr>\n")
                .Append("<tr class=\"minute\"><th scope=\"row\">").Append(HtmlText.Escape(PageWords.SheetPerMinute)).Append("</th>").Append(string.Concat(counts.Select(count => $"<td>{count * Minute / Seconds}</td>"))).Append("</tr>\n");
        }

        html.Append("</tbody>\n</table>\n");
    }
}
