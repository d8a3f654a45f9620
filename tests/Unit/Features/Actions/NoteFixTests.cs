namespace HealthNotes.Tests.Features.Actions;

public class NoteFixTests
{
    [Fact]
    public void A_fact_in_an_entry_moves_to_the_top()
    {
        Offers.Fix("pet Marlow\nspecies dog\n\n2026-11-01 log\n  ate all\n  bor|n 2020-05 # or so she said\n  water 200ml\n", "move-to-opening",
            "pet Marlow\nspecies dog\nborn 2020-05 # or so she said\n\n2026-11-01 log\n  ate all\n  water 200ml\n");
        Offers.Fix("2026-11-01 log\n  ate all\n  bree|d lurcher", "move-to-opening", "breed lurcher\n2026-11-01 log\n  ate all");
        Offers.Fix("# Demo\n2026-11-01 log\n  usual rr 16|-24 asleep\n  ate all", "move-to-opening", "# Demo\nusual rr 16-24 asleep\n2026-11-01 log\n  ate all");
        Offers.Fix("pet Marlow\n2026-11-01 log\nspecies| dog\n", "move-to-opening", "pet Marlow\nspecies dog\n2026-11-01 log\n");
    }

    [Fact]
    public void What_is_written_below_a_fact_moves_with_it() => Offers.Fix(
        "pet Marlow\n  > A good dog.\n2026-11-01 log\n  owner| the household\n    > The one at Larch Lane.\n    > Ring twice.\n  ate all\n", "move-to-opening",
        "pet Marlow\n  > A good dog.\nowner the household\n  > The one at Larch Lane.\n  > Ring twice.\n2026-11-01 log\n  ate all\n");

    [Fact]
    public void A_fact_that_the_opening_says_already_is_not_moved()
    {
        Offers.Fix("species dog\n2026-11-01 log\n  species| DOG\n  ate all", "say-once", "species dog\n2026-11-01 log\n  ate all");
        Assert.DoesNotContain(Offers.At("species dog\n2026-11-01 log\n  species| cat\n"), offer => offer.Id is "say-once" or "move-to-opening");
    }

    [Theory]
    [InlineData("species dog\nspecies| dog\n2026-11-01 log\n", "species dog\n2026-11-01 log\n")]
    [InlineData("species dog\nspecies| dog # sure\n2026-11-01 log\n", "species dog\n# sure\n2026-11-01 log\n")]
    [InlineData("species dog\nbreed lurcher\nspecies| cat", "species dog\nbreed lurcher")]
    public void A_fact_said_twice(string marked, string expected) => Offers.Fix(marked, "say-once", expected);

    [Fact]
    public void Which_of_two_facts_is_right_is_for_the_writer()
    {
        Assert.Equal(["Take this line away and keep line 1, `species dog`"], Offers.Titles("species dog\nspecies| cat\n", "say-once"));
        Offers.None("pet Marlow\npet| Tansy\n", "say-once");
    }

    [Fact]
    public void Observations_before_the_first_entry_get_a_head()
    {
        Offers.Fix("pet Marlow\nspecies dog\n\ngums| pink\near L wax\n  > Only the edge.\n\n2026-11-01 log\n  ate all\n", "add-entry-head",
            "pet Marlow\nspecies dog\n\n2026-11-25 check\ngums pink\near L wax\n  > Only the edge.\n\n2026-11-01 log\n  ate all\n");
        Offers.Fix("|ate all", "add-entry-head", "2026-11-25 log\nate all");
        Offers.Fix("species dog\nask why?\nate all\nwater| 200ml\n", "add-entry-head", "species dog\nask why?\n2026-11-25 log\nate all\nwater 200ml\n");
    }

    /// <summary>No fact may end up in the entry.</summary>
    [Theory]
    [InlineData("pet Marlow\ngums| pink\nspecies dog\n\n2026-11-01 log\n  ate all\n", "pet Marlow\nspecies dog\n\n2026-11-25 check\n  gums pink\n\n2026-11-01 log\n  ate all\n")]
    [InlineData("gums pink\near L wax\n  > Only the edge.\nspecies dog\nstool| soft", "species dog\n2026-11-25 check\n  gums pink\n  ear L wax\n    > Only the edge.\n  stool soft")]
    [InlineData("ate all\nspecies dog", "species dog\n\n2026-11-25 log\n  ate all")]
    [InlineData("ate all\nspecies dog\nate all\n\n2026-11-01 log", "species dog\n2026-11-25 log\n  ate all\n  ate all\n\n2026-11-01 log")]
    public void Observations_above_facts_move_below_them(string marked, string expected) =>
        Offers.Fix(marked.Contains('|') ? marked : "|" + marked, "add-entry-head", expected);

    [Fact]
    public void A_note_says_which_animal_it_is_about()
    {
        Offers.Fix("pet Marlow|\nborn 2020-05\n", "say-species", "pet Marlow\nspecies dog\nborn 2020-05\n");
        Offers.Fix("pet Tansy|\nborn 2020-05\n", "say-species", "pet Tansy\nspecies cat\nborn 2020-05\n", which: 1);
        Assert.Equal(["Add `species dog`", "Add `species cat`"], Offers.Titles("|", "say-species"));
        Offers.None("pet| Marlow\nspecies\n", "say-species");
    }

    [Fact]
    public void Lines_keep_the_line_breaks_of_the_note()
    {
        var document = HealthNotes.Features.Documents.Document.Open("file:///a.hnote", 1, "\ufeffpet Marlow\r\nborn 2020\r\n\r\n2026-11-01 log\r\n  species dog\r\n  ate all", Tests.Support.Cursor.Today);
        var offer = Assert.Single(HealthNotes.Features.Actions.ActionFeature.In(document, HealthNotes.Features.Documents.PlaceRange.At(4, 3), new()), o => o.Id == "move-to-opening");
        Assert.Equal("\ufeffpet Marlow\r\nborn 2020\r\nspecies dog\r\n\r\n2026-11-01 log\r\n  ate all", Tests.Support.Cursor.Apply(document, offer.Edits));
    }
}
