using System.Globalization;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Problems;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Items;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sections;

/// <summary>The appendix: the lines behind each problem, every value, the log, the owner's text, earlier entries, and one numbered list of sources.</summary>
internal sealed class AppendixSections(PageContext context, PageModel model, HeadSection head, ProblemSections problems)
{
    private readonly ProblemText text = new(context);
    private readonly List<string> sources = [];

    public Section Build()
    {
        // the lines are written first, so that the sources are numbered in the order in which they are met
        Section?[] parts = [Lines(), Values(), Log(), Texts(), head.Background, Earlier()];
        return new Section(
            "appendix", PageWords.Appendix,
            [
                new Paragraph(Prose.Small(PageWords.AppendixLead)),
                .. parts.OfType<Section>(),
                .. new[] { Section.Of("sources", PageWords.Sources, Block.List(sources.Select(source => (Prose)source), numbered: true)) }.OfType<Section>(),
            ]);
    }

    private Section? Lines() => Section.Of("lines", PageWords.Lines, model.Shown.Select(index => Lines(model.Problems[index], index)));

    private Section Lines(Problem problem, int index)
    {
        int[] all = [.. problem.Lines.Where(line => line >= 0)];
        Shown<int> shown = Shown<int>.Last(all, PageLimits.EvidenceLines);
        string cited = string.Join(", ", problem.Findings.Where(finding => finding.Level > FindingLevel.Info).DefaultIfEmpty(problem.Findings[^1]).Select(finding => finding.Source).Distinct().Select(Cite));
        return new Section(
            $"a{index + 1}", $"{PageWords.DetailsAt(index + 1)} {ProblemText.TitleOf(problem)}",
            [
                .. new Block?[]
                {
                    Block.Paragraph(problems.Whole(problem) is { } whole ? Prose.Strong(PageWords.InFull + ":") + " " + whole : ""),
                    shown.LeftOut > 0 ? Block.Paragraph(Prose.Small(PageWords.EarlierLines(shown.LeftOut))) : null,
                    Block.List(shown.Items.Select(line => Line(context.Written(line)))),
                    Block.Paragraph(Prose.Small($"{PageWords.Sources}: {cited}")),
                }.OfType<Block>(),
            ],
            "detail");
    }

    private string Cite(string source)
    {
        if (!sources.Contains(source))
        {
            sources.Add(source);
        }

        return $"{sources.IndexOf(source) + 1}";
    }

    private Section? Values()
    {
        List<Prose[]> rows = [];
        int left = 0;
        foreach (IGrouping<int, CurrentItem> vital in context.Items.Where(item => item.Item is Reading).GroupBy(item => item.Item.Word.Order).OrderBy(group => group.Key))
        {
            Shown<CurrentItem> shown = Shown<CurrentItem>.Last([.. vital], PageLimits.ReadingsOfOneVital);
            left += shown.LeftOut;
            rows.AddRange(shown.Items.Select(Row));
        }

        return Section.Of(
            "values", PageWords.Values,
            Block.Table(PageWords.ValuesCaption, [PageWords.Vital, PageWords.When, PageWords.AsWritten, PageWords.Value], rows), Block.LeftOut(left));
    }

    private Prose[] Row(CurrentItem item)
    {
        var vital = (Reading)item.Item;
        var reading = context.Analysis.Record.Entries[context.Analysis.Note.EntryIndexAt(item.Line)].Readings.FirstOrDefault(own => own.Line == item.Line && own.Span == vital.Value.Span);
        string[] taken = [vital.State?.Word.Replace('-', ' ') ?? "", vital.Place?.Word.Replace('-', ' ') ?? "", SiteWords.Of(vital.Site), ExaminationBuilder.Seen(context, item)];
        string written = vital.Value.Span.In(context.Analysis.Note.Syntax.Lines[item.Line].Text).ToString();
        string value = context.HasProblem(item.Line) ? PageWords.LevelFor(Audience.Vet, FindingLevel.Error)
            : reading is not null ? context.Units.Show(reading.Value) : vital.Value is Pressure pressure ? PageWords.Pressure(Grammar.Formatting.ValuePrinter.Print(pressure)) : NoteText.Field(written);
        return
        [
            string.Join(", ", taken.Where(word => word.Length > 0).Prepend(Wording.NameOf(vital.Word.Word))),
            item.Time is { } clock ? $"{PageWords.Iso(item.Entry.Day)} {clock:HH:mm}" : PageWords.Iso(item.Entry.Day), Prose.Quote(NoteText.Field(written)), value,
        ];
    }

    private Section? Log() => Section.Of(
        "log", PageWords.Log, Block.LeftOut(model.Log.LeftOut),
        Block.List(model.Log.Items.GroupBy(line => (line.Day, line.By)).Select(day => Prose.Strong((day.Key.By.Length == 0 ? PageWords.Iso(day.Key.Day) : PageWords.DayBy(PageWords.Iso(day.Key.Day), day.Key.By)) + ":") + " "
            + Prose.Join("; ", day.Select(line => (Prose)string.Join(' ', new[] { line.Time is { } time ? $"{time:HH:mm}" : "", line.What, line.Amount }.Where(part => part.Length > 0)))))));

    private Section? Texts()
    {
        List<Block?> blocks = [];
        string heading = "";
        foreach (FreeText free in model.Texts.Items)
        {
            if (free.Heading != heading || free.About is not null)
            {
                blocks.Add(Block.Paragraph(Prose.Strong(free.Heading) + (free.About is null ? "" : ", " + Prose.Quote(free.About))));
            }

            heading = free.Heading;
            blocks.Add(new FreeBlock(free.Markdown));
            blocks.Add(free.Cut ? Block.Paragraph(Prose.Small(PageWords.TextCut)) : null);
        }

        return Section.Of("texts", PageWords.Texts, [.. blocks, Block.LeftOut(model.Texts.LeftOut)]);
    }

    /// <summary>The entries before the current period: days and kinds, latest year first.</summary>
    private Section? Earlier()
    {
        Shown<DatedEntry> shown = Shown<DatedEntry>.Last(context.Period.Earlier, PageLimits.EarlierEntries);
        return Section.Of(
            "earlier", PageWords.Earlier,
            Block.List(shown.Items.GroupBy(entry => entry.Day?.Year).OrderByDescending(year => year.Key)
                .Select(year => Prose.Strong(year.Key is { } number ? $"{number:0000}:" : PageWords.NoDay + ":") + " " + string.Join(", ", year.Select(entry => (entry.Day is { } day ? day.ToString("d MMM ", CultureInfo.InvariantCulture) : "") + entry.Entry.Head.Kind)))),
            Block.Paragraph(shown.LeftOut == 0 ? "" : Prose.Small(PageWords.EarlierLeftOut(shown.LeftOut, context.Period.Earlier[0].Day))));
    }

    /// <summary>A line as written, after its number.</summary>
    public static Prose Line(WrittenLine line) =>
        $"{(line.Day is { } day ? PageWords.LineOn(line.Number, day) : PageWords.LineNumber(line.Number))}: " + Prose.Quote(line.Text);
}
