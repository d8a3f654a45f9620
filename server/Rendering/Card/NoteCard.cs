using System.Text;
using HealthNotes.Analysis.Danger;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Ranges;
using HealthNotes.Rendering.Html;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Card;

/// <summary>
/// One page to keep where the notes are written: what to type, when to phone, and what not to do. Pure: the same species and
/// paper give the same bytes.
/// </summary>
public static class NoteCard
{
    private static readonly (string Group, string Heading)[] Groups =
        [("day", PageWords.CardDay), ("check", PageWords.CardCheck), ("say", PageWords.CardSay)];

    /// <summary>The card as one self-contained HTML file.</summary>
    /// <param name="species">Whose emergencies are listed; for an unknown one, those of both.</param>
    /// <param name="paper">The paper that it fits on.</param>
    public static string Html(Species species, Paper paper)
    {
        var body = new StringBuilder("<main>\n<header><h1>").Append(HtmlText.Escape(PageWords.CardTitle)).Append("</h1><p>").Append(HtmlText.Escape(PageWords.CardLead)).Append("</p></header>\n<div class=\"lines\">\n");
        foreach ((string group, string heading) in Groups)
        {
            Lines(body, group, heading);
        }

        body.Append("</div>\n<div class=\"advice\">\n");
        Advice(body, "now", PageWords.SheetPhoneNow, PhoneNow.Printed(species, male: null));
        Advice(body, "care", PageWords.Cautions, ClinicalTables.Default.Cautions);
        body.Append("</div>\n<p class=\"clinic\">").Append(HtmlText.Escape(PageWords.CardClinic)).Append(" <span></span></p>\n</main>\n");
        return HtmlDocument.Of(PageWords.CardTitle, Style(paper), body.ToString());
    }

    private static void Lines(StringBuilder html, string group, string heading)
    {
        html.Append("<section class=\"").Append(group).Append("\">\n<h2>").Append(HtmlText.Escape(heading)).Append("</h2>\n<dl>\n");
        foreach (CardLine line in CardLine.All.Where(line => line.Group == group))
        {
            html.Append("<div><dt><code>").Append(HtmlText.Escape(line.Text)).Append("</code></dt><dd>").Append(HtmlText.Escape(line.Meaning)).Append("</dd></div>\n");
        }

        html.Append("</dl>\n</section>\n");
    }

    private static void Advice(StringBuilder html, string name, string heading, IEnumerable<Caution> rows)
    {
        Caution[] all = [.. rows];
        html.Append("<section class=\"").Append(name).Append("\">\n<h2>").Append(HtmlText.Escape(heading)).Append("</h2>\n<ul>\n").Append(string.Concat(all.Select(row => $"<li>{HtmlText.Escape(row.Text)}</li>\n"))).Append("</ul>\n")
            .Append("<p class=\"sources\">").Append(HtmlText.Escape(PageWords.SheetSources(all.SelectMany(row => row.Source.Split("; ")).Distinct()))).Append("</p>\n</section>\n");
    }

    private static Stylesheet Style(Paper paper)
    {
        Stylesheet common = Stylesheet.Of("card.css");
        return new Stylesheet($"{common.Text}\n@page {{ size: {paper}; margin: 9mm; }}\n@media print {{ html {{ font-size: {(paper == Paper.A4 ? "7.7pt" : "7.3pt")}; }} }}\n");
    }
}
