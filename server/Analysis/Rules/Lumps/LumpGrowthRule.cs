using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Lumps;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Rules;

/// <summary>
/// A lump that grew: one measurement is to be watched and repeated, a second one is a reason to call. What a vet has looked
/// at since is something to know, and growth is then counted from there.
/// </summary>
public sealed class LumpGrowthRule : ICourseRule
{
    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("lump-growth", "seen", 2);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word == "lump";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        if (LumpLife.Of(course) is not { Ended: null, Last.Item: Finding lump } life)
        {
            yield break;
        }

        bool us = at.Facts.Pet.ShowUsUnits;
        (DateOnly Day, string How, int Line)? seen = SeenLast(life, at.Facts);
        ImmutableArray<LumpSize> sizes = life.SizeOfEachDay;
        int from = seen is null ? 0 : Math.Max(0, sizes.Count(size => size.Day <= seen.Value.Day) - 1);
        if (SizeGrowth.In(sizes[from..]) is { } growth)
        {
            FindingLevel level = growth.Confirmed is null ? FindingLevel.Watch : FindingLevel.Call;
            string second = growth.Confirmed is null ? " One measurement: measure it again in the same way."
                : $" Already {SizeWording.WithDay(growth.Confirmed, us)}.{SizeWording.Doubling(growth.Change)}";
            yield return this.At(level, life.Last.Line, lump.Site.Span,
                $"{NameOf(life, lump)}: {Compared(growth.Change, us)}.{second}",
                LumpNumbers.Default.SourceOf("growth-percent"), Evidence(growth));
        }
        else if (seen is { } look && SizeGrowth.In(sizes) is { } before)
        {
            yield return this.At(FindingLevel.Info, life.Last.Line, lump.Site.Span,
                $"{NameOf(life, lump)}: {Compared(before.Change, us)}. {look.How} No growth since then that measuring by hand can tell.",
                LumpNumbers.Default.SourceOf("growth-percent"), [.. Evidence(before), look.Line]);
        }
    }

    private static string NameOf(LumpLife life, Finding lump) => MammaryLumpRule.IsMammary(lump) ? $"Lump at a mammary gland ({life.Name})" : $"Lump {life.Name}";

    private static string Compared(SizeChange change, bool us) =>
        $"{(change.After.Noted.Line == change.Before.Noted.Line ? "" : SizeWording.WithDay(change.After, us))}, against {SizeWording.WithDay(change.Before, us)}: {SizeWording.Percent(change)}";

    private static IEnumerable<int> Evidence(SizeGrowth growth) =>
        growth.Confirmed is { } second ? [growth.Change.Before.Noted.Line, second.Noted.Line, growth.Change.After.Noted.Line] : [growth.Change.Before.Noted.Line, growth.Change.After.Noted.Line];

    /// <summary>When a vet last looked at it, by its lines or by a fact written in an entry. A fact of the opening has no day to count from.</summary>
    private static (DateOnly Day, string How, int Line)? SeenLast(LumpLife life, PetFacts note)
    {
        VetLook? look = life.Looks.IsEmpty ? null : life.Looks[^1];
        return KnownFinding.For(note, life.Last.Item, life.Last.Day) is { Day: { } day } known && !(look?.Day > day) && day >= life.First.Day
            ? (day, KnownFinding.Say(known), known.Line)
            : look is null ? null : (look.Day, look.How + ".", look.Noted.Line);
    }
}
