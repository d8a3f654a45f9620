using System.Security.Cryptography;
using System.Text;
using HealthNotes.Cli.Files;
using HealthNotes.Cli.Output;
using HealthNotes.Files;
using HealthNotes.Rendering;
using HealthNotes.Rendering.Folder;
using HealthNotes.Rendering.Sharing;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote page FOLDER</c>: a page for every note, and an index that leads to them.</summary>
internal static class FolderPages
{
    public static int Write(string folder, string? target, bool force, bool noCache, PageRequest request, TextWriter output)
    {
        if (request.Format is PageFormat.Pdf or PageFormat.Text)
        {
            throw new RefusedException("a folder makes html or markdown; for a PDF or text name one note");
        }

        if (request.For == Audience.Share)
        {
            throw new RefusedException("--for share takes one note: pictures are chosen note by note");
        }

        string to = target ?? folder;
        if (to == "-" || File.Exists(to))
        {
            throw new RefusedException($"{to} is not a folder; the pages of a folder need one");
        }

        IReadOnlyList<string> notes = NoteFinder.Find([folder]);
        string ending = PageMaker.EndingOf(request.Format);
        string index = Path.Combine(to, "index" + ending);
        Dictionary<string, string> pages = notes.ToDictionary(note => note, note => Path.Combine(to, Path.ChangeExtension(Path.GetRelativePath(folder, note), ending)));
        if (pages.ContainsValue(index))
        {
            throw new RefusedException($"the page of a note named index would be the index itself; rename the note");
        }

        foreach (string page in pages.Values.Append(index))
        {
            OutputFile.Check(page, notes, force);
        }

        var rules = new RulesFiles();
        string run = string.Join('\0', ["page", Path.GetFullPath(folder), Path.GetFullPath(to), $"{request.Format} {request.For} {request.UsUnits} {request.Since:O}"]);
        RunCache cache = noCache ? RunCache.None : RunCache.Of(run, $"{run}\0{request.Today:O}\0{ThisProgram.Build}", notes.Count);
        var progress = new Progress(notes.Count);
        var listed = new List<FolderNote>();
        var each = new EachNote(message =>
        {
            progress.Clear();
            Terminal.Error.WriteLine($"hnote: {message}");
        });
        each.Do(notes, Make, (note, made, problem) =>
        {
            listed.Add(made ?? new FolderNote(Path.GetRelativePath(folder, note), null, null, problem));
            progress.Next(note);
        });
        progress.Clear();
        ReadableNotes.Report(rules);
        cache.Save(notes);
        string text = request.Format == PageFormat.Markdown ? FolderPage.Markdown(listed, request.Today) : FolderPage.Html(listed, request.Today);
        OutputFile.Write(index, Encoding.UTF8.GetBytes(text), notes, force);
        output.WriteLine($"Wrote {index}, and {listed.Count(note => note.Link is not null)} pages.");
        return each.Failed ? ExitCodes.Fault : each.Refused ? ExitCodes.Refused : ExitCodes.Fine;

        FolderNote Make(string note)
        {
            MadePage page = PageMaker.Make(note, request, rules);
            string? written = null;
            KeptResult kept = cache.Get(
                note, page.File.Bytes, () => SharedNote.PhotosOf(page.Analysis.Note).Any() ? null : rules.TextOver(note, page.File.Text), () => new KeptResult(false, written = Written()));
            if (written is null && HashOf(pages[note]) != kept.Text)
            {
                Written();
            }

            return new FolderNote(Path.GetRelativePath(folder, note), Link(to, pages[note]), page.Analysis, null);

            string Written()
            {
                Create(Path.GetDirectoryName(pages[note])!);
                OutputFile.Write(pages[note], page.Bytes, [note], force);
                return Hash(page.Bytes);
            }
        }
    }

    private static string Hash(byte[] page) => Convert.ToHexString(SHA256.HashData(page));

    /// <summary>Of a page that lies there; null where none does.</summary>
    private static string? HashOf(string page)
    {
        try
        {
            return File.Exists(page) ? Hash(File.ReadAllBytes(page)) : null;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static void Create(string folder)
    {
        try
        {
            Directory.CreateDirectory(folder);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new RefusedException($"can't make the folder {folder}");
        }
    }

    private static string Link(string folder, string page) =>
        string.Join('/', Path.GetRelativePath(folder, page).Split(Path.DirectorySeparatorChar).Select(Uri.EscapeDataString));
}
