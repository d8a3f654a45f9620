using HealthNotes.Analysis.Problems;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sections;

/// <summary>Five lines of plain text in the usual abbreviations, for a clinic to paste into its record.</summary>
internal static class PlainLines
{
    private const int MostProblems = 10;
    private const int MostQuestions = 5;

    /// <summary>The line of the owner's questions, whose words are left as they are.</summary>
    private const int QuestionsAt = 4;

    private static readonly (string Long, string Short)[] Abbreviations =
    [
        (" once a day", " SID"), (" twice a day", " BID"), (" 3 times a day", " TID"), (" every ", " q"), ("a minute", "/min"), ("kg a day", "kg/d"), ("since the visit", "since visit"), ("the clinic's", "clinic"), ("reference range ", "ref "), ("% a month since", "%/mo since"),
        ("condition ", "BCS "), ("muscle score ", "MCS "), ("pulse ", "HR "), ("asleep ", "RR asleep "), ("awake, at rest ", "RR rest "), (" in 1 month", "/1 mo"), (" months", " mo"), (" weeks", " wk"),
    ];

    public static string Of(PageContext context, PageModel model, HeadSection head)
    {
        var text = new ProblemText(context);
        string name = context.Analysis.Pet.Name is { Length: > 0 } given ? NoteText.Field(given) : PageWords.PetWithoutName;
        Problem[] open = [.. model.Problems.Where(problem => !problem.IsEnded)];
        string[] questions = [.. OpenQuestion.Of(context.Analysis.Record).Select(question => NoteText.Field(question.Text)).Take(MostQuestions)];
        string[] lines =
        [
            $"{name}: {head.Identity()}. {head.Intro[1].Plain} {PageMark.Text}",
            $"{PageWords.ProblemsHeading(context.Analysis.Record.Period, context.Analysis.Today)}: {(open.Length == 0 ? PageWords.NothingToPaste : string.Join(" | ", open.Take(MostProblems).Select((problem, index) => $"{index + 1} {ProblemText.TitleOf(problem)}: {text.LineOf(problem, PageLimits.ProblemLength)}")))}",
            $"{PageWords.MedicinesLabel}: {OrNotWritten(Prose.Join("; ", head.Medicines()).Plain)}. {PageWords.AllergyLabel}: {OrNotWritten(head.Texts("allergy"))}. {PageWords.KnownLabel}: {OrNotWritten(FindingText.InWords(head.Texts("known"), context.Analysis.Today))}.",
            $"{PageWords.NotDone}: {OrNone(string.Join("; ", head.NotCarriedOut().Select(due => PageWords.DueIn(DueText.Of(due), PageWords.On(due.On!.Value, context.Analysis.Today)))))}.",
            $"{PageWords.Questions}: {OrNone(string.Join(" / ", questions))}",
        ];
        return string.Concat(lines.Select((line, at) => (at == QuestionsAt ? line : Short(line)).ReplaceLineEndings(" ") + "\n"));
    }

    private static string Short(string line) => Abbreviations.Aggregate(line, (text, pair) => text.Replace(pair.Long, pair.Short, StringComparison.Ordinal));

    private static string OrNotWritten(string text) => text.Length == 0 ? PageWords.NoMedicine : text;

    private static string OrNone(string text) => text.Length == 0 ? PageWords.NoneSeen : text;
}
