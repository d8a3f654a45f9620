using System.Globalization;
using System.Text;
using CsCheck;
using HealthNotes.Analysis;
using HealthNotes.Features.Completion;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Hints;
using HealthNotes.Features.Hover;
using HealthNotes.Features.Lenses;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.LanguageHost;
using HealthNotes.LanguageServer.Rpc;
using HealthNotes.LanguageServer.Session;
using HealthNotes.Rendering;
using HealthNotes.Rendering.Pages;
using HealthNotes.Rendering.Photos;
using HealthNotes.Rendering.Sharing;
using HealthNotes.Tests.Grammar.Properties;
using HealthNotes.Tests.Rendering.Photos;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Fuzz;

/// <summary>
/// Whatever comes in, nothing throws. A short run belongs to every run of the tests; <c>tests/fuzz.sh SECONDS</c> goes on longer, and
/// prints the seed of what fails.
/// </summary>
public class FuzzTests
{
    private static readonly Gen<DateOnly> Today = Gen.OneOf(new(2026, 11, 25), DateOnly.MinValue, DateOnly.MaxValue, new(9999, 1, 1), new(1, 12, 31), new(2024, 2, 29));

    private static readonly Gen<string> Number = Gen.OneOf("0", "0.0", "00", "-1", "1", "0.0000001", "79228162514264337593543950335", "99999999999999999999999999999999", "2147483648", "9999999", "1/0", "0/0", "5-0", "0/15s", "8/0s", "3/7");

    private static readonly Gen<string> Date = Gen.OneOf("2026-11-20", "2026-11-24", "2026-11-25", "0001-01-01", "9999-12-31", "2026-10-04", "1900-01-01", "2199-12-31");

    private static readonly string[] Units = [.. NoteVocabulary.Default.Units.Spellings.Where(unit => unit.Length < 8)];

    /// <summary>A line that is read, with a number that nobody measures or a day that never was.</summary>
    private static readonly Gen<string> Extreme =
        from word in Gen.OneOf([.. NoteVocabulary.Default.LineWords.Spellings])
        from shape in Gen.OneOf("{0}{1}", "{0}{1} {0}{1}", "benazepril {0}{1} every {0}d", "L-flank {0}{1}", "rr >{0} per vet", "for {0}d", "in {0}w", "every {0}mo", "until {2}", "{2} every {0}y", "from {2} for {0}w", "x{0}", "{0}-{0}{1}", "{2}", "asleep {0}", "L-flank @a\ufffe {0}mm", "\uffff")
        from number in Number
        from unit in Gen.OneOf(Units)
        from date in Date
        select $"{word} {string.Format(CultureInfo.InvariantCulture, shape, number, unit, date)}";

    /// <summary>One thing over several days, with numbers at the edge of sense.</summary>
    private static readonly Gen<string> Series =
        from line in Gen.OneOf("weight {0}kg", "weight {0}kg\n  drank 600ml", "lump L-flank {0}mm", "lump L-flank {0}x{1}mm", "lump L-flank @a {0}mm", "hr {0}", "rr {0} asleep", "temp {0}C", "glucose {0}mmol/L", "drank {0}ml", "gave benazepril {0}mg", "bcs {0}/9", "wound L-elbow {0}mm", "lab creatinine {0}umol/L ref {1}-{1}", "bp {0}/{1}", "hr {0}/{1}s", "node L-jaw {0}mm", "ate {0}/{1}", "seizure {0}min", "pain {0}/{1}", "girth {0}cm", "stitches {0}/{1}")
        from numbers in Gen.Select(Gen.OneOf("0", "1", "20", "20", "21", "0.1", "300", "9999"), Gen.OneOf("0", "1", "5", "15")).Array[2, 5]
        from species in Gen.OneOf("species dog\nborn 2020\nadult-weight 27kg\n", "species cat\nborn 2020-03-01\n", "", "med benazepril 0mg tablets, 0 tablet every 24h from 2026-11-01\n", "species dog\nadult-weight 0kg\nusual rr 0-0 asleep\n")
        select $"pet A\n{species}" + string.Concat(numbers.Select((number, index) => $"2026-11-{index + 18} check\n  {string.Format(CultureInfo.InvariantCulture, line, number.Item1, number.Item2)}\n"));

