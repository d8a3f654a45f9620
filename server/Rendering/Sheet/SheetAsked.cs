using System.Xml.Linq;
using HealthNotes.Analysis.Problems;
using HealthNotes.Analysis.Rules;
using HealthNotes.Record.Checks;
using HealthNotes.Record.Due;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>What the days before were like; the questions for the clinic; what is due.</summary>
internal static class SheetAsked
{
    private const int BlankLines = 4;
    private const int LeastBlank = 2;
    private const int Columns = 2;

    /// <summary>The questions about the days before, two beside each other.</summary>
    public static XElement Of(CheckPlan plan) => Tag.Of(
        "table.asked", Tag.Of("caption", Tag.Of("strong", PageWords.SheetSince), " ", PageWords.SheetAskedCaption), Tag.Of("tbody", plan.Asked.Chunk(Columns).Select(row => Tag.Of("tr", row.SelectMany(Cells)))));

    /// <summary>The questions for the clinic, with room for more, and what is due.</summary>
    public static XElement Tasks(PageContext context)
    {
        DateOnly today = context.Analysis.Today;
        string[] questions = [.. OpenQuestion.Of(context.Analysis.Record).TakeLast(SheetLimits.Tasks).Select(question => SheetLimits.Cut(NoteText.Field(question.Text), SheetLimits.TaskLength))];
        object[] due = [.. DueList.Of(context.Analysis.Record).Take(SheetLimits.Tasks).Select(item => SheetLimits.Cut(DueText.Line(item, today), SheetLimits.TaskLength))];
        return Tag.Of(
            "div.words",
            Tag.Of(
                "div", Tag.Of("h3", PageWords.SheetQuestions),
                Tag.Of("ul", questions.Select(question => Tag.Of("li", Tag.Bdi(question)))),
                Enumerable.Range(0, Math.Max(LeastBlank, BlankLines - questions.Length)).Select(_ => Tag.Of("p.blank"))),
            Tag.Of("div", Tag.List(PageWords.FolderDue, due)));
    }

    private static IEnumerable<XElement> Cells(CheckItem item) =>
    [
        Tag.Head(item.Word.Word == "gave" ? PageWords.SheetMedicinesGiven : Wording.NameOf(item.Word.Word), " ", Tag.Of("code", item.Word.Word)),
        Tag.Of("td.today", Tag.Box(), " ", PageWords.SheetAsUsual, " ", Tag.Field()),
    ];
}
