using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Tests.Grammar.Vocabulary;

/// <summary>The sizes of the things lumps are compared with.</summary>
public class ObjectTests
{
    private static readonly Scope<ComparisonObject> Objects = NoteVocabulary.Default.Objects;

    [Theory]
    [InlineData("golf-ball", 42.67, 43)] // USGA and R&A, Rules of Golf: not less than 1.680 in (42.67 mm)
    [InlineData("table-tennis-ball", 39.5, 40.5)] // ITTF, ball rule as reported: 40 mm, 39.5 to 40.5 accepted
    [InlineData("tennis-ball", 65.41, 68.58)] // ITF, Rules of Tennis as reported: 2.575 to 2.700 in
    [InlineData("us-dime", 17.91, 17.91)] // US Mint, coin specifications
    [InlineData("us-cent", 19.05, 19.05)] // US Mint
    [InlineData("us-nickel", 21.21, 21.21)] // US Mint
    [InlineData("us-quarter", 24.26, 24.26)] // US Mint
    [InlineData("us-dollar", 26.49, 26.49)] // US Mint
    [InlineData("us-half-dollar", 30.61, 30.61)] // US Mint
    [InlineData("euro-1-cent", 16.25, 16.25)] // euro coin data page
    [InlineData("euro-2-cent", 18.75, 18.75)] // euro coin data page
    [InlineData("euro-5-cent", 21.25, 21.25)] // euro coin data page
    [InlineData("euro-10-cent", 19.75, 19.75)] // euro coin data page
    [InlineData("euro-20-cent", 22.25, 22.25)] // euro coin data page
    [InlineData("euro-50-cent", 24.25, 24.25)] // Council Regulation (EC) 975/98, EU summary
    [InlineData("euro-1", 23.25, 23.25)] // Council Regulation (EC) 975/98, EU summary
    [InlineData("euro-2", 25.75, 25.75)] // Council Regulation (EC) 975/98, EU summary
    [InlineData("uk-5p", 18, 18)] // Royal Mint specifications (from memory)
    [InlineData("uk-1p", 20.3, 20.3)] // Royal Mint specifications (from memory)
    [InlineData("uk-10p", 24.5, 24.5)] // Royal Mint specifications (from memory)
    [InlineData("uk-2p", 25.9, 25.9)] // Royal Mint specifications (from memory)
    public void Is_as_large_as_published(string word, double low, double high)
    {
        ComparisonObject thing = Objects.Find(word)!;
        Assert.Equal((decimal)low, thing.LowMm);
        Assert.Equal((decimal)high, thing.HighMm);
    }

    /// <summary>USDA, 7 CFR 51.2952: medium walnuts in shell 73/64 to 77/64 in, mammoth from 96/64 in.</summary>
    [Fact]
    public void A_walnut_spans_the_published_sizes_and_is_taken_as_medium()
    {
        ComparisonObject walnut = Objects.Find("walnut")!;
        Assert.Equal(73 / 64.0 * 25.4, (double)walnut.LowMm, 0.1);
        Assert.Equal(96 / 64.0 * 25.4, (double)walnut.HighMm, 0.1);
        Assert.InRange((double)walnut.TypicalMm, 73 / 64.0 * 25.4, 77 / 64.0 * 25.4);
    }

    /// <summary>USDA, 7 CFR 51.884 and 51.880: table grapes from 9/16 in, large varieties 13/16 in.</summary>
    [Fact]
    public void A_grape_is_a_published_size()
    {
        ComparisonObject grape = Objects.Find("grape")!;
        Assert.InRange((double)grape.LowMm, 9 / 16.0 * 25.4, 13 / 16.0 * 25.4);
        Assert.InRange((double)grape.HighMm, 9 / 16.0 * 25.4, 13 / 16.0 * 25.4);
    }

    /// <summary>Codex Alimentarius, canned pea sieve sizes: 7.5 to 10.2 mm (from memory).</summary>
    [Fact]
    public void A_pea_is_a_graded_pea()
    {
        ComparisonObject pea = Objects.Find("pea")!;
        Assert.InRange(pea.TypicalMm, 7.5m, 10.2m);
    }

    [Fact]
    public void The_typical_size_lies_between_the_smallest_and_the_largest() => Assert.All(Objects.Terms, thing =>
    {
        Assert.InRange(thing.LowMm, 0.1m, 150);
        Assert.InRange(thing.TypicalMm, thing.LowMm, thing.HighMm);
    });
}
