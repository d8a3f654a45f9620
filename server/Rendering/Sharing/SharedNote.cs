using System.Text;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Rendering.Sharing;

/// <summary>
/// A note's text for a page that goes to anybody, put together from what was understood: values, words of the vocabulary, names
/// of medicines and conditions. What nobody can judge (free text, remarks, comments, who said so, lines that were not read) is not taken
/// over, so that no part of the page can know it. Every line keeps its number.
/// </summary>
public static class SharedNote
{
    private const string UnreadHead = "0000-00-00";

    private static readonly string[] Private = ["owner", "vet", "clinic", "phone", "chip"];
    private static readonly string[] Free = ["ask"];

    /// <summary>The text without contacts, chip, attributions, free words, and pictures that were not chosen.</summary>
    /// <param name="note">The note.</param>
    /// <param name="photos">The pictures that may be shown, as the note names them.</param>
    /// <param name="withText">True to take free text, remarks and questions too, with what reaches a person masked; never a line that was not read.</param>
    public static string Of(Note note, IReadOnlyCollection<string> photos, bool withText = false)
    {
        var hidden = new PrivateText(Contacts(note), note.Opening.Text("pet") ?? "");
        var text = new StringBuilder();
        foreach (LineSyntax line in note.Syntax.Lines)
        {
            text.Append(Line(line, photos, withText, hidden)).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>The lines of a shared text that hold free words, for whoever is to look at them before they go anywhere.</summary>
    public static IEnumerable<string> FreeLines(string shared) => NoteSyntax.Parse(shared).Lines
        .Where(line => line.Kind == LineKind.FreeText || line.Marks.Any(mark => mark.Kind == TokenKind.Text)).Select(line => line.Text.Trim());

    /// <summary>The pictures that a note names, in the order of its lines.</summary>
    public static IEnumerable<string> PhotosOf(Note note) => note.Entries.SelectMany(entry => entry.Items).Select(item => item.Value).OfType<Photo>().Select(photo => photo.File.Text).Distinct();

    /// <summary>All that the note says of people: its contacts, who said or wrote something, and what stands in the opening unread.</summary>
    private static IEnumerable<string> Contacts(Note note)
    {
        int opening = note.Entries.Length > 0 ? note.Entries[0].Line : note.Syntax.Lines.Length;
        return note.Syntax.Lines.SelectMany(line => line.Items).SelectMany(item =>
                item is TextFact fact && Private.Contains(fact.Word.Word) ? [fact.Text.Text] : item.Body.Filled.Select(slot => slot.Value).OfType<Attribution>().Select(per => per.Who))
            .Concat(note.Syntax.Lines.Select(line => line.EntryHead?.By ?? ""))
            .Concat(note.Syntax.Lines.Take(opening).Where(line => line.Problems.Length > 0).Select(line => line.Text));
    }

    private static string Line(LineSyntax line, IReadOnlyCollection<string> photos, bool withText, PrivateText hidden)
    {
        switch (line.Kind)
        {
            case LineKind.EntryHead:
                return Head(line);
            case LineKind.FreeText:
                return withText && line.Problems.IsEmpty ? "  > " + hidden.Masked(line.FreeText) : "";
            case LineKind.Item when line.Problems.IsEmpty && !line.Items.Any(item => IsLeftOut(item, photos, withText)):
                return Checked(Words(line, withText, hidden), withText);
            default:
                return "";
        }
    }

    /// <summary>A head keeps its place even when it was not read: what stands below it belongs to no other day.</summary>
    private static string Head(LineSyntax line) => line.EntryHead is { Date: { } date } head && line.Problems.IsEmpty
        ? $"{date:yyyy-MM-dd}{(head.Time is { } time ? $" {time:HH:mm}" : "")} {head.Kind}"
        : UnreadHead;

    private static bool IsLeftOut(NoteItem item, IReadOnlyCollection<string> photos, bool withText) => item switch
    {
        Photo photo => !photos.Contains(photo.File.Text),
        TextFact fact => Private.Contains(fact.Word.Word),
        _ => !withText && Free.Contains(item.Word.Word),
    };

    private static string Words(LineSyntax line, bool withText, PrivateText hidden)
    {
        TextSpan[] attributions = [.. line.Items.SelectMany(item => item.Body.Filled).Select(slot => slot.Value).OfType<Attribution>().Select(per => per.Span)];
        bool isName = line.Item is TextFact or TextTask;
        var text = new StringBuilder();
        foreach (Token token in line.Tokens.Where(token => !attributions.Any(per => token.Span.Start >= per.Start && token.Span.End <= per.End)))
        {
            string written = token.Span.In(line.Text).ToString();
            text.Append(token.Kind switch
            {
                TokenKind.Comment or TokenKind.Unknown => "",
                TokenKind.Blank => written.All(c => char.IsWhiteSpace(c) || c is ',' or ';') ? written : " ",
                TokenKind.Text => isName || withText ? hidden.Masked(written) : "",
                TokenKind.Name => line.Item is Photo ? written : hidden.Masked(written),
                TokenKind.Tag => hidden.Masked(written[1..]) == written[1..] ? written : "@hidden",
                _ => written,
            });
        }

        return text.ToString().TrimEnd(' ', '\t', ',', ';');
    }

    /// <summary>What is left must be read as a line again, and hold no remark that was to go.</summary>
    private static string Checked(string text, bool withText)
    {
        LineSyntax line = NoteSyntax.Parse(text).Lines[0];
        return line.Problems.IsEmpty && (withText || line.Items.All(item => item.Note is null)) ? text : "";
    }
}
