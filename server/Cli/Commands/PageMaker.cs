using System.Text;
using HealthNotes.Analysis;
using HealthNotes.Cli.Files;
using HealthNotes.Files;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Rendering;
using HealthNotes.Rendering.Pages;
using HealthNotes.Rendering.Sharing;

namespace HealthNotes.Cli.Commands;

/// <summary>The kinds of file a page is written as.</summary>
internal enum PageFormat
{
    /// <summary>One self-contained HTML file.</summary>
    Html,

    /// <summary>Markdown.</summary>
    Markdown,

    /// <summary>PDF, printed by a Chromium that is installed.</summary>
    Pdf,

    /// <summary>Five lines of plain text.</summary>
    Text,
}

/// <summary>What is asked of a page, whoever the note is about.</summary>
/// <param name="Today">The day it is read on.</param>
/// <param name="Format">The kind of file.</param>
/// <param name="For">Who it is for.</param>
/// <param name="Photos">For sharing, the pictures that were chosen.</param>
/// <param name="WithText">For sharing, whether free text and remarks are on the page, masked.</param>
/// <param name="Confirm">Is shown that text, and throws when the page is not to be made.</param>
/// <param name="UsUnits">True for US units, false for metric, null for what the note asks for.</param>
/// <param name="Since">Where the current period starts; null for the last visit.</param>
/// <param name="Paper">The paper of a PDF.</param>
internal sealed record PageRequest(
    DateOnly Today, PageFormat Format = PageFormat.Html, Audience For = Audience.Vet, IReadOnlyList<string>? Photos = null, bool WithText = false, Action<IReadOnlyList<string>>? Confirm = null, bool? UsUnits = null, DateOnly? Since = null, Paper Paper = Paper.A4);

/// <summary>A page that is made when its bytes are asked for.</summary>
/// <param name="File">The note's file.</param>
/// <param name="Analysis">What it is made from.</param>
/// <param name="Drawn">What to write.</param>
internal sealed record MadePage(NoteFile File, NoteAnalysis Analysis, Lazy<byte[]> Drawn)
{
    /// <summary>What to write.</summary>
    public byte[] Bytes => Drawn.Value;
}

/// <summary>Makes a page of a note: the one way for every command.</summary>
internal static class PageMaker
{
    private const int NamedAtMost = 5;

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>The ending of a page's file.</summary>
    public static string EndingOf(PageFormat format) => format switch { PageFormat.Markdown => ".md", PageFormat.Pdf => ".pdf", PageFormat.Text => ".txt", _ => ".html" };

    /// <summary>Makes the page.</summary>
    /// <exception cref="RefusedException">The note can't be read, a chosen picture is not in it, or there is no Chromium for a PDF.</exception>
    public static MadePage Make(string path, PageRequest request, RulesFiles? rules = null)
    {
        NoteFile file = NoteFile.Read(path);
        Note note = file.ToNote(rules);
        if (request.For == Audience.Share)
        {
            string shared = SharedNote.Of(note, Chosen(note, request.Photos ?? []), request.WithText);
            if (request.WithText)
            {
                request.Confirm?.Invoke([.. SharedNote.FreeLines(shared)]);
            }

            note = Note.Read(shared) with { Clinic = [.. note.Clinic.Select(rules => rules.Unnamed())] };
        }

        var analysis = NoteAnalysis.Of(note, request.Today, request.UsUnits, request.Since);
        var options = new PageOptions
        {
            For = request.For,
            Photos = path == "-" ? null : PhotoFolder.Beside(path).Read,
            Paper = request.Format == PageFormat.Pdf ? request.Paper : null,
        };
        return new MadePage(file, analysis, new(() => request.Format switch
        {
            PageFormat.Markdown => Utf8.GetBytes(VisitPage.Markdown(analysis, options)),
            PageFormat.Text => Utf8.GetBytes(VisitPage.Plain(analysis, options)),
            PageFormat.Pdf => PdfPrinter.Print(VisitPage.Html(analysis, options), request.Today),
            _ => Utf8.GetBytes(VisitPage.Html(analysis, options)),
        }));
    }

    private static IReadOnlyList<string> Chosen(Note note, IReadOnlyList<string> photos)
    {
        string[] named = [.. SharedNote.PhotosOf(note)];
        if (photos.FirstOrDefault(photo => !named.Contains(photo)) is not { } unknown)
        {
            return photos;
        }

        string hint = named.Length == 0 ? "; it names none"
            : NearestWord.Find(unknown, named) is { } nearest ? $"; did you mean {nearest}?"
            : $"; it names {string.Join(", ", named.TakeLast(NamedAtMost))}{(named.Length > NamedAtMost ? " and others" : "")}";
        throw new RefusedException($"--photo {unknown}: the note names no such picture{hint}");
    }
}
