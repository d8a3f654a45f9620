using HealthNotes.Analysis.Findings;
using static HealthNotes.Tests.Analysis.MarkedFindings;

namespace HealthNotes.Tests.Analysis;

public class SignRulesTests
{
    /// <summary>Colours and their meaning: Merck Veterinary Manual, triage parameter table; Clinician's Brief for brick red.</summary>
    [Theory]
    [InlineData("gums pink moist", null)]
    [InlineData("gums pigmented", null)]
    [InlineData("gums pale", FindingLevel.Call)]
    [InlineData("gums yellow", FindingLevel.Call)]
    [InlineData("gums white", FindingLevel.Urgent)]
    [InlineData("gums blue", FindingLevel.Urgent)]
    [InlineData("gums grey", FindingLevel.Urgent)]
    [InlineData("gums gray", FindingLevel.Urgent)]
    [InlineData("gums brick red", FindingLevel.Urgent)]
    [InlineData("gums muddy", FindingLevel.Urgent)]
    [InlineData("MM blue", FindingLevel.Urgent)]
    public void Gum_colours(string line, FindingLevel? level)
    {
        Assert.Equal(level, LevelForDog(line));
        Assert.Equal(level, LevelForCat(line));
    }

    [Theory]
    [InlineData("rr 30/1min open-mouth", FindingLevel.Urgent)]
    [InlineData("pee straining", FindingLevel.Urgent)] // a male cat
    public void Words_that_cannot_wait_in_a_male_cat(string line, FindingLevel level) => Assert.Equal(level, LevelForCat(line));

    [Fact]
    public void The_same_word_may_be_less_in_another_animal() => Assert.Equal(FindingLevel.Call, LevelForDog("pee straining"));

    [Fact]
    public void One_line_gives_one_finding_at_its_most_worrying_word()
    {
        var analysis = CheckDog("""
              gums pink tacky white
                              ^^^^^ gum-colour urgent
            """);
        Assert.Contains("Also written: tacky", analysis.Findings[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_lump_is_to_watch_once_and_then_something_to_know() => Check("""
        pet Marlow
        species dog
        born 2017-03
        2026-11-01 check
          lump L-flank 6mm soft
               ^^^^^^^ lump watch
          lump R-flank 8mm soft
               ^^^^^^^ lump watch
        2026-11-01 check
          lump L-flank 6mm soft
               ^^^^^^^ lump info
          lump R-flank 8mm soft
               ^^^^^^^ lump-sides info
          lump L-flank @new 5mm soft
               ^^^^^^^ lump watch
        """);

    [Fact]
    public void A_lump_at_a_mammary_gland_is_a_reason_to_call() => CheckDog("""
          lump R-gland3 like pea soft
               ^^^^^^^^ mammary-lump call
        """);

    /// <summary>Haley and Platt: status epilepticus after 5 minutes; cluster seizures are two or more within 24 hours.</summary>
    [Fact]
    public void Seizures() => Check("""
        pet Marlow
        species dog
        born 2017-03
        2026-10-01 log
          07:00 seizure 2min
                ^^^^^^^ seizure call
        2026-10-09 log
          07:00 seizure 1min
                ^^^^^^^ seizure watch
        2026-10-10 log
          07:00 seizure 30s
                ^^^^^^^ seizure urgent
        2026-10-20 log
          07:00 seizure 5min
                ^^^^^^^ seizure urgent
        2026-10-25 log
          07:00 seizure <5min
                ^^^^^^^ seizure watch
        2026-10-30 log
          seizure 2x
          ^^^^^^^ seizure urgent
        """);

    [Fact]
    public void What_the_vet_knows_is_something_to_know() => Check("""
        pet Marlow
        species dog
        born 2017-03
        known heart murmur grade 2
        2026-11-01 check
          hr 80 murmur
                ^^^^^^ sign info
        """);

    [Theory]
    [InlineData("known cloudy left eye since 2020", "eye L cloudy", FindingLevel.Info)]
    [InlineData("known cloudy left eye since 2020", "eye R cloudy", FindingLevel.Call)]
    [InlineData("known cloudy eye L", "eye R cloudy", FindingLevel.Call)]
    [InlineData("known eyes cloudy", "eye R cloudy", FindingLevel.Info)]
    [InlineData("known tartar on tooth 208", "tooth 208 tartar", FindingLevel.Info)]
    [InlineData("known tartar on tooth 208", "tooth 108 tartar", FindingLevel.Watch)]
    [InlineData("known teeth with tartar", "tooth 108 tartar", FindingLevel.Info)]
    public void What_is_known_of_one_side_or_tooth_says_nothing_of_another(string fact, string line, FindingLevel level) =>
        Assert.Equal(level, LevelOfLastLine($"pet X\nspecies dog\nborn 2018\n{fact}\n2026-11-01 check\n  {line}"));

    [Fact]
    public void What_is_known_of_one_part_says_nothing_of_another() => Check("""
        pet Marlow
        species dog
        born 2017-03
        known dry eye OS
        2026-11-01 check
          gums dry
               ^^^ gum-colour call
        """);

    [Fact]
    public void What_the_vet_knows_does_not_quiet_what_cannot_wait() => Check("""
        pet Marlow
        species dog
        born 2017-03
        known gums white now and then
        2026-11-01 check
          gums white
               ^^^^^ gum-colour urgent
        """);

    /// <summary>Permanent teeth erupt from 3 to 6 months: Small Animal Clinical Nutrition 5th ed., table 23-1.</summary>
    [Fact]
    public void Milk_teeth_may_come_loose() => CheckDog("""
          tooth 504 loose
          tooth 104 loose
                    ^^^^^ sign call
        """);

    [Fact]
    public void A_painkiller_for_people_is_urgent_unless_a_vet_planned_it()
    {
        CheckDog("""
              gave ibuprofen 200mg
                   ^^^^^^^^^ human-painkiller urgent
            """);
        Check("""
            pet Marlow
            species dog
            born 2017-03
            med aspirin 25mg every 48h
            2026-10-01 log
              gave aspirin 25mg
            """);
    }
}
