using System.Collections.Immutable;
using HealthNotes.Record.Courses;

namespace HealthNotes.Analysis.Trends;

/// <summary>
/// What is usual for this pet: the weighted median of its earlier comparable readings and how far they scatter. The weights
/// and numbers are in <c>usual-values.tsv</c>. Bounds are left out; what was read once does not become usual.
/// </summary>
/// <param name="Median">The usual value, in the canonical unit.</param>
/// <param name="Low">From here down a reading is not as usual.</param>
/// <param name="High">From here up a reading is not as usual.</param>
/// <param name="Scatter">How far one reading scatters.</param>
/// <param name="Step">What one count more or less makes of such a reading; 0 for what is not counted.</param>
/// <param name="Unit">The canonical unit.</param>
/// <param name="Count">How many readings it is from.</param>
/// <param name="Since">The day of the first of them.</param>
/// <param name="Lines">Their lines.</param>
public sealed record OwnUsual(decimal Median, decimal Low, decimal High, Scatter Scatter, decimal Step, string Unit, int Count, DateOnly Since, ImmutableArray<int> Lines)
{
    /// <summary>The usual value before a day; null when there are too few readings, or no row of the table is for the course.</summary>
    /// <param name="course">The course; pulses are best taken together first (<see cref="SameVital"/>).</param>
    /// <param name="before">Readings of the days before this one count.</param>
    /// <param name="grown">The day from which the pet is grown (<see cref="HealthNotes.Record.Pet.PetProfile.GrownOn"/>); earlier readings are left out. Null when all count.</param>
    public static OwnUsual? For(Course course, DateOnly before, DateOnly? grown = null) =>
        UsualRow.For(course.Key) is { } row ? UsualBasis.Of(course, row, before, grown)?.ToUsual() : null;
}
