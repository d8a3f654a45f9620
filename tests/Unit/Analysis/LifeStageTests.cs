using HealthNotes.Analysis;

namespace HealthNotes.Tests.Analysis;

public class LifeStageTests
{
    private static string? Stage(string species, string born, string weight = "") =>
        MarkedFindings.Read($"pet X\nspecies {species}\nborn {born}\n{weight}\n") is var analysis
            ? analysis.Pet.StageOn(MarkedFindings.Today)?.Name
            : null;

    /// <summary>AAHA/AAFP Feline Life Stage Guidelines 2021, table 1; AAHA press release 2021 for 10 years.</summary>
    [Theory]
    [InlineData("2026-05-25", "kitten")] // 0.5 years
    [InlineData("2023-11-25", "young adult")] // 3
    [InlineData("2019-11-25", "mature adult")] // 7
    [InlineData("2016-11-26", "mature adult")] // a day short of 10
    [InlineData("2016-11-25", "senior")] // 10, by the press release: the earlier reminder
    [InlineData("2015-11-25", "senior")] // 11
    public void Cats_by_the_published_table(string born, string stage) => Assert.Equal(stage, Stage("cat", born));

    /// <summary>AVMA rough guide: giant breeds are senior from 6 to 7 years; smaller dogs later. The lowest published age is used.</summary>
    [Theory]
    [InlineData("2020-11-25", "adult-weight 60kg", "senior")]
    [InlineData("2020-11-26", "adult-weight 60kg", "mature adult")]
    [InlineData("2020-11-25", "adult-weight 30kg", "senior")]
    [InlineData("2020-11-25", "adult-weight 15kg", "mature adult")]
    [InlineData("2019-11-25", "adult-weight 15kg", "senior")]
    [InlineData("2019-11-25", "", "senior")]
    [InlineData("2026-06-25", "adult-weight 60kg", "puppy")]
    public void Dogs_by_size(string born, string weight, string stage) => Assert.Equal(stage, Stage("dog", born, weight));

    /// <summary>AVMA rough guide: small under 9 kg (20 lb), medium to 23 kg (50 lb), large to 41 kg (90 lb), giant above.</summary>
    [Theory]
    [InlineData("8.9kg", "small")]
    [InlineData("19lb", "small")]
    [InlineData("9kg", "medium")]
    [InlineData("49lb", "medium")]
    [InlineData("27kg", "large")]
    [InlineData("60kg", "giant")]
    public void Size_classes(string weight, string size)
    {
        NoteAnalysis analysis = MarkedFindings.Read($"pet X\nspecies dog\nadult-weight {weight}\n");
        Assert.Equal(size, analysis.Pet.SizeOn(MarkedFindings.Today));
    }

    [Fact]
    public void A_puppys_weight_says_nothing_about_its_size()
    {
        NoteAnalysis analysis = MarkedFindings.Read("pet X\nspecies dog\nborn 2026-08-01\n2026-11-01 check\n  weight 8kg\n");
        Assert.Null(analysis.Pet.SizeOn(MarkedFindings.Today));
    }

    [Fact]
    public void A_grown_dogs_last_weighing_decides_where_no_adult_weight_is_written()
    {
        NoteAnalysis analysis = MarkedFindings.Read("pet X\nspecies dog\nborn 2020-08-01\n2026-11-01 check\n  weight 45kg\n");
        Assert.Equal("giant", analysis.Pet.SizeOn(MarkedFindings.Today));
    }
}
