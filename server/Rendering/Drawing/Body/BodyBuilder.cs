using System.Collections.Immutable;
using HealthNotes.Analysis.Problems;
using HealthNotes.Analysis.Rules;
using HealthNotes.Record.Lumps;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing.Body;

/// <summary>Lumps, wounds, sore places, and nodes that were measured: each once, under the number that it got when it was first noted; those that are gone come last.</summary>
internal static class BodyBuilder
{
    public static Shown<BodyFinding> Build(PageContext context, ImmutableArray<Problem> problems)
    {
        var text = new ProblemText(context);
        Dictionary<int, int> told = [];
        for (int index = 0; index < problems.Length; index++)
        {
            foreach (PlacePart place in problems[index].Parts.OfType<PlacePart>())
            {
                told[place.Number] = problems[index].IsEnded ? 0 : index + 1;
            }
        }

        Shown<(int Number, LumpLife Life)> shown = Shown<(int, LumpLife)>.First(
            [.. LumpNumbering.Of(context.Analysis.Record).OrderBy(life => life.Life.Ended is not null).ThenBy(life => life.Number)
                .Where(life => !(life.Life.Last.Day < context.Period.From) || (life.Life.Ended is null && life.Life.Key.Word is "lump" or "node"))],
            PageLimits.TableRows);
        return new Shown<BodyFinding>([.. shown.Items.Select(life => Of(context, text, life.Number, life.Life, told.TryGetValue(life.Number, out int problem) ? problem : null))], shown.LeftOut);
    }

    /// <summary>What ended before the period, and what was last noted before it: nobody looks for a number that is not shown.</summary>
    public static IReadOnlyList<string> Gone(PageContext context) => [.. LumpNumbering.Of(context.Analysis.Record)
        .Where(life => life.Life.Last.Day < context.Period.From && !(life.Life.Ended is null && life.Life.Key.Word is "lump" or "node")).OrderBy(life => life.Number).TakeLast(PageLimits.ListItems)
        .Select(life => PageWords.GoneOn(ProblemText.TitleOf(life.Number, life.Life), life.Life.EndWord?.Replace('-', ' ') ?? (LumpWords.Has(life.Life.Last.Item, LumpWords.NoReaction) ? LumpWords.NoReaction.Replace('-', ' ') : PageWords.LastNoted), PageWords.On((life.Life.Ended ?? life.Life.Last).Day, context.Analysis.Today)))];

    private static BodyFinding Of(PageContext context, ProblemText text, int number, LumpLife life, int? problem)
    {
        string last = life.LastSize is { } size ? ExaminationBuilder.Size(context, size) : "";
        return new BodyFinding(
            new BodyMark(number, life.Key.Word, PageWords.MarkInWords(number, Wording.NameOf(life.Key.Word), SiteWords.Of(life), last), life.Ended is not null || life.Site is null ? [] : [.. BodySpot.Of(life.Site, context.Analysis.Pet.Species)]),
            ProblemText.TitleOf(number, life), problem is not null ? "" : text.Of(PlaceCourse.Of(context.Analysis.Record, number, life)), life.Ended is not null, problem);
    }
}
