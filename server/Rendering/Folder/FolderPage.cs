using System.Text;
using HealthNotes.Analysis;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Due;
using HealthNotes.Rendering.Html;
using HealthNotes.Rendering.Markdown;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Folder;

/// <summary>A note of a folder, for its index.</summary>
/// <param name="Name">The note as a person names it: its path in the folder.</param>
/// <param name="Link">Where its page lies, from the index; percent-encoded. Null when there is none.</param>
/// <param name="Analysis">What was worked out; null when the note could not be read.</param>
/// <param name="Problem">Why it could not be read; null when it could.</param>
public sealed record FolderNote(string Name, string? Link, NoteAnalysis? Analysis, string? Problem);

/// <summary>The index of a folder of notes: each pet, what needs attention, what is due, and the way to its page.</summary>
public static class FolderPage
{
    private const int FindingsShown = 3;
    private const int DueShown = 4;

    /// <summary>Days ahead that what is due is shown for, so that the index speaks of what is near (common practice, no source).</summary>
    private const int DueDays = 60;

    /// <summary>The index as one self-contained HTML file.</summary>
    public static string Html(IReadOnlyList<FolderNote> notes, DateOnly today)
    {
        var html = new StringBuilder($"<header>\n<h1>{HtmlText.Escape(PageWords.FolderTitle)}</h1>\n<div class=\"intro\">{NoteMarkdown.OwnToHtml(Md.Text(PageWords.FolderIntro(notes.Count, today)))}</div>\n</header>\n<main>\n");
        int number = 0;
        foreach (FolderNote note in notes)
        {
            number++;
            html.Append($"<section class=\"pet-of-folder\" aria-labelledby=\"pet-{number}\">\n<h2 id=\"pet-{number}\">")
                .Append(note.Link is null ? "" : $"<a href=\"{HtmlText.Escape(note.Link)}\">").Append("<bdi>").Append(HtmlText.Escape(NameOf(note))).Append("</bdi>").Append(note.Link is null ? "" : "</a>").Append("</h2>\n")
                .Append(NoteMarkdown.OwnToHtml(About(note)));
            foreach ((string heading, string markdown) in Parts(note, today))
            {
                html.Append("<h3>").Append(HtmlText.Escape(heading)).Append("</h3>\n").Append(NoteMarkdown.OwnToHtml(markdown));
            }

            html.Append("</section>\n");
        }

        html.Append("</main>\n<footer>\n<p class=\"last-word\">").Append(HtmlText.Escape(PageWords.Closing)).Append("</p>\n</footer>\n");
        return HtmlDocument.Of(PageWords.FolderDocument(today), Stylesheet.VisitPage, html.ToString());
    }

    /// <summary>The index as Markdown.</summary>
    public static string Markdown(IReadOnlyList<FolderNote> notes, DateOnly today)
    {
        var text = new StringBuilder($"# {PageWords.FolderTitle}\n\n{Md.Text(PageWords.FolderIntro(notes.Count, today))}\n");
        foreach (FolderNote note in notes)
        {
            string name = Md.Text(NameOf(note));
            text.Append("\n## ").Append(note.Link is null ? name : $"[{name}]({note.Link})").Append("\n\n").Append(About(note));
            foreach ((string heading, string markdown) in Parts(note, today))
            {
                text.Append("\n### ").Append(heading).Append("\n\n").Append(markdown);
            }
        }

        return text.Append("\n**").Append(PageWords.Closing).Append("**\n").Append(PageMark.Markdown).ToString();
    }

    private static string NameOf(FolderNote note) => note.Analysis?.Pet.Name is { Length: > 0 } name ? NoteText.Field(name) : note.Analysis is null ? NoteText.Field(note.Name) : PageWords.PetWithoutName;

    private static string About(FolderNote note)
    {
        if (note.Analysis is not { } analysis)
        {
            return Md.Text(PageWords.FolderUnread(NoteText.Field(note.Problem ?? ""))) + "\n";
        }

        string[] about =
        [
            PageWords.NameOf(analysis.Pet.Species), analysis.Pet.AgeOn(analysis.Today)?.ToString() ?? "", analysis.Pet.StageOn(analysis.Today)?.Name ?? "",
            PageWords.FolderLast(analysis.Note.Entries.Select(entry => entry.Head.Date).Where(day => day <= analysis.Today).Max()), NoteText.Field(note.Name),
        ];
        return Md.Small(string.Join(", ", about.Where(part => part.Length > 0))) + "\n";
    }

    private static IEnumerable<(string Heading, string Markdown)> Parts(FolderNote note, DateOnly today)
    {
        if (note.Analysis is not { } analysis)
        {
            yield break;
        }

        var context = new PageContext(analysis, PageOptions.Default);
        yield return (PageWords.Attention, Attention(AttentionBuilder.Build(context), context));
        Record.Due.DueItem[] due = [.. DueList.Of(analysis.Record).Where(item => !(item.On > today.Plus(DueDays)))];
        if (due.Length > 0)
        {
            yield return (PageWords.FolderDue, string.Concat(due.Take(DueShown).Select(item => $"- {DueText.When(item.On, today)}: {Md.Text(DueText.Of(item))}\n")) + More(due.Length - DueShown));
        }
    }

    private static string Attention(Attention attention, PageContext context)
    {
        int all = attention.Items.Items.Count + attention.Items.LeftOut;
        string none = all == 0 ? Md.Text(PageWords.NothingCrossed(new PeriodName(context.Period.From, context.Period.Check is not null, context.Period.Current.Length > 0))) + "\n" : "";
        string totals = all == 0 ? "" : Md.Text(PageWords.Totals(attention.Items.Items.CountBy(item => item.Level))) + "\n\n";
        return none + totals
            + string.Concat(attention.Items.Items.Take(FindingsShown).Select(item => $"- {PageWriter.Mark(item.Level)} {(item.Day is { } day ? PageWords.Iso(day) + ": " : "")}{Md.Message(item.Message)}\n"))
            + More(all - FindingsShown)
            + (attention.LinesNotUnderstood == 0 ? "" : $"\n{Md.Text(PageWords.FolderNotUnderstood(attention.LinesNotUnderstood))}\n");
    }

    private static string More(int count) => count > 0 ? $"\n{Md.Small(PageWords.FolderMore(count))}\n" : "";
}
