using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Tests.Grammar.Vocabulary;

/// <summary>
/// Modified Triadan numbers: the first figure is the quadrant, the other two the place from the front
/// (01-03 incisors, 04 canine, 05-08 premolars, 09-11 molars). Source: WikiVet, modified Triadan system.
/// </summary>
public class TeethTests
{
    private static readonly IReadOnlyList<ToothSet> Sets = NoteVocabulary.Default.Teeth;

    /// <summary>
    /// Dental formulas, upper then lower in each half. Permanent: veterinary study cards (dog 2(I3/3 C1/1 P4/4 M2/3) = 42,
    /// cat 2(I3/3 C1/1 P3/2 M1/1) = 30). Deciduous: dentistry texts (from memory; dog 2(i3/3 c1/1 p3/3) = 28, cat 2(i3/3 c1/1 p3/2) = 26).
    /// </summary>
    [Theory]
    [InlineData(Species.Dog, "permanent", 42, "3/3 1/1 4/4 2/3")]
    [InlineData(Species.Cat, "permanent", 30, "3/3 1/1 3/2 1/1")]
    [InlineData(Species.Dog, "deciduous", 28, "3/3 1/1 3/3 0/0")]
    [InlineData(Species.Cat, "deciduous", 26, "3/3 1/1 3/2 0/0")]
    public void Counts_follow_the_dental_formula(Species species, string set, int count, string formula)
    {
        ToothSet teeth = Sets.Single(s => s.Species == species && s.Set == set);
        Assert.Equal(count, teeth.Numbers.Count);
        string found = string.Join(' ', ((int From, int To)[])[(1, 3), (4, 4), (5, 8), (9, 11)] is var kinds
            ? kinds.Select(kind => $"{InHalf(teeth, kind, upper: true)}/{InHalf(teeth, kind, upper: false)}")
            : []);
        Assert.Equal(formula, found);
    }

    [Fact]
    public void Left_and_right_are_alike() => Assert.All(Sets, set => Assert.All(set.Numbers, number =>
    {
        int quadrant = number / 100;
        int other = quadrant switch { 1 => 2, 2 => 1, 3 => 4, 4 => 3, 5 => 6, 6 => 5, 7 => 8, _ => 7 };
        Assert.Contains((other * 100) + (number % 100), set.Numbers);
    }));

    /// <summary>Quadrants 1-4 are permanent, 5-8 deciduous in the same order: WikiVet.</summary>
    [Fact]
    public void The_first_figure_tells_permanent_from_deciduous() => Assert.All(Sets, set =>
        Assert.All(set.Numbers, number => Assert.InRange(number / 100, set.Set == "permanent" ? 1 : 5, set.Set == "permanent" ? 4 : 8)));

    [Theory]
    [InlineData(208, Species.Dog, true)] // the upper left carnassial
    [InlineData(309, Species.Dog, true)] // the lower left carnassial, the first molar
    [InlineData(111, Species.Dog, false)] // two upper molars only
    [InlineData(311, Species.Dog, true)] // three lower molars
    [InlineData(105, Species.Cat, false)] // WikiVet: a cat has no 105
    [InlineData(105, Species.Dog, true)]
    [InlineData(306, Species.Cat, false)]
    [InlineData(307, Species.Cat, true)]
    [InlineData(309, Species.Cat, true)]
    [InlineData(505, Species.Dog, false)] // no deciduous first premolar
    [InlineData(504, Species.Cat, true)]
    [InlineData(706, Species.Cat, false)]
    [InlineData(900, Species.Unknown, false)]
    [InlineData(105, Species.Unknown, true)]
    public void Single_teeth(int number, Species species, bool exists) => Assert.Equal(exists, NoteVocabulary.Default.IsTooth(number, species));

    private static int InHalf(ToothSet set, (int From, int To) kind, bool upper) => set.Numbers.Count(number =>
        number / 100 == (upper ? 1 : 3) + (set.Set == "permanent" ? 0 : 4) && number % 100 >= kind.From && number % 100 <= kind.To);
}
