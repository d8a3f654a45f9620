using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using HealthNotes.Analysis;
using HealthNotes.Cli.Export;
using HealthNotes.Cli.Files;
using HealthNotes.Cli.Output;
using HealthNotes.Export.Fhir;
using HealthNotes.Export.Tables;
using HealthNotes.Files;
using HealthNotes.Rendering.Pages;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote export PATH...</c>: the notes as tables for other programs.</summary>
internal static class ExportCommand
{
    private const string Mark = "hnote-export.json";
    private const string Ndjson = "ndjson";
    private const string Csv = "csv";
    private const string Parquet = "parquet";
    private const string Fhir = "fhir";
    private const string FhirEnding = ".fhir.json";
    private const string Standard = "-";

    private static readonly JsonSerializerOptions Readable = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, WriteIndented = true };

    public static Command Create()
    {
        var paths = new Argument<string[]>("path") { Description = "Notes, or folders of notes", Arity = ArgumentArity.OneOrMore };
        var format = new Option<string>("--format") { Description = "ndjson, csv, parquet, or fhir: a FHIR R4 bundle a note", HelpName = "FORMAT", DefaultValueFactory = _ => Ndjson };
        format.AcceptOnlyFromAmong(Ndjson, Csv, Parquet, Fhir);
        var target = new Option<string>("--out", "-o") { Description = "The folder to write, one file a table (Parquet: one folder a table; FHIR: one file a note); - prints one table, or the bundle of one note", HelpName = "FOLDER", Required = true };
        var tables = new Option<string[]>("--table") { Description = $"Only this table; may stand several times ({string.Join(", ", ExportTables.All.Select(table => table.Name))})", HelpName = "NAME" };
        tables.AcceptOnlyFromAmong([.. ExportTables.All.Select(table => table.Name)]);
        var text = new Option<bool>("--with-text") { Description = "Export the owner's own words, too" };
        var key = new Option<string?>("--pseudonyms") { Description = "Replace names, contacts and chips by hashes with this key, and leave text out; @FILE reads the key from a file", HelpName = "KEY" };
        Option<DateOnly?> today = SharedOptions.Today();
        var command = new Command("export", "Write notes as tables for query engines and spreadsheets") { paths, format, target, tables, text, key, today };
        command.SetAction(parsed => Run(
            new Request(
                parsed.GetValue(paths)!, parsed.GetValue(format)!, parsed.GetValue(target)!,
                [.. ExportTables.All.Where(table => parsed.GetValue(tables) is not { Length: > 0 } wanted || wanted.Contains(table.Name))],
                parsed.GetValue(text), PseudonymsOf(parsed.GetValue(key)), parsed.DayOf(today)),
            parsed.InvocationConfiguration.Output));
        return command;
    }

    private static int Run(Request request, TextWriter output)
    {
        if (request is { WithText: true, Pseudonyms: not null })
        {
            throw new RefusedException("--with-text and --pseudonyms can't go together: nobody can know which names a text holds");
        }

        if (request is { Target: Standard, Format: Fhir, Paths: [var only] } && !Directory.Exists(only))
        {
            Terminal.WriteResult(BundleOf(NoteFile.Read(only), request));
            return ExitCodes.Fine;
        }

        if (request.Target == Standard)
        {
            if (request.Tables.Count != 1 || request.Format is Parquet or Fhir)
            {
                throw new RefusedException("standard output takes one table as ndjson or csv (name it with --table), or the bundle of one note; else name a folder with --out");
            }

            using Stream standard = Terminal.OpenOutput();
            using var text = new TextSink(request.Tables, request.Format == Csv, _ => standard);
            return Write(request, text).Code;
        }

        try
        {
            return ToFolder(request, output);
        }
        catch (IOException problem) when (!problem.Message.Contains("pipe", StringComparison.OrdinalIgnoreCase))
        {
            throw new RefusedException($"can't write {request.Target}: {problem.Message}");
        }
    }

    private static int ToFolder(Request request, TextWriter output)
    {
        using var folder = OutputFolder.Begin(request.Target, Mark, IsResult);
        (int code, int notes, long rows) written;
        if (request.Format == Fhir)
        {
            written = WriteBundles(request, folder);
        }
        else
        {
            using (RowSink sink = request.Format == Parquet
                ? new ParquetSink(request.Tables, request.Today.Year + 1, folder.Create)
                : new TextSink(request.Tables, request.Format == Csv, table => folder.Create($"{table.Name}.{request.Format}")))
            {
                written = Write(request, sink);
            }
        }

        using (Stream mark = folder.Create(Mark))
        {
            mark.Write(Encoding.UTF8.GetBytes(FormattableString.Invariant(
                $"{{\"made by hnote\": \"export\", \"schema\": {ExportTables.Version}, \"format\": \"{request.Format}\", \"today\": \"{request.Today:yyyy-MM-dd}\", \"notes\": {written.notes}, \"rows\": {written.rows}}}\n")));
        }

        folder.Finish();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Wrote {request.Target}: {written.notes:#,0} {(written.notes == 1 ? "note" : "notes")}, {(request.Format == Fhir ? "a bundle each" : $"{written.rows:#,0} rows in {request.Tables.Count} tables")}."));
        return written.code;
    }

    private static (int Code, int Notes, long Rows) Write(Request request, RowSink sink)
    {
        var notes = new ReadableNotes(request.Paths);
        int count = 0;
        long rows = 0;
        notes.ForEach(
            file =>
            {
                var note = new ExportedNote(NoteAnalysis.Of(file.ToNote(notes.Rules), request.Today), request.NameOf(file.Path), request.WithText, request.Pseudonyms);
                return request.Tables.Select(table =>
                {
                    object?[][] values = [.. table.Rows(note)];
                    return (Table: table, Rows: values.Length, Prepared: sink.Prepare(table, values));
                }).ToArray();
            },
            tables =>
            {
                count++;
                foreach ((ExportTable table, int number, object prepared) in tables)
                {
                    rows += number;
                    sink.Take(table, prepared);
                }
            });
        return (notes.Problem ?? ExitCodes.Fine, count, rows);
    }

    private static (int Code, int Notes, long Rows) WriteBundles(Request request, OutputFolder folder)
    {
        var notes = new ReadableNotes(request.Paths);
        int count = 0;
        notes.ForEach(file => new { file.Path, Bytes = BundleOf(file, request, notes.Rules) }, made =>
        {
            count++;
            // a path above the folder, or from the root, must not lead out of where the result goes
            string inside = string.Join('/', request.NameOf(made.Path).Split('/').Where(part => part.Length > 0 && part is not ("." or "..") && !part.Contains(':', StringComparison.Ordinal)));
            using Stream bundle = folder.Create(Path.ChangeExtension(request.Pseudonyms?.Of(inside) ?? inside, null) + FhirEnding);
            bundle.Write(made.Bytes);
        });
        return (notes.Problem ?? ExitCodes.Fine, count, count);
    }

    /// <summary>The bundle with the page and the note itself, which go along only without pseudonyms.</summary>
    private static byte[] BundleOf(NoteFile file, Request request, RulesFiles? rules = null)
    {
        var analysis = NoteAnalysis.Of(file.ToNote(rules), request.Today);
        string name = Path.GetFileNameWithoutExtension(file.Path);
        FhirDocument[] documents = request.Pseudonyms is not null ? [] :
        [
            new(name + ".html", "text/html", "page for the clinic", Encoding.UTF8.GetBytes(VisitPage.Html(analysis))),
            new(name + ".hnote", "text/plain", "home notes", Encoding.UTF8.GetBytes(file.Text)),
        ];
        JsonObject bundle = FhirBundle.Of(new ExportedNote(analysis, request.NameOf(file.Path), Pseudonyms: request.Pseudonyms), documents);
        return Encoding.UTF8.GetBytes(bundle.ToJsonString(Readable) + "\n");
    }

    /// <summary>Only what an export makes may be replaced by the next.</summary>
    private static bool IsResult(string file) => file.EndsWith(FhirEnding, StringComparison.Ordinal) || ExportTables.All.Any(table =>
        file == $"{table.Name}.{Ndjson}" || file == $"{table.Name}.{Csv}"
        || (file.StartsWith(table.Name + "/", StringComparison.Ordinal) && file.EndsWith("part-0.parquet", StringComparison.Ordinal)));

    private static Pseudonyms? PseudonymsOf(string? written)
    {
        string? key = written is ['@', .. var file] ? NoteFile.Read(file).Text.Trim() : written;
        return key is null ? null
            : key.Length >= Pseudonyms.ShortestKey ? new Pseudonyms(key)
            : throw new RefusedException($"a key for pseudonyms needs at least {Pseudonyms.ShortestKey} characters; a shorter one can be guessed");
    }

    private sealed record Request(string[] Paths, string Format, string Target, IReadOnlyList<ExportTable> Tables, bool WithText, Pseudonyms? Pseudonyms, DateOnly Today)
    {
        private readonly string? top = Paths is [var one] ? Directory.Exists(one) ? one : Path.GetDirectoryName(one) : null;

        /// <summary>The file as rows name it: below the one folder that was given, else as given.</summary>
        public string NameOf(string path) => (top is null ? path : Path.GetRelativePath(top.Length == 0 ? "." : top, path)).Replace('\\', '/');
    }
}