    private static readonly Gen<string> Mixed =
        from opening in Extreme.Array[0, 3]
        from born in Gen.OneOf("born 2020-02-29", "born 2020", "", "born 1900", "born 2026-11-01")
        from species in Gen.OneOf("species dog\nadult-weight 27kg", "species cat", "")
        from entries in Gen.Select(Date, Gen.OneOf("check", "log", "visit"), Gen.OneOf(Extreme, Extreme, Soup.Item, Soup.Odd, Gen.Const("weight 0kg"), Gen.Const("drank 600ml"), Gen.Const("> free \uffff text")).Array[1, 6], (date, kind, lines) => $"{date} {kind}\n" + string.Concat(lines.Select(line => $"  {line}\n"))).Array[1, 4]
        select $"pet A\n{species}\n{born}\n" + string.Concat(opening.Select(line => line + "\n")) + string.Concat(entries);

    private static readonly Gen<string> Note = Gen.OneOf(Mixed, Series);

    [Fact]
    public void Any_note_on_any_day_is_read_checked_and_shown() => Gen.Select(Note, Today).ForAll(
        (text, today) =>
        {
            var note = HealthNotes.Grammar.Notes.Note.Read(text);
            var analysis = NoteAnalysis.Of(note, today);
            _ = (analysis.Findings, HealthNotes.Record.Due.DueList.Of(analysis.Record));
            _ = VisitPage.Html(analysis);
            _ = VisitPage.Markdown(analysis);
            _ = CheckSheetOf(analysis);
            _ = HealthNotes.Rendering.Folder.FolderPage.Html([new("a", "a.html", analysis, null)], today);
            _ = NoteAnalysis.Of(HealthNotes.Grammar.Notes.Note.Read(SharedNote.Of(note, [])), today).Findings;
            _ = NoteFormatter.Format(NoteSyntax.Parse(text));
        },
        iter: Effort.Times(150));

    [Fact]
    public void Any_note_on_any_day_is_edited() => Gen.Select(Note, Today).ForAll(
        (text, today) =>
        {
            var document = Document.Open("file:///a.hnote", 1, text, today);
            _ = HintFeature.In(document, new PlaceRange(default, new Place(document.Syntax.Lines.Length, 0)), HealthNotes.Features.Documents.FeatureSettings.Default);
            _ = LensFeature.In(document, FeatureSettings.Default);
            for (int line = 0; line < document.Syntax.Lines.Length; line++)
            {
                for (int at = 0; at <= document.Syntax.Lines[line].Text.Length; at += 3)
                {
                    _ = HoverFeature.At(document, new Place(line, at), FeatureSettings.Default);
                    _ = CompletionFeature.At(document, new Place(line, at), FeatureSettings.Default);
                }
            }
        },
        iter: Effort.Times(20));

    private static readonly Gen<byte[]> Frames = Gen.OneOf(
        Gen.Byte.Array[0, 60],
        Gen.OneOf("Content-Length: 2\r\n\r\n{}", "Content-Length: 5\r\n\r\n[1,2]", "\r\n", "Content-Length: 9999999999\r\n\r\n", "Content-Length: 17\r\n\r\n{\"jsonrpc\":\"2.0\"}", "Content-Type: x\r\n", "{\"jsonrpc\":\"2.0\",\"method\":null}").Array[1, 4].Select(pieces => Encoding.UTF8.GetBytes(string.Concat(pieces))));

    [Fact]
    public void Any_bytes_end_a_session_or_are_answered() => Frames.ForAll(
        bytes =>
        {
            var log = new ServerLog(null);
            var server = new Server(new ServerOptions { Today = new(2026, 11, 25) }, _ => { }, log, _ => { });
            var frames = new FrameReader(new MemoryStream(bytes), log.Fault);
            while (frames.Next() is { } message)
            {
                server.Receive(message);
            }
        },
        iter: Effort.Times(100));

    [Fact]
    public void Any_picture_is_shown_or_refused() => Gen.Select(Gen.OneOf(PhotoFiles.Jpeg(6, 60, 40), PhotoFiles.Jpeg(1, 30, 20)), Gen.Select(Gen.Int[0, 2000], Gen.Byte).Array[0, 12], Gen.Int[0, 4000]).ForAll(
        (file, changes, length) =>
        {
            byte[] broken = file[..Math.Min(file.Length, length)];
            foreach ((int at, byte value) in changes.Where(change => change.Item1 < broken.Length))
            {
                broken[at] = value;
            }

            (ShrunkPhoto? photo, string? problem) = PhotoShrinker.Shrink(broken);
            Assert.True(photo is null != problem is null);
        },
        iter: Effort.Times(100));

    private static string CheckSheetOf(NoteAnalysis analysis) => HealthNotes.Rendering.Sheet.CheckSheet.Html(analysis, Paper.A4);
}
