using HealthNotes.Features.Completion.Items;

namespace HealthNotes.Tests.Features.Completion;

/// <summary>Sides, places, tags.</summary>
public class SiteCompletionTests
{
    private const string Dog = "species dog\n2026-10-04 check\n";
    private const string Before = "species dog\n2026-10-04 check\n  lump L-flank @lower 12mm soft\n  lump R-elbow like pea\n2026-10-20 check\n  lump L-flank @lower 14mm\n  lump R-elbow gone\n2026-11-25 check\n";

    [Theory]
    [InlineData("stif")]
    [InlineData("patell")]
    [InlineData("kne")]
    public void A_place_is_found_by_any_of_its_names(string typed)
    {
        CompletionItem knee = Offered.Item($"{Dog}  joint {typed}|", "L-knee");
        Assert.StartsWith(typed, knee.FilterText, StringComparison.Ordinal);
        Assert.Equal("L-knee", knee.Edit.NewText);
    }

    [Theory]
    [InlineData("  lump L-sti|", "L-knee", "  lump L-knee")]
    [InlineData("  lump left-sti|", "L-knee", "  lump L-knee")]
    [InlineData("  lump L sti|", "knee", "  lump L-knee")]
    [InlineData("  ear |", "L", "  ear L")]
    [InlineData("  eye OD|", "R", "  eye R")]
    [InlineData("  gland R|", "R3", "  gland R3")]
    [InlineData("  tooth 2|", "208", "  tooth 208")]
    [InlineData("  skip e|", "ear", "  skip ear")]
    [InlineData("  recheck ear |", "L", "  recheck ear L")]
    public void Sides_and_places(string line, string label, string expected) =>
        Assert.Equal(Dog + expected, Offered.Taking(Dog + line, label));

    [Fact]
    public void Sides_come_first() => Assert.Equal(["L-", "R-", "both-"], Offered.Labels($"{Dog}  lump |")[..3]);

    [Theory]
    [InlineData("species cat", true)]
    [InlineData("species dog", false)]
    public void Only_places_that_this_animal_has(string species, bool offered) =>
        Assert.Equal(offered, Offered.Labels($"{species}\n2026-10-04\n  lump prim|").Contains("belly-pouch"));

    [Theory]
    [InlineData("species cat", "L5", false)]
    [InlineData("species dog", "L5", true)]
    public void A_cat_has_four_pairs_of_glands(string species, string gland, bool offered) =>
        Assert.Equal(offered, Offered.Labels($"{species}\n2026-10-04\n  gland |").Contains(gland));

    [Fact]
    public void Only_teeth_that_this_animal_has()
    {
        Assert.DoesNotContain("105", Offered.Labels("species cat\n2026-10-04\n  tooth 1|"));
        Assert.Contains("105", Offered.Labels("species dog\n2026-10-04\n  tooth 1|"));
        Assert.Equal("upper left, 8th from the middle", Offered.Item("species dog\n2026-10-04\n  tooth 20|", "208").Detail);
        Assert.Equal("lower right, 4th from the middle, milk tooth", Offered.Item("species dog\n2026-10-04\n  tooth 80|", "804").Detail);
    }

    [Fact]
    public void Nodes_are_felt_where_nodes_are()
    {
        string[] labels = Offered.Labels($"{Dog}  node |");
        Assert.Contains("knee-back", labels);
        Assert.DoesNotContain("knee", labels);
    }

    [Fact]
    public void A_place_on_the_midline_has_no_side()
    {
        string[] labels = Offered.Labels($"{Dog}  lump nap|");
        Assert.Equal(["nape"], labels);
    }

    [Fact]
    public void What_was_noted_before_comes_first_with_its_last_size()
    {
        CompletionItem first = Offered.At(Before + "  lump |").Items[0];
        Assert.Equal("L-flank @lower", first.Label);
        Assert.Equal("14mm on 2026-10-20", first.Detail);
        CompletionItem gone = Offered.Item(Before + "  lump |", "R-elbow");
        Assert.Equal("noted as gone on 2026-10-20", gone.Detail);
    }

    [Fact]
    public void What_this_entry_has_is_not_offered_again() =>
        Assert.DoesNotContain("L-flank @lower", Offered.Labels(Before + "  lump L-flank @lower 15mm\n  lump |"));

    [Fact]
    public void A_tag_that_was_used_at_the_place_comes_first()
    {
        Assert.Equal("@lower", Offered.Labels(Before + "  lump L-flank |")[0]);
        Assert.DoesNotContain("@lower", Offered.Labels(Before + "  lump R-flank |"));
        Assert.Equal(["@lower"], Offered.Labels(Before + "  lump L-flank @|"));
    }

    [Theory]
    [InlineData("  lump L-flank 12mm li|", "like")]
    [InlineData("  lump L-flank R|", "R-")]
    [InlineData("  lump L-flank @lower @|", "@lower")]
    [InlineData("  ear L |", "R")]
    public void What_the_line_has_is_not_offered_twice(string line, string label) => Assert.DoesNotContain(label, Offered.Labels(Before + line));
}
