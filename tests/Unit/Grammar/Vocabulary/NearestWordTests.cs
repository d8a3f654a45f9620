using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Tests.Grammar.Vocabulary;

public class NearestWordTests
{
    [Theory]
    [InlineData("glosssy", "glossy")]
    [InlineData("brwn", "brown")]
    [InlineData("pnik", "pink")]
    [InlineData("inflamd", "inflamed")]
    [InlineData("absess", "abscess")]
    [InlineData("uneasey", "uneasy")]
    [InlineData("noze", "nose")]
    public void A_slip_is_the_word_it_is_nearest_to(string typed, string expected) =>
        Assert.Equal(expected, NearestWord.Find(typed, ["glossy", "brown", "pink", "inflamed", "abscess", "uneasy", "nose"]));

    /// <summary>A suggestion that says the opposite of what was written would be worse than none.</summary>
    [Theory]
    [InlineData("uneven")]
    [InlineData("UNEVEN")]
    [InlineData("un-even")]
    [InlineData("abnormal")]
    [InlineData("unclean")]
    [InlineData("unregular")]
    [InlineData("nonpainful")]
    [InlineData("immobile")]
    public void A_word_is_never_taken_for_its_opposite(string typed) =>
        Assert.Null(NearestWord.Find(typed, ["even", "normal", "clean", "regular", "painful", "mobile"]));

    [Theory]
    [InlineData("gait uneven")]
    [InlineData("genitals abnormal")]
    [InlineData("coat unclean")]
    public void No_line_is_told_the_opposite(string line) =>
        Assert.DoesNotContain("did you mean", HealthNotes.Grammar.Parsing.NoteSyntax.Parse(line).Lines[0].Problems[0].Message, StringComparison.Ordinal);
}
