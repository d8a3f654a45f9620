using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Lumps;

namespace HealthNotes.Analysis.Rules;

/// <summary>Lumps at the same place on the left and on the right.</summary>
public sealed class LumpSidesRule : ICourseRule
{
    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("lump-sides", "seen", 5);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key == CourseKey.Note;

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        var there = new Dictionary<(Region, Side), LumpLife>();
        foreach (Course lump in at.All("lump"))
        {
            if (lump.Last?.Item is Finding { Site: { Region: { } region, Side: var side } } last && OtherSide.Of(side) is not null && !MammaryLumpRule.IsMammary(last)
                && LumpLife.Of(lump) is { Ended: null } life && !(there.TryGetValue((region, side), out LumpLife? had) && had.Last.Moment >= life.Last.Moment))
            {
                there[(region, side)] = life;
            }
        }

        bool us = at.Facts.Pet.ShowUsUnits;
        foreach (((Region region, Side side), LumpLife left) in there)
        {
            if (side is Side.L or Side.LF or Side.LH && there.TryGetValue((region, OtherSide.Of(side)!.Value), out LumpLife? right)
                && Math.Abs(left.Last.Day.DayNumber - right.Last.Day.DayNumber) <= LumpNumbers.Default["sides-days"])
            {
                LumpLife later = left.Last.Moment > right.Last.Moment || (left.Last.Moment == right.Last.Moment && left.Last.Line > right.Last.Line) ? left : right;
                yield return this.At(FindingLevel.Info, later.Last.Line, ((Finding)later.Last.Item!).Site.Span,
                    $"Lumps at the same place on both sides: {Describe(left, us)} and {Describe(right, us)}. Worth telling the vet at the next visit.",
                    LumpNumbers.Default.SourceOf("sides-days"), left.Last.Line, right.Last.Line);
            }
        }
    }

    private static string Describe(LumpLife life, bool us) =>
        life.Name + (life.LastSize is { } size ? $" ({SizeWording.WithDay(size, us)})" : $" ({life.Last.Day:yyyy-MM-dd})");
}
