using System.Globalization;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Rendering.Drawing.Body;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Tests.Rendering.Drawing;

/// <summary>The map of the body: every place of the vocabulary lies on the animal, and the numbers are those of the table.</summary>
public class BodyMapTests
{
    private static readonly double[] Offsets = [0, 1.25, -1.25, 2.5, -2.5];

    [Theory]
    [InlineData(Species.Dog)]
    [InlineData(Species.Cat)]
    public void Every_place_lies_on_the_animal(Species species)
    {
        List<string> outside = [];
        foreach (Region region in NoteVocabulary.Default.Regions.Terms.Where(region => region.Roles.Contains("body") && (region.Species == "both" || region.Species.Equals($"{species}", StringComparison.OrdinalIgnoreCase))))
        {
            foreach (Side side in SidesOf(region))
            {
                BodySpot[] spots = [.. BodySpot.Of(new Site(default(TextSpan), side, region, region.Word == "gland" ? 2 : null), species)];
                if (spots.Length == 0 && side != Side.None)
                {
                    outside.Add($"{side} {region.Word}: nowhere");
                }

                outside.AddRange(spots.Where(spot => !IsOn(Outline.Of(species, spot.View), spot)).Select(spot => $"{side} {region.Word}: {spot}"));
            }
        }

        Assert.Empty(outside);
    }

    [Fact]
    public void Left_and_right_are_those_of_the_animal()
    {
        Assert.Equal([BodyView.Left], Views("L", "flank"));
        Assert.Equal([BodyView.Right], Views("R", "flank"));
        Assert.Equal([BodyView.Left, BodyView.Right], Views("Both", "flank"));

        // seen from above with its nose to the left, its left side is below; on its back, it is above
        Assert.True(Spot("L", "loin").Y > 50);
        Assert.True(Spot("R", "loin").Y < 50);
        Assert.True(Spot("L", "armpit").Y < 50);
        Assert.True(Spot("R", "gland", 1).Y > 50);

        // the glands are counted from the front, and a cat's four pairs lie where a dog has five
        Assert.True(Spot("R", "gland", 1).X < Spot("R", "gland", 5).X);
        Assert.Equal(Spot("R", "gland", 5).X, BodySpot.Of(SiteOf("R", "gland", 4), Species.Cat).Single().X);
        Assert.True(Spot("LH", "paw").X > Spot("LF", "paw").X + 30);
        Assert.Empty(BodySpot.Of(SiteOf("None", "flank"), Species.Dog));
    }

    [Fact]
    public void The_numbers_on_the_map_are_those_of_the_table()
    {
        IHtmlDocument page = Pages.Document("pet A\nspecies dog\n2026-10-01 check\n  lump L-flank 12mm\n  wound RH-paw 20mm\n  lump R-gland3 like pea\n  node L-jaw 12mm\n  pain-site R-knee\n  lump chest 5mm\n");
        string[][] titles = [.. page.QuerySelectorAll("section.body li > strong").Select(title => title.TextContent.TrimEnd(':').Split(", ", 2))];
        Dictionary<string, string> table = titles.ToDictionary(title => title[0].Split(' ')[^1], title => $"{title[0][..title[0].LastIndexOf(' ')]}, {title[1]}".ToLowerInvariant());
        Assert.Equal(6, table.Count);
        string[] drawn = [.. page.QuerySelectorAll("section.body svg[role=img] text.number").Select(text => text.TextContent)];
        Assert.Equal(5, drawn.Length);
        string words = string.Join("; ", page.QuerySelectorAll("section.body svg desc").Select(desc => desc.TextContent));
        Assert.All(drawn, number => Assert.Contains($"{number}: {table[number]}", words, StringComparison.Ordinal));
        string without = Assert.Single(table.Keys.Except(drawn));
        Assert.Contains($"Number {without} is not on the map", page.Section("body"), StringComparison.Ordinal);
        Assert.Equal(1, page.QuerySelectorAll("section.body svg[role=img] .mark-wound").Length);
    }

