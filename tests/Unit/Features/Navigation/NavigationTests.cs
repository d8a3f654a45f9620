using HealthNotes.Features.Documents;
using HealthNotes.Features.Navigation;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Navigation;

public class NavigationTests
{
    /// <summary>Two lumps in one place, a third elsewhere, over two years.</summary>
    private const string Lumps = """
        pet Marlow
        species dog
        2025-01-01 check
          lump L-flank @lower 12mm
          lump L-flank @upper like pea
          lump R-flank @lower 9mm
        2026-01-01 check
          lump @LOWER left flank 14mm
          skip lump L-flank @lower he would not lie down
          recheck lump L-flank @lower in 2w
          recheck lump L-flank @upper in 2w
          wound L-flank @lower clean
        """;

    private const string Doses = """
        pet Marlow
        species dog
        med benazepril 5mg every 24h from 2026-01-20
        med carprofen 50mg every 12h
        2026-02-01 log
          07:30 gave Benazepril 5mg
          missed benazepril
        2026-03-01 visit
          med benazepril 10mg every 24h
        2026-03-02 log
          gave BENAZEPRIL 10mg
          stop carprofen
        """;

    [Theory]
    [InlineData(7, 8, 3)]
    [InlineData(7, 4, 3)]
    [InlineData(9, 12, 3)]
    [InlineData(8, 8, 3)]
    [InlineData(10, 28, 4)]
    [InlineData(11, 5, 11)]
    public void A_finding_is_defined_where_it_is_first_noted(int line, int character, int defined) =>
        Assert.Equal(defined, NavigationFeature.Definition(Cursor.Note(Lumps), new Place(line, character))?.Start.Line);

    [Fact]
    public void The_characters_of_a_reference_are_its_site_and_tag()
    {
        Document note = Cursor.Note(Lumps);
        Assert.Equal(["L-flank @lower", "@LOWER", "L-flank @lower", "L-flank @lower"],
            NavigationFeature.References(note, new Place(3, 10), includeDefinition: true).Select(range => TextAt(note, range)));
    }

    [Theory]
    [InlineData(3, 8, new[] { 3, 7, 8, 9 })]
    [InlineData(4, 20, new[] { 4, 10 })]
    [InlineData(5, 8, new[] { 5 })]
    [InlineData(11, 8, new[] { 11 })]
    public void Only_the_same_word_site_and_tag_is_the_same_finding(int line, int character, int[] lines)
    {
        Document note = Cursor.Note(Lumps);
        Assert.Equal(lines, NavigationFeature.References(note, new Place(line, character), includeDefinition: true).Select(range => range.Start.Line));
        Assert.Equal(lines.Skip(1), NavigationFeature.References(note, new Place(line, character), includeDefinition: false).Select(range => range.Start.Line));
        Assert.Equal(lines.Select((_, index) => index == 0), NavigationFeature.Highlights(note, new Place(line, character)).Select(found => found.Introduces));
    }

    [Theory]
    [InlineData(5, 15, 2)]
    [InlineData(6, 12, 2)]
    [InlineData(10, 8, 8)]
    [InlineData(11, 8, 3)]
    [InlineData(2, 5, 2)]
    public void A_medicine_is_defined_by_the_plan_above(int line, int character, int defined) =>
        Assert.Equal(defined, NavigationFeature.Definition(Cursor.Note(Doses), new Place(line, character))?.Start.Line);

    [Fact]
    public void A_medicine_is_referred_to_in_any_case()
    {
        Document note = Cursor.Note(Doses);
        Assert.Equal([2, 5, 6, 8, 10], NavigationFeature.References(note, new Place(6, 12), includeDefinition: true).Select(range => range.Start.Line));
        Assert.Equal([true, false, false, true, false], NavigationFeature.Highlights(note, new Place(6, 12)).Select(found => found.Introduces));
        Assert.Equal(["benazepril", "Benazepril"], NavigationFeature.References(note, new Place(6, 12), includeDefinition: true).Take(2).Select(range => TextAt(note, range)));
    }

    [Theory]
    [InlineData("2026-01-01 log\n  gave x|y 5mg\n")]
    [InlineData("2026-01-01 check\n  hr 18/1|5s\n")]
    [InlineData("2026-01-01 check\n  lump L-flank 1|2mm\n")]
    [InlineData("2026-01-01 check\n  |\n  lump L-flank\n")]
    [InlineData("2026-01-01 check|\n")]
    [InlineData("2026-01-01 check\n  > the lump L-fl|ank\n")]
    [InlineData("2026-01-01 check\n  lump L-flank # L-fl|ank\n")]
    [InlineData("|")]
    public void Nothing_is_defined_where_nothing_is_named(string marked)
    {
        Cursor at = Cursor.In(marked);
        Assert.Null(NavigationFeature.Definition(at.Document, at.Place));
    }

    [Fact]
    public void A_part_is_found_again_by_its_word_alone()
    {
        Cursor at = Cursor.In("2026-01-01 check\n  gums pink\n2026-02-01 check\n  MM pale\n  recheck gu|ms in 2d\n");
        Assert.Equal([1, 3, 4], NavigationFeature.References(at.Document, at.Place, includeDefinition: true).Select(range => range.Start.Line));
    }

    private static string TextAt(Document note, PlaceRange range) =>
        note.Syntax.Lines[range.Start.Line].Text[range.Start.Character..range.End.Character];
}
