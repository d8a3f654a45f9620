using CsCheck;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Record.Courses;
using HealthNotes.Tests.Grammar.Properties;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features;

/// <summary>However a document came about, it is the one that reading its text gives.</summary>
public class IncrementalTests
{
    private const int Edits = 12;

    /// <summary>Lines that findings of other lines rest on, and lines that rest on others.</summary>
    private static readonly string[] Telling =
    [
        "2026-10-01 check\n", "2026-11-01 check\n", "2026-11-01 18:00 visit by the vet\n", "3 nov\n", "20 jan check\n", "2026-12-24 log\n", "2025-02-03\n", "2026-11-2 check\n",
        "  rr 32 asleep\n", "  rr 36 asleep\n", "  rr 24 asleep\n", "  rr 9/15s asleep\n", "  hr 50/15s\n", "  hr 18/15s\n", "  temp 40.2C\n", "  glucose 3mmol/L\n",
        "  lump L-flank 12mm\n", "  lump L-flank @low 8mm\n", "  lump R-gland3 5mm\n", "  07:30 seizure 2min\n", "  seizure 6min\n", "  seizure <5min\n",
        "  weight 27kg\n", "  weight 4kg\n", "  weight 60kg\n", "  gums pale\n", "  tooth 208 tartar\n", "  gave ibuprofen 200mg\n", "  node L-jaw 30mm\n", "  bcs 8/9\n", "  bcs 4/5\n",
        "species dog\n", "species cat\n", "born 2017-03\n", "born 2026-05\n", "adult-weight 27kg\n", "adult-weight 4kg\n", "pet Marlow\n", "units us\n",
        "usual rr 20-36 asleep per vet 2026-01-20\n", "call-if rr asleep >28 per vet\n", "call-if rr asleep >28\n", "known tartar on tooth 208\n", "med ibuprofen 5mg\n", "med insulin 2 units every 12h\n",
        "2026-11-20 check\n", "2026-11-20 log\n", "2026-11-21 log by technician\n", "2026-11-23 log\n", "2026-06-01 visit\n", "2025-12-01 check\n", "accept lump lump L-flank until 2027-03-01 seen\n", "accept sign tooth 208 until 2026-10-20\n", "expect wound swollen, red until 2026-11-24 per vet\n", "accept lumb until 2027-01-01\n",
        "home-check every 10d\n", "  recheck ear L in 2w\n", "  ear L clean\n", "  due booster 2026-11-10\n", "  done booster\n", "  med benazepril 5mg every 12h from 2026-11-01\n", "  08:00 gave benazepril 5mg\n", "  gave benazepril 5mg\n",
        "  missed benazepril\n", "  stop benazepril\n", "  ate none\n", "  07:30 ate all\n", "  water 900ml\n", "  water 2l\n", "  vomit 3x\n", "  vomit retching\n", "  stool loose 2x\n", "  belly hard\n", "  weight 24kg\n", "  weight 25kg\n",
        "  lump L-flank 18mm\n", "  lump R-flank 20mm ulcerated\n", "  node R-jaw 12mm\n", "  rr 28 asleep\n", "  hr 72\n", "  hr 74\n", "  hr 110\n", "known target lump L-flank\n", "known overweight, plan 1%/week\n",
        "> free *text*\n", "    > below\n", "# a comment\n", "\n", "gland5 hmm\n", "  lump gland5 2mm\n", "\r\n", "\r", "é🐕\n",
    ];

    private static readonly Gen<string> Piece = Gen.Frequency(
        (6, Gen.OneOf(Telling)),
        (2, Gen.OneOf(Telling).Array[2, 6].Select(string.Concat)),
        (1, Gen.OneOf("", " ", "\n", "2", ">", "6", "x")),
        (1, Soup.Note));

    private static readonly Gen<(int Start, int Length, string Text, bool Ask)[]> Session =
        Gen.Select(Gen.Int[0, 10_000], Gen.OneOf(Gen.Const(0), Gen.Int[0, 8], Gen.Int[0, 120]), Piece, Gen.Bool).Array[1, Edits];

    [Fact]
    public void An_edited_document_is_the_one_that_its_text_gives() =>
        Gen.Select(Gen.OneOf(Telling).Array[0, 40].Select(string.Concat), Session).ForAll((text, edits) => Follow(text, edits), iter: Effort.Times(500));

    [Fact]
    public void Edits_of_a_long_note_too() =>
        Session.ForAll(edits => Follow(File.ReadAllText(Repository.PathOf("samples/juniper-after-surgery.hnote")), edits), iter: Effort.Times(25));

    [Fact]
    public void What_an_edit_leaves_alone_in_an_entry_stays_the_same_object()
    {
        Document document = Cursor.Note("pet A\nspecies dog\n2026-11-20 log\n  rr 24 asleep\n  lump L-flank 12mm\n");
        Course before = document.Record.All("lump").Single();

        Document after = document.Edit(new DocumentEdit(PlaceRange.At(3, 6), "9"), 2);

        Assert.Same(before, after.Record.All("lump").Single());
    }

    [Fact]
    public void Two_entries_of_one_day_stay_two()
    {
        Document document = Cursor.Note("pet A\nspecies dog\n2026-11-20 log\n  gums pale\n");

        Document after = document.Edit(DocumentEdit.Insert(4, 0, "2026-11-20 log\n  gums pink\n"), 2);

        Assert.Contains(document.Analysis.CurrentFindings, finding => finding.Line == 3);
        Assert.DoesNotContain(after.Analysis.CurrentFindings, finding => finding.Line == 3);
        AssertFresh(after);
    }

    private static void Follow(string text, (int Start, int Length, string Text, bool Ask)[] edits)
    {
        Document document = Cursor.Note(text);
        _ = document.Analysis;
        foreach ((int start, int length, string piece, bool ask) in edits)
        {
            PlaceRange range = RangeOf(document, start, length);
            document = document.Edit(new DocumentEdit(range, piece), document.Version + 1);
            if (ask)
            {
                AssertFresh(document);
            }
        }

        AssertFresh(document);
    }

    private static void AssertFresh(Document document)
    {
        var fresh = Document.Open(document.Uri, document.Version, document.Syntax.Print(), document.Today);
        Assert.Equal(NoteDump.Of(fresh), NoteDump.Of(document));
    }

    private static PlaceRange RangeOf(Document document, int start, int length)
    {
        int total = document.Syntax.Lines.Sum(line => line.Text.Length + line.Ending.Length);
        int from = total == 0 ? 0 : start % (total + 1);
        return new PlaceRange(PlaceOf(document.Syntax, from), PlaceOf(document.Syntax, Math.Min(total, from + length)));
    }

    /// <summary>The place of an offset; inside a line break, the end of the line before it.</summary>
    private static Place PlaceOf(NoteSyntax syntax, int offset)
    {
        for (int line = 0; line < syntax.Lines.Length; line++)
        {
            int length = syntax.Lines[line].Text.Length;
            if (offset < length + syntax.Lines[line].Ending.Length || line == syntax.Lines.Length - 1)
            {
                return new Place(line, Math.Min(offset, length));
            }

            offset -= length + syntax.Lines[line].Ending.Length;
        }

        return default;
    }
}
