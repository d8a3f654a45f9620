using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Problems;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Rendering.Drawing.Body;
using HealthNotes.Rendering.Drawing.Charts;
using HealthNotes.Rendering.Drawing.Days;
using HealthNotes.Rendering.Model;

namespace HealthNotes.Rendering.Sections;

/// <summary>What a page says beside the words of its notes: the problems, and what is drawn.</summary>
internal sealed record PageModel(
    Species Species,
    ImmutableArray<Problem> Problems,
    ImmutableArray<Problem> Noted,
    ChartSet? Charts,
    Shown<BodyFinding> Body,
    DayGrid? Days,
    Shown<LogLine> Log,
    Shown<Picture> Pictures,
    Shown<FreeText> Texts,
    NotUnderstood NotUnderstood)
{
    /// <summary>The places of the problems that are shown: the first ones, and further ones that are a reason to phone.</summary>
    public IEnumerable<int> Shown { get; } = [.. Enumerable.Range(0, Problems.Length).Where(index => index < PageLimits.Problems || (Problems[index].Level >= FindingLevel.Call && index < PageLimits.AllProblems))];

    /// <summary>The lumps, wounds and nodes that ended before the period, so that nobody looks for a number that is not shown.</summary>
    public IReadOnlyList<string> Gone { get; init; } = [];

    /// <summary>Builds the model of a page.</summary>
    public static PageModel Of(PageContext context)
    {
        ILookup<bool, Problem> all = ProblemList.Of(context.Analysis).ToLookup(problem => problem.IsTold);
        ImmutableArray<Problem> problems = [.. all[true]];
        return new(
            context.Analysis.Pet.Species,
            problems,
            [.. all[false]],
            ChartsBuilder.Build(context),
            BodyBuilder.Build(context, problems),
            DayGridBuilder.Build(context, problems),
            LogBuilder.Build(context),
            PictureBuilder.Build(context),
            TextBuilder.Texts(context),
            TextBuilder.NotUnderstood(context))
        {
            Gone = BodyBuilder.Gone(context),
        };
    }
}
