using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Lumps;

namespace HealthNotes.Analysis.Rules;

/// <summary>Lumps that a vet named targets: their sum of longest diameters against the start and the smallest, by published categories. A vet decides.</summary>
public sealed class LumpTargetRule : ICourseRule
{
    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("lump-target", "target", 1);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key == CourseKey.Note;

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        ImmutableArray<DatedFact<TextFact>> facts = [.. at.Facts.Knowns.Where(NamesTargets)];
        if (facts.IsEmpty)
        {
            yield break;
        }

        ImmutableArray<LumpLife> targets = [.. at.All("lump")
            .Where(lump => lump.Last?.Item is Finding last && facts.Any(fact => NamedSite.Names(fact.Fact.Text.Text, last.Word, last.Site, last.Tag?.Name)))
            .Select(lump => LumpLife.Of(lump)!)];
        DateOnly from = facts.Max(fact => fact.Day) ?? DateOnly.MinValue;
        ImmutableArray<TargetSum> sums = TargetSum.Of(targets, from);
        if (sums.Length < 2)
        {
            yield break;
        }

        bool us = at.Facts.Pet.ShowUsUnits;
        TargetSum start = sums[0];
        TargetSum now = sums[^1];
        TargetSum smallest = sums.AsSpan()[..^1].ToArray().MinBy(sum => sum.Millimetres)!;
        string category = TargetResponse.Of(start.Millimetres, smallest.Millimetres, now.Millimetres) switch
        {
            ResponseCategory.Complete => "complete response",
            ResponseCategory.Partial => "partial response",
            ResponseCategory.Progressive => "progressive",
            _ => "stable",
        };
        string least = smallest == start ? "" : $", {Wording.Show(smallest.Millimetres, "mm", us)} at its smallest ({smallest.Day:yyyy-MM-dd})";
        yield return this.At(FindingLevel.Info, now.Line, SpanAt(targets, now.Line),
            $"{(targets.Length == 1 ? "Target" : "Targets")} {string.Join(", ", targets.Select(life => life.Name))}: longest diameters together {Wording.Show(now.Millimetres, "mm", us)}; "
            + $"{Wording.Show(start.Millimetres, "mm", us)} at the start ({start.Day:yyyy-MM-dd}){least}. The published criteria call that `{category}`. A vet decides what it means.",
            LumpNumbers.Default.SourceOf("partial-percent"), [start.Line, smallest.Line, .. facts.Select(fact => fact.Line)]);
    }

    private static bool NamesTargets(DatedFact<TextFact> fact) =>
        fact.Fact.Text.Text.Split(' ', ',', ';', ':').Any(word => word.Equals("target", StringComparison.OrdinalIgnoreCase) || word.Equals("targets", StringComparison.OrdinalIgnoreCase));

    private static Grammar.Text.TextSpan SpanAt(ImmutableArray<LumpLife> targets, int line) =>
        ((Finding)targets.SelectMany(life => life.Lines).First(noted => noted.Line == line).Item!).Site.Span;
}
