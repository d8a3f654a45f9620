using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Problems;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Rendering.Drawing.Body;
using HealthNotes.Rendering.Drawing.Charts;
using HealthNotes.Rendering.Drawing.Days;
using HealthNotes.Rendering.Photos;

namespace HealthNotes.Rendering.Model;

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

/// <summary>A line of the note as written, with its number from 1.</summary>
internal sealed record WrittenLine(int Number, DateOnly? Day, string Text);

/// <summary>A lump, wound, node or sore place under its number. <paramref name="Problem"/> is the place of the problem that tells of it, from 1; then <paramref name="Line"/> is not shown.</summary>
internal sealed record BodyFinding(BodyMark Mark, string Title, string Line, bool IsGone, int? Problem);

/// <summary>A line of the home-care log.</summary>
internal sealed record LogLine(DateOnly? Day, string By, TimeOnly? Time, string What, string Amount, FindingLevel? Level);

/// <summary>A picture beside the note; <paramref name="Photo"/> is null where only its name is shown, and then <paramref name="Problem"/> may say why.</summary>
internal sealed record Picture(DateOnly? Day, string File, string Caption, ShrunkPhoto? Photo, string? Problem);

/// <summary>A block of free text in Markdown; <paramref name="About"/> is the line it stands below, as written.</summary>
internal sealed record FreeText(DateOnly? Day, string Heading, string? About, string Markdown, bool Cut);

/// <summary>The lines that are not understood: those of the current period, and how many earlier ones.</summary>
internal sealed record NotUnderstood(Shown<WrittenLine> Lines, IReadOnlyList<int> EarlierLines, int Earlier);
