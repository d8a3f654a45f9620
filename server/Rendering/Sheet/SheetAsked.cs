using HealthNotes.Analysis.Problems;
using HealthNotes.Analysis.Rules;
using HealthNotes.Record.Checks;
using HealthNotes.Record.Due;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>What the days before were like; the questions for the clinic; what is due.</summary>
internal static class SheetAsked
{
    private const int BlankLines = 4;
    private const int LeastBlank = 2;

    /// <summary>The questions about the days before, two beside each other.</summary>
    public static Group Of(CheckPlan plan) => new("asked", [new Paragraph(Prose.Strong(PageWords.SheetSince) + " " + PageWords.SheetAskedCaption), Block.List(plan.Asked.Select(Item))!]);

    /// <summary>The questions for the clinic, with room for more, and what is due.</summary>
    public static Group Tasks(PageContext context)
    {
        string[] questions = [.. OpenQuestion.Of(context.Analysis.Record).TakeLast(SheetLimits.Tasks).Select(question => SheetLimits.Cut(NoteText.Field(question.Text), SheetLimits.TaskLength))];
        IEnumerable<Prose> due = DueList.Of(context.Analysis.Record).Take(SheetLimits.Tasks).Select(item => (Prose)SheetLimits.Cut(DueText.Line(item, context.Analysis.Today), SheetLimits.TaskLength));
        IEnumerable<Block?> room = Enumerable.Repeat(new Paragraph(Prose.Blank("blank")), Math.Max(LeastBlank, BlankLines - questions.Length));
        return new Group("words", [.. new[] { Section.Of("questions", PageWords.SheetQuestions, room.Prepend(Block.List(questions.Select(question => (Prose)question)))), Section.Of("due", PageWords.FolderDue, Block.List(due)) }.OfType<Block>()]);
    }

    private static Prose Item(CheckItem item) => Prose.Strong(item.Word.Word == "gave" ? PageWords.SheetMedicinesGiven : Wording.NameOf(item.Word.Word)) + " " + Prose.Quote(item.Word.Word)
        + " " + SheetPaper.Box + " " + PageWords.SheetAsUsual + " " + Prose.Blank("field long");
}
