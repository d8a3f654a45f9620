using System.Text;
using HealthNotes.Analysis;
using HealthNotes.Export.Tables;
using HealthNotes.Export.Writers;
using HealthNotes.Grammar.Notes;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Export;

public class ExportTableTests
{
    private const string Key = "a key that nobody guesses";

    /// <summary>Every place of a note in which a name may stand has one here.</summary>
    private const string Personal = """
        pet Zorinda
        species dog
        breed collie
        sex female
        born 2020-03
        owner Zorinda Petrov
        vet Zorinda Smith
        clinic Zorinda House
        phone 555 Zorinda
        chip 123 Zorinda
        known lump on Zorinda
        allergy Zorinda drops
        call-if rr asleep >32 per Zorinda 2026-01-20
        med Zorindazole 5mg every 12h
        2026-10-04 check by Zorinda
          gave Zorindazole 5mg
          missed carprofen Zorinda hid it
          lump L-flank @zorinda 12mm
          wound R-flank @zorinda red
          vaccine Zorinda 2026-01-02 for 1y
          due zorinda visit 2026-12-01
          ask does Zorinda sleep?
          ear L wax, says Zorinda
          skip mouth Zorinda growled
          Zorinda is fien today 5
          lab creatinine 110umol/L
          lab urine culture Zorinda negative
          lab Zorinda 5
          lab albumin 30Zorindas
          > Zorinda was happy.
        """;

