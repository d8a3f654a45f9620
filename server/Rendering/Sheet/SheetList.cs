using System.Text;
using HealthNotes.Analysis.Rules;
using HealthNotes.Analysis.Trends;
using HealthNotes.Record.Checks;
using HealthNotes.Rendering.Html;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>The list, head to tail: a box and a line for each part, a field for each measure.</summary>
internal static class SheetList
{
    public static void Write(StringBuilder html, PageContext context, CheckPlan plan)
    {
        html.Append("<table class=\"list\">\n<caption>").Append(HtmlText.Escape(PageWords.SheetListCaption)).Append("</caption>\n<thead><tr>");
        foreach (string column in new[] { PageWords.Part, PageWords.SheetHow, PageWords.SheetRange, PageWords.SheetLast, PageWords.SheetToday })
        {
            html.Append("<th scope=\"col\">").Append(HtmlText.Escape(column)).Append("</th>");
        }

        html.Append("</tr></thead>\n<tbody>\n");
        foreach (CheckStep step in plan.Items)
        {
            Row(html, context, step);
        }

        html.Append("</tbody>\n</table>\n");
    }

    private static void Row(StringBuilder html, PageContext context, CheckStep step)
    {
        string how = HowToTake.Of(step.Item.Word.Word)?.InShort ?? "";
        html.Append(step.Item.IsMeasured ? "<tr class=\"measure\">" : "<tr>")
            .Append("<th scope=\"row\">").Append(HtmlText.Escape(Name(step))).Append("<br><code>").Append(HtmlText.Escape(step.LineStart)).Append("</code></th>")
            .Append("<td class=\"how\">").Append(HtmlText.Escape(how)).Append("</td><td>").Append(HtmlText.Escape(Ranges(context, step))).Append("</td><td class=\"last\">").Append(Last(context, step)).Append("</td>")
            .Append(step.Item.IsMeasured
                ? $"<td class=\"today\"><span class=\"field\"></span>{HtmlText.Escape(PageWords.SheetUnitOf(step.Item.Word.Word, context.Units))}</td>"
                : $"<td class=\"today\"><span class=\"box\"></span> {HtmlText.Escape(PageWords.Ok)} <span class=\"field\"></span></td>")
            .Append("</tr>\n");
    }

    private static string Name(CheckStep step) => step.Item.Word.Word == "rr" ? PageWords.ChartOf("rr", "asleep") : Wording.NameOf(step.Item.Word.Word);

    private static string Ranges(PageContext context, CheckStep step)
    {
        string normal = step.Normal is { } range ? PageWords.SheetNormal(context.Units.Show(range)) : "";
        string usual = UsualNow.Of(context.Analysis.Record, step) is { } own && step.Last?.Reading is { } reading
            ? PageWords.SheetUsual(context.Units.Show(own.Low, own.High, reading.Value.OnScaleOfNine().Unit), own.Readings is null) : "";
        return string.Join("; ", new[] { usual, normal }.Where(part => part.Length > 0));
    }

    private static string Last(PageContext context, CheckStep step)
    {
        if (step.Last is not { } last)
        {
            return "";
        }

        string written = last.Reading is { } reading && step.Item.IsMeasured ? context.Units.Show(reading.Value.Number, reading.Value.Unit) : Written(context, last.Line, step);
        return $"<bdi>{HtmlText.Escape(SheetLimits.Cut(written, SheetLimits.LastLength))}</bdi> <time>{PageWords.Iso(last.Day)}</time>";
    }

    /// <summary>A part's last line without its first word, its time and its comment.</summary>
    private static string Written(PageContext context, int line, CheckStep step)
    {
        if (step.Last?.Item is not { } item)
        {
            return context.Written(line).Text;
        }

        string text = Grammar.Formatting.ItemPrinter.Print(item);
        int word = text.IndexOf(item.Word.Word + " ", StringComparison.Ordinal);
        return NoteText.Field(word < 0 ? text : text[(word + item.Word.Word.Length + 1)..]);
    }
}
