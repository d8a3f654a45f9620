using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.Tree;

/// <summary>The whole tree of two notes, written out for a person to read.</summary>
public class TreeSnapshotTests
{
    private const string Whole = """
        # Notes for the vet. Any line that starts with # is a comment; so is what follows " #".
        pet Marlow
        species dog
        breed rough-coated lurcher type
        sex male neutered
        born 2017-03                  # a day, a month, a year, or about: ~2017
        adult-weight 27kg
        known heart murmur grade 2 since 2026-01
        usual rr 16-24 asleep per vet 2026-01-20
        call-if rr asleep >32 per vet 2026-01-20
        med benazepril 5mg every 24h from 2026-01-20 with food
        home-check every 30d

        2026-10-04 08:15 check
          alert bright
          stance square
          coat glossy
          bcs 5/9
          eye both clear
          ear L odour brown wax
          gums pink moist
          crt 1s
          tooth 208 tartar
          node L-jaw small
          hr 18/15s
          rr 8/30s asleep
          temp 38.6C
          weight 83.2-55.9kg          # person holding the dog, less the person
          lump L-flank 12mm soft moves
          lump R-gland3 @lower like pea firm
          skip anus refused
          photo left-ear.jpg
          > He shakes his head more after swimming.
          ask does the ear need drops again?
          recheck ear L in 2w

        2026-10-05 log by technician
          07:30 gave benazepril 5mg
          07:45 ate 3/4
          12:10 rr 6/15s asleep
          18:00 water 900ml
          18:30 stool soft 2x
          21:00 vomit 1x

        """;

    private const string Mistakes = """
        pet
        speces dog
        born 08/03/2017
        usual temp 38-39
        04/10/2026 chek
          gmus pink
          gums pimk, moist
          rr 12/15 aslep
          weight 1,200g
          weight 55.9-83.2kg
          lump L-flnak 12x9
          lump L-nape like pee
          tooth 999 tartar
          temp 30 (ear)
          25:70 gave benazepril 5mgg
          He was calm.
          > This is free text.
        2026-10-05 by
          recheck ear
          hr 18/0s asleep awake

        """;

    [Fact]
    public void A_note_without_problems()
    {
        var syntax = NoteSyntax.Parse(Whole);
        Assert.All(syntax.Lines, line => Assert.Empty(line.Problems));
        Snapshots.Match(TreeDump.Of(syntax), "whole");
    }

    [Fact]
    public void A_note_without_problems_is_formatted_but_for_what_format_spells_out() =>
        Assert.Equal(Whole, NoteFormatter.Format(NoteSyntax.Parse(Whole)));

    [Fact]
    public void A_note_of_mistakes() => Snapshots.Match(TreeDump.Of(NoteSyntax.Parse(Mistakes)), "mistakes");

    [Fact]
    public void Format_leaves_mistakes_as_they_are()
    {
        string formatted = NoteFormatter.Format(NoteSyntax.Parse(Mistakes));
        Assert.Equal(Mistakes, formatted);
    }
}
