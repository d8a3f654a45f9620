using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Lumps;

namespace HealthNotes.Analysis.Rules;

/// <summary>A lymph node larger than healthy ones are; several regions of them; one that grew. Hard and sore ones are the words' matter.</summary>
public sealed class NodeSizeRule : ICourseRule
{
    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("node-size", "seen", 8);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word == "node";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        if (course.Last?.Item is not Examined)
        {
            yield break;
        }

        var life = LumpLife.Of(course);
        bool us = at.Facts.Pet.ShowUsUnits;
        foreach (Noted noted in course.Lines)
        {
            if (noted != course.Last && LumpSize.Of(noted) is { } size && IsLarge(noted, size, at) is { } level)
            {
                yield return OfSize(noted, size, level, us, at);
            }
        }

        Noted last = course.Last;
        var node = (Examined)last.Item;
        LumpSize? now = LumpSize.Of(last);
        FindingLevel? large = now is null ? null : IsLarge(last, now, at);
        DatedFact<TextFact>? known = KnownFinding.For(at.Facts, node, last.Day);
        string? quiet = VetLook.Of(last) is { } look ? look.How + "." : known is not null ? KnownFinding.Say(known) : null;
        ImmutableArray<int> fact = known is null ? [] : [known.Line];
        FindingLevel call = quiet is null ? FindingLevel.Call : FindingLevel.Info;
        if (IsEnlarged(last, at) && Regions(last, node, at) is { Count: > 0 } others)
        {
            string list = string.Join(", ", others.Prepend(last).Select(Describe));
            yield return this.At(call, last.Line, node.Site!.Span,
                $"Lymph nodes larger than expected in {others.Count + 1} regions: {list}. {quiet}",
                LumpNumbers.Default.SourceOf("node-regions"), others.Select(other => other.Line).Concat(fact));
        }
        else if (now is not null && life is { Ended: null } && now.Low >= LumpNumbers.Default["node-mm"] && SizeGrowth.In(life.SizeOfEachDay) is { Confirmed: { } second } growth)
        {
            yield return this.At(call, last.Line, node.Size!.Span,
                $"Lymph node {life.Name}: {SizeWording.WithDay(growth.Change.After, us)}, against {SizeWording.WithDay(growth.Change.Before, us)}: {SizeWording.Percent(growth.Change)}. Already {SizeWording.WithDay(second, us)}. {quiet}",
                LumpNumbers.Default.SourceOf("growth-percent"), [growth.Change.Before.Noted.Line, second.Noted.Line, .. fact]);
        }
        else if (large is { } level)
        {
            yield return OfSize(last, now!, level, us, at);
        }

        string Describe(Noted noted) => noted.Item is Examined { Site: { } site } ? site.Name + (LumpSize.Of(noted) is { } of ? $" ({SizeWording.Show(of, us)})" : "") : "";
    }

    private NoteFinding OfSize(Noted noted, LumpSize size, FindingLevel level, bool us, PetRecord at)
    {
        var node = (Examined)noted.Item!;
        DatedFact<TextFact>? known = KnownFinding.For(at.Facts, node, noted.Day);
        level = known is null ? level : FindingLevel.Info;
        string expected = Wording.Show(LumpNumbers.Default["node-mm"], "mm", us);
        string large = known is null && level == FindingLevel.Info ? " In a dog over 25 kg it may be usual; no weight is written." : "";
        return this.At(level, noted.Line, node.Size!.Span,
            $"Lymph node {CourseKey.Of(node).Detail}: {SizeWording.Show(size, us)}; healthy ones are under {expected}.{large} {(known is null ? "" : KnownFinding.Say(known))}",
            LumpNumbers.Default.SourceOf("node-mm"), known is null ? [] : [known.Line]);
    }

    /// <summary>How much it is worth saying; null for a usual size. A jaw node of 1 to 2 cm may be usual in a large dog.</summary>
    private static FindingLevel? IsLarge(Noted noted, LumpSize size, PetRecord at)
    {
        var numbers = LumpNumbers.Default;
        if (size.Low < numbers["node-mm"])
        {
            return null;
        }

        bool jawOfDog = at.Facts.Pet.Species == Species.Dog && noted.Item is Examined { Site.Region.Word: "jaw" };
        if (!jawOfDog || size.Low >= numbers["node-jaw-large-dog-mm"])
        {
            return FindingLevel.Watch;
        }

        decimal? weight = at.WeightOn(noted.Day)?.Value.Number ?? at.Facts.Pet.AdultWeightKg;
        return weight is null ? FindingLevel.Info : weight > numbers["node-large-dog-kg"] ? null : FindingLevel.Watch;
    }

    private static bool IsEnlarged(Noted noted, PetRecord at) =>
        noted.Item is Examined { Site.Region: not null } node && (LumpSize.Of(noted) is { } size ? IsLarge(noted, size, at) == FindingLevel.Watch : LumpWords.Has(node, "large") || LumpWords.Has(node, "growing"));

    /// <summary>The last lines of enlarged nodes in other regions, one a region, not further apart than <c>node-days</c>; empty when too few.</summary>
    private static List<Noted> Regions(Noted last, Examined node, PetRecord at)
    {
        int apart = (int)LumpNumbers.Default["node-days"];
        List<Noted> others = [.. at.All("node")
            .Select(course => course.LastUpTo(last.Day))
            .OfType<Noted>()
            .Where(other => last.Day.DayNumber - other.Day.DayNumber <= apart && other.Item is Examined { Site.Region: { } region } && region != node.Site!.Region && IsEnlarged(other, at))
            .GroupBy(other => ((Examined)other.Item!).Site!.Region)
            .Select(region => region.MaxBy(other => other.Moment)!)
            .OrderBy(other => other.Line)];
        return others.Count + 1 >= LumpNumbers.Default["node-regions"] ? others : [];
    }
}