    [Fact]
    public void Marks_in_one_place_do_not_cover_each_other()
    {
        string lumps = string.Concat(Enumerable.Range(0, 20).Select(n => $"  lump L-flank @t{n} {10 + n}mm\n"));
        IElement map = Pages.Document("pet A\nspecies dog\n2026-10-01 check\n" + lumps).QuerySelector("section.body svg[role=img]")!;
        (double X, double Y)[] marks = [.. map.QuerySelectorAll("circle.mark-lump").Select(mark => (Number(mark, "cx"), Number(mark, "cy")))];
        Assert.Equal(20, marks.Length);
        Assert.All(
            marks.SelectMany((_, i) => Enumerable.Range(i + 1, marks.Length - i - 1), (one, j) => (one, marks[j])),
            pair => Assert.True(Math.Sqrt(Math.Pow(pair.one.X - pair.Item2.X, 2) + Math.Pow(pair.one.Y - pair.Item2.Y, 2)) >= 16));
        Assert.All(marks, mark => Assert.True(mark.X is > 0 and < 324 && mark.Y is > 0 and < 204));
    }

    [Fact]
    public void First_and_last_size_are_told_and_what_is_gone_comes_last()
    {
        string note = "pet A\nspecies dog\n" + string.Concat(Enumerable.Range(1, 8).Select(month => $"2026-0{month}-01 check\n  lump L-flank {8 + month}mm\n  lump R-flank {(month < 3 ? "5mm" : "gone")}\n"));
        IHtmlDocument page = Pages.Document(note);
        Assert.Equal(["Lump 1, left flank:", "Lump 2, right flank:"], page.QuerySelectorAll("section.body li > strong").Select(title => title.TextContent));
        Assert.Contains("9 mm (1 Jan) → 15 mm (1 Jul) → 16 mm (1 Aug), +78 % in 7 months", page.Section("problems"), StringComparison.Ordinal);
        Assert.Contains("gone 1 Mar", page.Section("body"), StringComparison.Ordinal);
        Assert.DoesNotContain(page.QuerySelectorAll("section.body svg[role=img] desc"), desc => desc.TextContent.Contains("right flank", StringComparison.Ordinal));
    }

    [Fact]
    public void Five_thousand_lumps_stay_a_small_page()
    {
        string lumps = string.Concat(Enumerable.Range(0, 5_000).Select(n => $"  lump L-flank @t{n} {1 + (n % 40)}mm\n"));
        string html = Pages.Html("pet A\nspecies dog\n2026-09-01 check\n" + lumps + "2026-10-01 check\n" + lumps);
        Assert.InRange(html.Length, 10_000, 400_000);
        Assert.Contains("4,940 more are in the notes.", html, StringComparison.Ordinal);
    }

    private static IEnumerable<Side> SidesOf(Region region) => region.Sides switch
    {
        SideRule.Mid => [Side.None, Side.Mid],
        SideRule.Pair => [Side.L, Side.R, Side.Both],
        SideRule.Four => [Side.LF, Side.RF, Side.LH, Side.RH],
        SideRule.Any => [Side.None, Side.L, Side.R, Side.Mid],
        _ => [Side.L, Side.R],
    };

    private static bool IsOn(Outline outline, BodySpot spot) =>
        Offsets.Any(x => Offsets.Any(y => outline.Holds(spot.X + x, spot.Y + y)));

    private static BodyView[] Views(string side, string region) => [.. BodySpot.Of(SiteOf(side, region), Species.Dog).Select(spot => spot.View)];

    private static BodySpot Spot(string side, string region, int? number = null) => BodySpot.Of(SiteOf(side, region, number), Species.Dog).Single();

    private static Site SiteOf(string side, string region, int? number = null) => new(default, Enum.Parse<Side>(side), NoteVocabulary.Default.Regions.Find(region), number);

    private static double Number(IElement element, string name) => double.Parse(element.GetAttribute(name)!, CultureInfo.InvariantCulture);
}