    [Fact]
    public void With_pseudonyms_no_name_and_no_words_are_left()
    {
        string open = Everything(new ExportedNote(Read(Personal), "Zorinda/zorinda.hnote", WithText: true));
        Assert.True(open.Split("Zorinda", StringSplitOptions.None).Length > 20);
        string hidden = Everything(new ExportedNote(Read(Personal), "Zorinda/zorinda.hnote", Pseudonyms: new Pseudonyms(Key)));
        Assert.DoesNotContain("zorinda", hidden, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("\"collie\"", hidden, StringComparison.Ordinal);
        Assert.Contains("\"carprofen\"", hidden, StringComparison.Ordinal);
        Assert.Contains("\"creatinine\",\"value\":110,\"unit\":\"umol/L\"", hidden, StringComparison.Ordinal);
    }

    /// <summary>A breed, what a laboratory measured and its unit are words of the owner's, too: they stay when every word is known.</summary>
    [Theory]
    [InlineData("pets", "breed", "breed Border Collie x", "Border Collie x")]
    [InlineData("pets", "breed", "breed Labrador from Zorinda", null)]
    [InlineData("pets", "breed", "breed Labrador 01632 960111", null)]
    [InlineData("labs", "analyte", "lab T4 25nmol/L", "t4")]
    [InlineData("labs", "analyte", "lab total bilirubin 5umol/L", "total bilirubin")]
    [InlineData("labs", "analyte", "lab results from Zorinda pending", null)]
    [InlineData("labs", "analyte", "lab border 5", null)]
    [InlineData("labs", "unit", "lab alt 55 u/l", "u/l")]
    [InlineData("labs", "unit", "lab pcv 45%", "%")]
    [InlineData("labs", "unit", "lab alt 55zorindas", null)]
    [InlineData("doses", "medicine", "gave carprofen 75mg", "carprofen")]
    [InlineData("doses", "medicine", "gave Zorindazole 5mg", null)]
    public void Under_pseudonyms_a_text_stays_only_when_its_words_are_known(string table, string column, string line, string? kept)
    {
        string text = table == "pets" ? $"pet X\nspecies dog\n{line}\n" : $"pet X\nspecies dog\n2026-10-04 log\n  {line}\n";
        string shown = (string)Assert.Single(Rows(table, text, new Pseudonyms(Key)))[column]!;
        Assert.Equal(kept ?? "16 hexadecimal digits", shown.Length == 16 && shown.All(char.IsAsciiHexDigitLower) ? "16 hexadecimal digits" : shown);
    }

    [Fact]
    public void The_same_key_gives_the_same_pseudonym_and_another_key_another()
    {
        Assert.Equal(new Pseudonyms(Key).Of("Marlow"), new Pseudonyms(Key).Of("Marlow "));
        Assert.NotEqual(new Pseudonyms(Key).Of("Marlow"), new Pseudonyms(Key + "!").Of("Marlow"));
        // RFC 2104 with SHA-256, worked out with Python's hmac and hashlib
        Assert.Equal("f7bc83f430538424", new Pseudonyms("key").Of("The quick brown fox jumps over the lazy dog"));
    }

    [Fact]
    public void Without_asking_no_free_text_is_exported()
    {
        string rows = Everything(new ExportedNote(Read(Personal), "z.hnote"));
        Assert.DoesNotContain("was happy", rows, StringComparison.Ordinal);
        Assert.DoesNotContain("does Zorinda sleep", rows, StringComparison.Ordinal);
        Assert.DoesNotContain("growled", rows, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("readings", "rr 17/30s asleep", "rr|asleep|34|32|36|/min|32")]
    [InlineData("readings", "bp 150/90", "bp-systolic||150|||mmHg|;bp-diastolic||90|||mmHg|")]
    [InlineData("readings", "weight 44lb", "weight||19.958064|||kg|")]
    public void A_reading_has_its_canonical_value_and_the_limit_that_held(string table, string line, string expected) => Assert.Equal(expected, string.Join(';', Rows(
        table, $"pet X\nspecies dog\ncall-if rr asleep >32\n2026-10-04 check\n  {line}\n").Select(row =>
            string.Join('|', new[] { row["what"], row["state"], row["value"], row["low"], row["high"], row["unit"], row["limit_above"] }.Select(value => value is decimal number ? $"{RowText.Rounded(number)}" : $"{value}")))));

    [Theory]
    [InlineData("gums pale, not dry", "gums pale present call;gums dry absent ")]
    [InlineData("ear ok", "ear  ok ")]
    [InlineData("skip mouth growled", "mouth  skipped ")]
    [InlineData("no cough", "cough  absent ")]
    [InlineData("else ok", "else  ok ")]
    [InlineData("weight 20kg", "")]
    [InlineData("limp gone", "gait lame ended ")]
    public void A_sign_is_there_or_not_there(string line, string expected) => Assert.Equal(expected, string.Join(';', Rows(
        "signs", $"pet X\nspecies dog\n2026-10-04 check\n  {line}\n").Select(row => $"{row["part"]} {row["sign"]} {row["sense"]} {row["level"]}")));

    [Theory]
    [InlineData("vomit x3", "vomit 3 ")]
    [InlineData("no vomiting", "vomit 0 ")]
    [InlineData("ate half", "ate  0.5")]
    public void Care_has_its_times_and_its_part(string line, string expected) => Assert.Equal(expected, string.Join(';', Rows(
        "care", $"pet X\nspecies dog\n2026-10-04 log\n  {line}\n").Select(row => FormattableString.Invariant($"{row["what"]} {row["times"]} {row["part"]}"))));

    [Fact]
    public void The_id_stays_when_the_file_moves_and_a_chip_is_written()
    {
        NoteAnalysis note = Read("pet X\nspecies dog\nchip 217\n");
        Assert.Equal(new ExportedNote(note, "a.hnote").PetId, new ExportedNote(note, "b/c.hnote").PetId);
        Assert.NotEqual(new ExportedNote(Read("pet X\n"), "a.hnote").PetId, new ExportedNote(Read("pet X\n"), "b.hnote").PetId);
    }

    [Fact]
    public void CSV_quotes_what_would_end_a_value() => Assert.Equal(
        "\"a \"\"b\"\", c\",,1.5,true,2026-10-04,\"x\ny\"\r\n",
        Encoding.UTF8.GetString(RowText.Csv([["a \"b\", c", null, 1.500m, true, new DateOnly(2026, 10, 4), "x\ny"]])));

    /// <summary>The page of tables is written from the tables; <c>HNOTE_WRITE_DOCS=1</c> brings it up to date.</summary>
    [Fact]
    public void The_documentation_is_that_of_the_tables()
    {
        const string Start = "<!-- tables -->\n";
        string file = Repository.PathOf("server/Export/TABLES.md");
        string text = File.ReadAllText(file);
        string now = text[..(text.IndexOf(Start, StringComparison.Ordinal) + Start.Length)] + "\n" + SchemaText.Markdown();
        if (Environment.GetEnvironmentVariable("HNOTE_WRITE_DOCS") == "1")
        {
            File.WriteAllText(file, now);
        }

        Assert.Equal(now, File.ReadAllText(file));
    }

    private static NoteAnalysis Read(string text) => NoteAnalysis.Of(Note.Read(text), new DateOnly(2026, 11, 25));

    private static IEnumerable<Dictionary<string, object?>> Rows(string name, string text, Pseudonyms? hide = null)
    {
        ExportTable table = ExportTables.All.Single(table => table.Name == name);
        return table.Rows(new ExportedNote(Read(text), "x.hnote", Pseudonyms: hide)).Select(row => table.Columns.Zip(row).ToDictionary(pair => pair.First.Name, pair => pair.Second));
    }

    private static string Everything(ExportedNote note) => string.Concat(ExportTables.All.Select(table => Encoding.UTF8.GetString(RowText.Ndjson(table, table.Rows(note)))));
}
