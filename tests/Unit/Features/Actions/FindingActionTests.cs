namespace HealthNotes.Tests.Features.Actions;

/// <summary>What an owner may do with a finding.</summary>
public class FindingActionTests
{
    private const string Lump = "pet M\nspecies dog\nborn 2018\n\n2026-11-20 check\n  lump L-flank 12m|m\n";

    [Fact]
    public void It_is_accepted_for_a_month_with_its_place() => Offers.Rewrite(
        Lump, "accept", "pet M\nspecies dog\nborn 2018\naccept lump lump L-flank until 2026-12-25\n\n2026-11-20 check\n  lump L-flank 12mm\n");

    [Fact]
    public void It_is_added_to_the_questions_of_today() => Assert.Matches(
        "\n\n2026-11-25 log\n  ask about: \\S.*[^.]\n$", Offers.Applied(Lump, "ask-vet"));

    [Theory]
    [InlineData("species dog\n2026-11-25\n  gums bl|ue\n", "accept")] // what can't wait is never accepted
    [InlineData("species dog\n2026-11-25\n  gums pi|nk\n", "ask-vet")]
    [InlineData("species dog\n2026-11-25\n  gumz pi|nk\n", "ask-vet")]
    public void Not_offered(string note, string id) => Offers.None(note, id);
}
