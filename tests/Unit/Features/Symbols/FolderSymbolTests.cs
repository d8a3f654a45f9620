using HealthNotes.Features.Documents;
using HealthNotes.Features.Symbols;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Symbols;

public class FolderSymbolTests
{
    private static readonly Document[] Folder =
    [
        Document.Open("file:///marlow.hnote", 1, "pet Marlow\nmed benazepril 5mg every 24h\n2026-10-04 check\n  lump L-flank @lower 12mm\n2026-10-05 log\n  lump left flank @lower 13mm\n  lump chin\n", Cursor.Today),
        Document.Open("file:///tansy.hnote", 1, "pet Tansy\nmed Benazepril 2mg every 24h\nmed benazepril 3mg every 24h\n2026-10-04 visit\n  wound R-ear clean\n", Cursor.Today),
    ];

    [Theory]
    [InlineData("marl", new[] { "Marlow" })]
    [InlineData("MRLW", new[] { "Marlow" })]
    [InlineData("bena", new[] { "benazepril", "Benazepril" })]
    [InlineData("lump flank", new[] { "lump L-flank @lower" })]
    [InlineData("lmp", new[] { "lump L-flank @lower", "lump chin" })]
    [InlineData("10-05", new[] { "2026-10-05 log" })]
    [InlineData("2026 visit", new[] { "2026-10-04 visit" })]
    [InlineData("ear", new[] { "wound R-ear", "benazepril", "Benazepril" })]
    public void Names_are_found_by_their_letters(string query, string[] names) =>
        Assert.Equal(names, SymbolFeature.InWorkspace(Folder, query).Select(symbol => symbol.Name));

    [Fact]
    public void Everything_is_found_with_where_it_is()
    {
        FolderSymbol[] all = [.. SymbolFeature.InWorkspace(Folder, "")];
        Assert.Equal(10, all.Length);
        Assert.Equal(new FolderSymbol("lump L-flank @lower", "Marlow", SymbolSort.Finding, "file:///marlow.hnote", new(new(3, 2), new(3, 26))), all[4]);
        Assert.Equal(["Marlow", "Tansy"], all.Take(2).Select(symbol => symbol.Name));
        Assert.Equal("file:///tansy.hnote", all[1].Uri);
    }

    [Fact]
    public void What_no_name_holds_is_not_found() => Assert.Empty(SymbolFeature.InWorkspace(Folder, "zebra"));

    [Fact]
    public void The_closest_come_first()
    {
        Document note = Cursor.Note("pet Lee\nmed lexeme 5mg every 24h\nmed syrup-lee 5mg every 24h\n");
        Assert.Equal(["Lee", "syrup-lee", "lexeme"], SymbolFeature.InWorkspace([note], "lee").Select(symbol => symbol.Name));
    }

    [Fact]
    public void Not_more_are_given_than_anybody_reads()
    {
        Document note = Cursor.Note(string.Join('\n', Enumerable.Range(0, 500).Select(day => $"{new DateOnly(2024, 1, 1).AddDays(day):yyyy-MM-dd} log")));
        FolderSymbol[] found = [.. SymbolFeature.InWorkspace([note, note], "2")];
        Assert.Equal(SymbolFeature.MostFound, found.Length);
        Assert.Equal("2025-05-14 log", found[0].Name);
    }
}
