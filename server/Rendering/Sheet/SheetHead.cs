using System.Text;
using HealthNotes.Grammar.Notes;
using HealthNotes.Rendering.Html;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>Who is looked at, when, by whom, and whom to phone.</summary>
internal static class SheetHead
{
    public static void Write(StringBuilder html, PageContext context, string name)
    {
        string stage = context.Analysis.Pet.StageOn(context.Analysis.Today)?.Name ?? "";
        string[] about = [PageWords.NameOf(context.Analysis.Pet.Species), context.Analysis.Pet.AgeOn(context.Analysis.Today)?.ToString() ?? "", stage];
        string known = string.Join("; ", Texts(context, "known"));
        string phone = string.Join(", ", Texts(context, "clinic").Concat(Texts(context, "phone")));
        html.Append("<header>\n<h1 id=\"front\"><bdi>").Append(HtmlText.Escape(name)).Append("</bdi></h1>\n<p class=\"about\">")
            .Append(HtmlText.Escape(string.Join(", ", about.Where(part => part.Length > 0)))).Append(known.Length == 0 ? "" : $"<br>{HtmlText.Escape(PageWords.SheetKnown)} <bdi>{HtmlText.Escape(known)}</bdi>")
            .Append("</p>\n<p class=\"fill\">").Append(HtmlText.Escape(PageWords.SheetDay)).Append(" <span class=\"line\"></span> ").Append(HtmlText.Escape(PageWords.SheetBy)).Append(" <span class=\"line\"></span></p>\n")
            .Append("<p class=\"phone\"><strong>").Append(HtmlText.Escape(PageWords.SheetClinic)).Append("</strong> ")
            .Append(phone.Length == 0 ? "<span class=\"line long\"></span>" : $"<bdi>{HtmlText.Escape(phone)}</bdi>").Append("</p>\n</header>\n")
            .Append("<p class=\"lead\">").Append(HtmlText.Escape(PageWords.SheetLead)).Append("</p>\n");
    }

    private static IEnumerable<string> Texts(PageContext context, string word) =>
        context.Analysis.Note.Facts<TextFact>(context.Analysis.Today).Where(fact => fact.Fact.Word.Word == word).Select(fact => NoteText.Field(fact.Fact.Text.Text)).TakeLast(SheetLimits.FactsOfAKind)
            .Select(text => SheetLimits.Cut(text, SheetLimits.FactLength));
}
