using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.Vocabulary;

/// <summary>The regions of the body.</summary>
public class SiteTests
{
    private static readonly IReadOnlyList<Region> Regions = [.. NoteVocabulary.Default.Regions.Terms];

    [Fact]
    public void Roles_are_known_and_each_is_covered()
    {
        Assert.Equal(["body", "joint", "muscle", "node"], Regions.SelectMany(region => region.Roles).Distinct().Order());
        Assert.All(Regions, region => Assert.Contains("body", region.Roles));
    }

    /// <summary>The nodes that can be felt in a healthy animal's reach: University of Guelph, VETM3430 open text.</summary>
    [Theory]
    [InlineData("jaw", "submandibular")]
    [InlineData("shoulder-front", "prescapular")]
    [InlineData("armpit", "axillary")]
    [InlineData("groin", "inguinal")]
    [InlineData("knee-back", "popliteal")]
    public void The_lymph_nodes_an_owner_may_feel_are_known_by_both_names(string everyday, string veterinary)
    {
        Region region = NoteVocabulary.Default.Regions.Find(veterinary)!;
        Assert.Equal(everyday, region.Word);
        Assert.Contains("node", region.Roles);
    }

    /// <summary>The everyday and the anatomical names of the limb joints: Nomina Anatomica Veterinaria (from memory).</summary>
    [Theory]
    [InlineData("shoulder", "glenohumeral", SideRule.Front)]
    [InlineData("elbow", "cubital", SideRule.Front)]
    [InlineData("wrist", "carpus", SideRule.Front)]
    [InlineData("hip", "coxofemoral", SideRule.Hind)]
    [InlineData("knee", "stifle", SideRule.Hind)]
    [InlineData("ankle", "tarsus", SideRule.Hind)]
    [InlineData("toe", "digit", SideRule.Four)]
    public void The_limb_joints_are_known_by_both_names_and_have_the_right_sides(string everyday, string veterinary, SideRule sides)
    {
        Region region = NoteVocabulary.Default.Regions.Find(veterinary)!;
        Assert.Equal(everyday, region.Word);
        Assert.Equal(sides, region.Sides);
        Assert.Contains("joint", region.Roles);
    }

    [Fact]
    public void Places_lie_on_the_body_map() => Assert.All(Regions, region =>
    {
        Assert.InRange(region.X, 0, 100);
        Assert.InRange(region.Y, 0, 100);
    });

    [Fact]
    public void What_lies_on_the_midline_is_drawn_there() => None.Wrong(
        Regions.Where(region => region.Sides == SideRule.Mid && region.Surface != "side" && region.Y != 50).Select(region => region.Word));

    [Fact]
    public void Paired_places_seen_from_above_or_below_are_drawn_off_the_midline() => None.Wrong(
        Regions.Where(region => region.Sides == SideRule.Pair && region.Surface != "side" && region.Y == 50).Select(region => region.Word));

    /// <summary>Nose, eye, ear, neck, chest, flank, hip, tail tip: from the front to the back.</summary>
    [Fact]
    public void The_map_runs_from_nose_to_tail()
    {
        IEnumerable<int> places = ((string[])["nose", "eye", "ear", "neck", "chest", "flank", "hip", "tail-tip"]).Select(word => NoteVocabulary.Default.Regions.Find(word)!.X);
        Assert.Equal(places.Order(), places);
    }

    /// <summary>A dog has five pairs of mammary glands, a cat four: WikiVet, carnivore mammary gland.</summary>
    [Fact]
    public void The_mammary_gland_is_one_numbered_place() => Assert.Equal(SideRule.Pair, NoteVocabulary.Default.Regions.Find("gland")!.Sides);
}
