using CsCheck;
using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Symbols;
using HealthNotes.Tests.Grammar.Properties;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Symbols;

public class OutlineTests
{
    private const string Marlow = """
        # Invented demo data.
        pet Marlow
        species dog
        breed rough-coated lurcher type
        med benazepril 5mg every 24h

        2026-10-04 08:15 check # at home
          gums pink moist
          lump L-flank @lower 12mm soft
          07:30 gave benazepril 5mg
          > He shakes his head.
          # a remark

        2026-10-05
          ear L red
          what is this

        # the end
        """;

    [Fact]
    public void The_outline_is_the_opening_and_the_entries()
    {
        OutlineSymbol[] outline = [.. SymbolFeature.Outline(Cursor.Note(Marlow))];
        Assert.Equal(["Marlow", "2026-10-04 check", "2026-10-05 log"], outline.Select(symbol => symbol.Name));
        Assert.Equal("rough-coated lurcher type", outline[0].Detail);
        Assert.Equal("4 lines, 1 to watch", outline[1].Detail);
        Assert.Equal("2 lines, 1 to watch", outline[2].Detail);
        Assert.Equal([SymbolSort.Pet, SymbolSort.Entry, SymbolSort.Entry], outline.Select(symbol => symbol.Sort));
        Assert.Equal([(1, 4), (6, 11), (13, 17)], outline.Select(symbol => (symbol.Range.Start.Line, symbol.Range.End.Line)));
        Assert.Equal(new PlaceRange(new(6, 0), new(6, 22)), outline[1].Selection);
    }

    [Fact]
    public void Its_lines_have_names_and_details()
    {
        OutlineSymbol[] outline = [.. SymbolFeature.Outline(Cursor.Note(Marlow))];
        Assert.Equal([("species", "dog"), ("breed", "rough-coated lurcher type"), ("med benazepril", "5mg every 24h")], outline[0].Children.Select(child => (child.Name, child.Detail)));
        Assert.Equal([("gums", "pink moist"), ("lump L-flank @lower 12mm", "soft"), ("07:30 gave benazepril 5mg", null)], outline[1].Children.Select(child => (child.Name, child.Detail)));
        Assert.Equal([SymbolSort.Exam, SymbolSort.Finding, SymbolSort.Care], outline[1].Children.Select(child => child.Sort));
    }

    [Theory]
    [InlineData("rr 18/30s asleep", "rr 18/30s asleep", null)]
    [InlineData("rr asleep 18/30s", "rr asleep 18/30s", null)]
    [InlineData("weight 14.2kg after breakfast", "weight 14.2kg", "after breakfast")]
    [InlineData("T 38.5C", "T 38.5C", null)]
    [InlineData("bcs 5/9", "bcs 5/9", null)]
    [InlineData("stool 2x soft", "stool 2x", "soft")]
    public void A_value_is_part_of_the_name(string line, string name, string? detail)
    {
        OutlineSymbol symbol = SymbolFeature.Outline(Cursor.Note($"2026-10-04 log\n  {line}\n"))[0].Children[0];
        Assert.Equal((name, detail), (symbol.Name, symbol.Detail));
    }

    [Theory]
    [InlineData("")]
    [InlineData("# only a comment\n")]
    [InlineData("\n\n")]
    public void A_note_that_says_nothing_has_no_outline(string text) => Assert.Empty(SymbolFeature.Outline(Cursor.Note(text)));

    [Fact]
    public void Ranges_are_in_the_document_and_nested() => Soup.Note.ForAll(text =>
    {
        Document note = Document.Open("file:///a.hnote", 1, text, Cursor.Today);
        Place? before = null;
        foreach (OutlineSymbol symbol in SymbolFeature.Outline(note))
        {
            Assert.True(before is null || before < symbol.Range.Start);
            before = symbol.Range.End;
            AssertInside(note, symbol, Whole(note));
        }
    }, iter: Effort.Times(300));

    [Fact]
    public void The_counts_of_an_entry_are_those_of_its_findings() => Soup.PlainNote.ForAll(text =>
    {
        Document note = Document.Open("file:///a.hnote", 1, "pet A\nspecies cat\n2026-11-20 check\n" + text, Cursor.Today);
        OutlineSymbol[] entries = [.. SymbolFeature.Outline(note).Where(symbol => symbol.Sort == SymbolSort.Entry)];
        for (int index = 0; index < entries.Length; index++)
        {
            int urgent = note.Analysis.Findings.Count(f => f.Level == FindingLevel.Urgent && note.Note.EntryAt(f.Line) == note.Note.Entries[index]);
            Assert.Equal(urgent > 0, entries[index].Detail!.EndsWith($", {urgent} urgent", StringComparison.Ordinal));
        }
    }, iter: Effort.Times(100));

    private static void AssertInside(Document note, OutlineSymbol symbol, PlaceRange outer)
    {
        Assert.NotEmpty(symbol.Name);
        Assert.True(outer.Start <= symbol.Range.Start && symbol.Range.End <= outer.End);
        Assert.True(symbol.Range.Start <= symbol.Selection.Start && symbol.Selection.End <= symbol.Range.End && symbol.Selection.Start < symbol.Selection.End);
        Assert.All(symbol.Children, child => AssertInside(note, child, symbol.Range));
    }

    private static PlaceRange Whole(Document note) => new(new Place(0, 0), note.Clamp(new Place(int.MaxValue, 0)));
}
