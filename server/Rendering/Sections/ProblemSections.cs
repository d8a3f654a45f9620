using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Problems;
using HealthNotes.Analysis.Rules;
using HealthNotes.Record.Courses;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sections;

/// <summary>The questions, the problems, and what was measured and looked at without a finding.</summary>
internal sealed class ProblemSections(PageContext context, PageModel model)
{
    private const int MostTexts = 4;

    /// <summary>So many looks alike make a change of what comes after (common practice, no source).</summary>
    private const int LooksBefore = 3;

    /// <summary>Characters of what the clinic named beforehand, beside a problem.</summary>
    private const int MostBeside = 100;

    private readonly ProblemText text = new(context);

    private Audience Reader => context.Options.For;

    private DateOnly Today => context.Analysis.Today;

    public Section? Questions()
    {
        Shown<OpenQuestion> questions = Shown<OpenQuestion>.Last(OpenQuestion.Of(context.Analysis.Record), PageLimits.ListItems);
        return Section.Of(
            "questions", PageWords.Questions,
            Block.List(questions.Items.Select(question => (Prose)(question.Day is { } day ? PageWords.AskedOn(NoteText.Field(question.Text), PageWords.On(day, Today)) : NoteText.Field(question.Text))), numbered: true),
            Block.LeftOut(questions.LeftOut));
    }

    public Section Problems()
    {
        Problem[] open = [.. model.Problems.Where(problem => !problem.IsEnded)];
        Problem[] shown = [.. model.Shown.Select(index => model.Problems[index]).Where(problem => !problem.IsEnded)];
        Problem[] ended = [.. model.Shown.Select(index => model.Problems[index]).Where(problem => problem.IsEnded)];
        int unread = context.Analysis.Findings.Where(finding => finding.Level == FindingLevel.Error && context.IsCurrent(finding.Line)).Select(finding => finding.Line).Distinct().Count();
        return Section.Of(
            "problems", PageWords.ProblemsHeading(context.Analysis.Record.Period, Today),
            Block.Paragraph(open.Any(problem => problem.Level > FindingLevel.Info) ? "" : PageWords.NothingCrossed(context.Analysis.Note.Entries.Length > 0)),
            Block.List(shown.Select(Item), numbered: true),
            Block.LeftOut(open.Length - shown.Length),
            Block.Paragraph(ended.Length == 0 ? "" : Prose.Strong(PageWords.Ended + ":")),
            Block.List(ended.Select(Item)),
            Block.Paragraph(Prose.Join("; ", AlsoNoted()) is { IsEmpty: false } noted ? Prose.Strong(PageWords.AlsoNoted + ":") + " " + noted : ""),
            Block.Paragraph(Attitude() is { Length: > 0 } changed ? Prose.Strong(PageWords.Changed + ":") + " " + changed : ""),
            Block.List(text.ToldApart().Take(MostTexts).Select(told => Prose.Strong($"{told.Label}, {told.Day}:") + $" \u201C{told.Words}\u201D")),
            Block.Paragraph(unread == 0 ? "" : PageWords.CouldNotBeRead(unread)))!;
    }

    /// <summary>What to do, by the strongest that is open, for the owner.</summary>
    public Section? NextSteps() => Reader != Audience.Owner ? null : Section.Of(
        "next", PageWords.NextSteps,
        Block.List(new[] { FindingLevel.Urgent, FindingLevel.Call, FindingLevel.Watch }.Where(level => model.Problems.Any(problem => problem.Level == level && !problem.IsEnded)).Select(level => (Prose)PageWords.NextStep(level))));

    /// <summary>What the clinic asked to be phoned about and the notes hold: the day, and whether somebody phoned.</summary>
    public Section? Asked() => Section.Of("asked", PageWords.Asked, Block.List(model.Shown.Select(index => model.Problems[index]).SelectMany(text.AskedOf)));

    /// <summary>All of a problem, where the page has not the room for it.</summary>
    public string? Whole(Problem problem) => Line(problem, int.MaxValue, int.MaxValue) is var whole && whole != Short(problem) ? whole : null;

    private ListItem Item(Problem problem)
    {
        Prose mark = problem.IsEnded ? "" : Prose.Mark(problem.Level, level => PageWords.LevelFor(Reader, level)) + " ";
        return new ListItem(
            mark + Prose.Strong(ProblemText.TitleOf(problem) + ":") + " " + Short(problem)
            + " " + Prose.Small(Prose.Link($"#{KeyOf(problem)}", Whole(problem) is null ? PageWords.DetailsAt(NumberOf(problem)) : PageWords.MoreAt(NumberOf(problem)))), []);
    }

    private string Short(Problem problem) => Line(problem, PageLimits.ProblemLength - Math.Max(PageWords.LevelFor(Audience.Vet, problem.Level).Length, PageWords.LevelFor(Audience.Owner, problem.Level).Length) - ProblemText.TitleOf(problem).Length, MostBeside);

    private string Line(Problem problem, int room, int roomBeside)
    {
        string beside = "";
        foreach (string said in text.ClinicOn(problem, model.Problems.Take(NumberOf(problem) - 1)))
        {
            beside += beside.Length + said.Length < roomBeside ? " " + said : "";
        }

        return text.LineOf(problem, room - beside.Length, quotes: true) + "." + beside;
    }

    /// <summary>What is known, expected or within what is usual: signs alone; values and places are told elsewhere.</summary>
    private IEnumerable<Prose> AlsoNoted() => model.Noted.Where(problem => !problem.Parts.Any(part => part is PlacePart))
        .SelectMany(problem => problem.Parts.OfType<SignPart>().Select(sign => (Prose)text.Of(sign)).Concat(problem.Parts.OfType<ToldPart>().Select(told => (Prose)FindingText.Of(told.Finding.Found, Today))))
        .Take(PageLimits.ListItems);

    /// <summary>A word for alertness that is not a finding, after looks that all had another one.</summary>
    private string Attitude()
    {
        Noted[] looks = [.. context.Analysis.Record.All("alert").SelectMany(course => course.Lines).Where(line => line.Item is { Words.IsEmpty: false }).OrderBy(line => line.Moment)];
        string WordsOf(Noted look) => string.Join(", ", look.Item!.Words.Select(word => word.Word.Word.Replace('-', ' ')));
        if (looks.Length <= LooksBefore || !context.IsCurrent(looks[^1].Line) || WordsOf(looks[^1]) == WordsOf(looks[^2]) || !looks[^1].Item!.Words.All(word => word.Word.For(context.Analysis.Pet.Species, context.Analysis.Pet.Male != false) is { IsNeutral: true }))
        {
            return "";
        }

        Noted[] same = [.. looks.SkipLast(1).Reverse().TakeWhile(look => WordsOf(look) == WordsOf(looks[^2]))];
        return same.Length < LooksBefore ? "" : PageWords.ChangedTo(Wording.NameOf("alert").ToLowerInvariant(), WordsOf(looks[^2]), WordsOf(looks[^1]), PageWords.On(looks[^1].Day, Today), PageWords.On(same[^1].Day, Today));
    }

    private int NumberOf(Problem problem) => model.Problems.IndexOf(problem) + 1;

    private string KeyOf(Problem problem) => $"a{NumberOf(problem)}";
}
