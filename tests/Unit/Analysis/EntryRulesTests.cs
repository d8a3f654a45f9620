using static HealthNotes.Tests.Analysis.MarkedFindings;

namespace HealthNotes.Tests.Analysis;

public class EntryRulesTests
{
    [Fact]
    public void Dates_that_are_most_likely_slips() => Check("""
        pet Marlow
        species dog
        born 2020-03
        2019-10-04 check
        ^^^^^^^^^^ entry-date watch
          gums pink
        2027-10-04 check
        ^^^^^^^^^^ entry-date watch
          gums pink
        2026-11-25 check
          gums pink
        """);

    [Fact]
    public void Numbers_no_living_pet_has() => CheckDog("""
          hr 18
             ^^ not-plausible error
          temp 386C
               ^^^^ not-plausible error
          weight 2140kg
                 ^^^^^^ not-plausible error
          bcs 12/9
              ^^^^ not-plausible error
        """);

    [Fact]
    public void What_could_not_be_read_is_an_error_beside_the_rest() => CheckDog("""
          gums pink
          hr 18/15
             ^^^^^ missing-unit error
          ear L wax
                ^^^ sign watch
        """);

    [Fact]
    public void A_bare_count_gets_the_hint_to_write_its_seconds()
    {
        var analysis = CheckDog("""
              hr 18
                 ^^ not-plausible error
            """);
        Assert.Contains("write 18/15s", analysis.Findings[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_note_without_facts_says_which_it_misses() => Check("""
        # nothing yet
        ^^^^^^^^^^^^^ facts-missing info
        """);
}
