using HealthNotes.Analysis;
using HealthNotes.Record.Checks;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>
/// This pet's blank check sheet: two sides of one sheet of paper, to be filled in by hand beside the animal and typed up later.
/// Pure: the same analysis and paper give the same bytes.
/// </summary>
public static class CheckSheet
{
    private const int Minute = 60;
    private const int FirstCount = 4;
    private const int LastCount = 63;
    private const int Columns = 30;
    private static readonly int[] Seconds = [15, 30];

    /// <summary>The sheet as one self-contained HTML file.</summary>
    public static string Html(NoteAnalysis analysis, Paper paper)
    {
        var context = new PageContext(analysis, PageOptions.Default);
        var plan = CheckPlan.Of(analysis.Record);
        string name = SheetHead.NameOf(analysis);
        return SheetPaper.Html(
            PageWords.SheetTitle(name), paper,
            SheetPaper.Side("front", name, [SheetHead.Fill, .. SheetHead.Of(context), new Paragraph(PageWords.SheetLead, "lead"), SheetList.Of(context, plan)]),
            SheetPaper.Side(
                "back", PageWords.SheetBack(name),
                [SheetAsked.Of(plan), SheetAsked.Tasks(context), SheetBody.Of(context, plan), SheetScale.Of(context.Units.AreUs), .. SheetScale.BodyCondition(), Counting(), .. SheetCautions.Of(context)]));
    }

    /// <summary>What a count in 15 or 30 seconds is in a minute.</summary>
    private static Table Counting() => new(
        PageWords.SheetCounting, [],
        [.. Enumerable.Range(FirstCount, LastCount - FirstCount + 1).Chunk(Columns).SelectMany(counts => Seconds.Select(seconds => Row(PageWords.SheetIn(seconds), counts.Select(count => count * Minute / seconds))).Prepend(Row(PageWords.SheetCount, counts)))])
    { Class = "counting" };

    private static System.Collections.Immutable.ImmutableArray<Prose> Row(string name, IEnumerable<int> numbers) => [name, .. numbers.Select(number => (Prose)$"{number}")];
}
