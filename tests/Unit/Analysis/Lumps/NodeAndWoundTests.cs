using HealthNotes.Analysis.Findings;
using static HealthNotes.Tests.Analysis.MarkedFindings;

namespace HealthNotes.Tests.Analysis.Lumps;

public class NodeAndWoundTests
{
    private const string Dog = "pet Marlow\nspecies dog\nborn 2017-03\n";

    /// <summary>University of Guelph, VETM3430 open text: healthy nodes are under 1 cm. The jaw of large dogs is a rule of thumb.</summary>
    [Theory]
    [InlineData("dog", "15kg", "L-shoulder-front 10mm", FindingLevel.Watch)]
    [InlineData("dog", "15kg", "L-shoulder-front 9.9mm", null)]
    [InlineData("dog", "15kg", "L-jaw 12mm", FindingLevel.Watch)]
    [InlineData("dog", "23kg", "L-jaw 12mm", FindingLevel.Watch)]
    [InlineData("dog", "23.1kg", "L-jaw 12mm", null)]
    [InlineData("dog", "30kg", "L-jaw 20mm", FindingLevel.Watch)]
    [InlineData("dog", "30kg", "L-knee-back 12mm", FindingLevel.Watch)]
    [InlineData("cat", "5kg", "L-jaw 12mm", FindingLevel.Watch)]
    [InlineData("cat", "5kg", "L-jaw small", null)]
    [InlineData("dog", "15kg", "L-jaw 0.4in", FindingLevel.Watch)]
    [InlineData("dog", "15kg", "L-jaw 0.39in", null)]
    [InlineData("dog", "15kg", "L-jaw like pea", null)]
    [InlineData("dog", "15kg", "L-jaw like sweetcorn-kernel", null)] // 8 to 12 mm: not sure
    [InlineData("dog", "15kg", "L-jaw like grape", FindingLevel.Watch)]
    [InlineData("dog", "15kg", "L-jaw <12mm", null)]
    [InlineData("dog", "15kg", "L-jaw >10mm", FindingLevel.Watch)]
    [InlineData("dog", "15kg", "L-jaw ~10mm", null)] // may be 9
    public void Sizes_of_nodes(string species, string weight, string node, FindingLevel? level) =>
        Assert.Equal(level, LevelOfLastLine($"pet Marlow\nspecies {species}\nborn 2017-03\nadult-weight {weight}\n2026-11-01 check\n  node {node}"));

    [Fact]
    public void The_weight_of_the_day_goes_before_the_grown_weight() => Check("""
        pet Marlow
        species dog
        born 2017-03
        2026-10-01 check
          weight 27kg
        2026-11-01 check
          node L-jaw 15mm soft
        """);

    [Fact]
    public void Without_a_weight_a_jaw_node_is_something_to_know() => Check(Dog + """
        2026-11-01 check
          node L-jaw 15mm soft
                     ^^^^ node-size info
        """);

    [Fact]
    public void Two_regions_are_a_reason_to_call()
    {
        var analysis = Check(Dog + """
            2026-11-01 check
              node L-knee-back 15mm soft
                               ^^^^ node-size watch
            2026-11-15 check
              node R-shoulder-front 12mm soft
                   ^^^^^^^^^^^^^^^^ node-size call
            """);
        Assert.Contains("in 2 regions: R-shoulder-front (12 mm), L-knee-back (15 mm)", analysis.Findings[^1].Message, StringComparison.Ordinal);
        Assert.Equal([4, 6], analysis.Findings[^1].Evidence.ToArray());
    }

    [Theory]
    [InlineData("2026-11-01 check\n  node L-knee-back 15mm\n2026-11-01 log\n  node R-knee-back 15mm\n", FindingLevel.Watch)] // one region
    [InlineData("2026-11-01 check\n  node L-knee-back 15mm\n2026-11-16 log\n  node R-groin 15mm\n", FindingLevel.Watch)] // 15 days apart
    [InlineData("2026-11-01 check\n  node L-knee-back 7mm\n2026-11-02 log\n  node R-groin 15mm\n", FindingLevel.Watch)]
    [InlineData("2026-11-01 check\n  node L-knee-back 15mm\n2026-11-02 log\n  node L-knee-back not-felt\n2026-11-03 log\n  node R-groin 15mm\n", FindingLevel.Watch)] // small again
    [InlineData("2026-11-01 check\n  node L-knee-back large\n2026-11-02 log\n  node R-groin 15mm\n", FindingLevel.Call)]
    [InlineData("2026-11-01 visit\n  node L-knee-back 15mm\n  node R-groin 15mm\n", FindingLevel.Info)] // the vet has felt them
    public void Regions_and_days(string entries, FindingLevel level) => Assert.Equal(level, LevelOfLastLine(Dog + entries));

    [Fact]
    public void A_node_that_grew_twice_is_a_reason_to_call() => Check(Dog + """
        2026-10-01 log
          node L-groin 7mm soft
        2026-10-15 log
          node L-groin 11mm soft
                       ^^^^ node-size watch
        2026-11-15 log
          node L-groin 12mm soft
                       ^^^^ node-size call
        """);

    [Fact]
    public void What_the_vet_knows_of_a_node_is_something_to_know() => Check("""
        pet Marlow
        species dog
        born 2017-03
        known node L-groin scarred
        2026-10-01 log
          node L-groin 14mm soft
                       ^^^^ node-size info
          node R-groin 14mm soft
                       ^^^^ node-size watch
        """);

    [Fact]
    public void Left_and_right_of_one_entry_are_compared() => CheckDog("""
          paw LF 60mm
          paw RF 90mm
                 ^^^^ sides watch
          node L-groin 5mm
          node R-groin 9mm
                       ^^^ sides watch
        """);

    [Theory]
    [InlineData("paw LF 60mm\n  paw RF 75mm")] // 25 %
    [InlineData("paw LF 60mm\n  paw RH 90mm")] // not across
    [InlineData("node L-groin 5mm\n  node R-groin 8mm")] // the hand may be off by that
    [InlineData("node L-groin 5mm\n  node R-armpit 9mm")]
    [InlineData("node L-groin like pea\n  node R-groin like lentil")]
    [InlineData("node L-groin <9mm\n  node R-groin 9mm")]
    [InlineData("gland L-gland2 9mm\n  gland R-gland3 15mm")]
    [InlineData("node both-groin 9mm")]
    public void Otherwise_the_sides_are_alike(string lines) => CheckDog("  " + lines);

    [Fact]
    public void A_wound_that_is_larger_is_to_watch() => Check(Dog + """
        2026-11-18 log
          wound L-thigh 30mm dry
        2026-11-19 log
          wound L-thigh dry
        2026-11-20 log
          wound L-thigh 38mm dry
                        ^^^^ wound-larger watch
        2026-11-21 log
          wound L-thigh dry
        """);

    [Theory]
    [InlineData("30mm", "log", "33mm")]
    [InlineData("30mm", "log", "36mm")] // a fifth
    [InlineData("30mm", "log", "20mm")]
    [InlineData("30mm", "log", "healed")]
    [InlineData("30mm", "visit", "45mm")] // the vet is looking at it
    [InlineData("<40mm", "log", "42mm")]
    [InlineData("~30mm", "log", "38mm")]
    public void Otherwise_a_wound_is_as_it_was(string before, string kind, string now) =>
        Check(Dog + $"2026-11-18 log\n  wound L-thigh {before} dry\n2026-11-20 {kind}\n  wound L-thigh {now} dry\n");
}
