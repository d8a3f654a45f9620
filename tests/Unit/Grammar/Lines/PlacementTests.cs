using HealthNotes.Grammar.Notes;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.Lines;

/// <summary>What only the whole note can tell.</summary>
public class PlacementTests
{
    [Fact]
    public void Observations_stand_in_entries_and_facts_before_them() => Marked.Check("""
        pet Marlow
        gums pink
        ^^^^ misplaced: before the first entry
        ask may he swim?
        photo marlow.jpg
        2026-10-04 check
          gums pink
          born 2017
          ^^^^ misplaced: before the first entry
          usual rr 16-24
          ^^^^^ misplaced: or in a visit
          med benazepril 5mg
          known heart murmur
        2026-10-05 visit
          usual rr 16-24
          call-if rr >32
        """);

    [Fact]
    public void Facts_are_said_once() => Marked.Check("""
        pet Marlow
        pet Tansy
        ^^^ said-twice: Keep one file per pet
        species dog
        species dog
        ^^^^^^^ said-twice: Keep one
        known heart murmur
        known stiff hips
        """);

    [Fact]
    public void A_dog_has_its_own_sites() => Marked.Check("""
        species dog
        2026-10-04 check
          lump belly-pouch 12mm
               ^^^^^^^^^^^ impossible-site: A dog has no belly-pouch
          gland R5 soft
          tooth 105 tartar
          tooth 111 tartar
                ^^^ impossible-site: is not a tooth
        """);

    [Fact]
    public void A_cat_has_its_own_sites() => Marked.Check("""
        species cat
        2026-10-04 check
          lump belly-pouch 12mm
          gland R5 soft
                ^^ impossible-site: four pairs
          tooth 105 tartar
                ^^^ impossible-site: A cat has no tooth 105
          recheck tooth 105 in 2w
                        ^^^ impossible-site: A cat has no tooth 105
          skip tooth 105 wriggled
                     ^^^ impossible-site: A cat has no tooth 105
        """);

    [Fact]
    public void Without_a_species_every_site_is_possible() => Marked.Check("""
        pet Marlow
        2026-10-04 check
          lump belly-pouch 12mm
          gland R5 soft
          tooth 105 tartar
        """);

    [Fact]
    public void Lines_not_understood_are_listed_with_their_entry()
    {
        var note = Note.Read("pet Marlow\nhello\n2026-10-04\n  gmus pink\n  gums pink\n  ear L wx\n");
        Assert.Equal([1], note.Opening.NotUnderstood.AsEnumerable());
        Assert.Equal([3, 5], note.Entries[0].NotUnderstood.AsEnumerable());
    }
}
