using System.Text;
using HealthNotes.Analysis.Danger;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Ranges;
using HealthNotes.Rendering.Html;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>What cannot wait, the usual cautions, and how to type the sheet up.</summary>
internal static class SheetCautions
{
    public static void Write(StringBuilder html, PageContext context)
    {
        PetProfile pet = context.Analysis.Pet;
        html.Append("<div class=\"words\">\n<div>\n");
        List(html, PageWords.SheetPhoneNow, [.. PhoneNow.Printed(pet.Species, pet.Male)]);
        html.Append("</div>\n<div>\n");
        List(html, PageWords.Cautions, [.. ClinicalTables.Default.Cautions]);
        html.Append("</div>\n</div>\n<p class=\"typing\"><strong>").Append(HtmlText.Escape(PageWords.SheetTypingLead)).Append("</strong> ").Append(HtmlText.Escape(PageWords.SheetTyping)).Append(" <code>hnote new check FILE</code></p>\n");
    }

    private static void List(StringBuilder html, string heading, Caution[] rows)
    {
        html.Append("<h3>").Append(HtmlText.Escape(heading)).Append("</h3>\n<ul>\n").Append(string.Concat(rows.Select(row => $"<li>{HtmlText.Escape(row.Text)}</li>\n"))).Append("</ul>\n");
        html.Append("<p class=\"sources\">").Append(HtmlText.Escape(PageWords.SheetSources(rows.SelectMany(row => row.Source.Split("; ")).Distinct()))).Append("</p>\n");
    }
}
