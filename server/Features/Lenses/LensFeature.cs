using System.Collections.Immutable;
using HealthNotes.Features.Checks;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Text;
using HealthNotes.Record.Checks;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Due;

namespace HealthNotes.Features.Lenses;

/// <summary>How far each check got, what is due, and what is next. One pass over the note.</summary>
public static class LensFeature
{
    /// <summary>From how many days ahead a task tells that it is due.</summary>
    private const int Soon = 30;

    /// <summary>The lenses of a note, in line order. Days are the same in any units: none of the settings matters yet.</summary>
    public static ImmutableArray<LensText> In(Document document, FeatureSettings settings)
    {
        var lenses = new List<LensText>();
        Checks(document, lenses);
        ImmutableArray<DueItem> due = DueList.Of(document.Record);
        List<(DueItem Task, DateOnly On)> left = [.. due.Where(item => item is { Task: not null, On: not null }).Select(item => (item, item.On!.Value))];
        LensText? next = Next(document, left, due);
        int opening = document.Note.Entries is [var entry, ..] ? entry.Line : document.Syntax.Lines.Length;
        // what is next stands above the opening: there it is not repeated
        lenses.AddRange(left.Where(task => task.On.DayNumber - document.Today.DayNumber <= Soon && !(task.Task.Line < opening && next?.Command?.Place.Line == task.Task.Line))
            .Select(task => new LensText(LineOf(document, task.Task.Line), Due(document.Today, task.On))));
        if (next is not null)
        {
            lenses.Add(next);
        }

        return [.. lenses.OrderBy(lens => lens.Range.Start)];
    }

    /// <summary>Adds a lens for each check.</summary>
    private static void Checks(Document document, List<LensText> lenses)
    {
        var coverage = new CheckCoverage(CheckItems.For(document.Record.Pet));
        ImmutableArray<Entry> entries = document.Note.Entries;
        DateOnly? current = document.Record.Of(CourseKey.Checks).Last?.Day;
        int at = 0;
        while (at < entries.Length)
        {
            int start = at;
            DateOnly? day = entries[at].Head.Date;
            CheckCoverage.Seen seen = default;
            do
            {
                Entry entry = entries[at++];
                seen |= entry.Head.Kind == "check" ? coverage.In(entry) : default;
            }
            while (day is not null && at < entries.Length && entries[at].Head.Date == day);

            // what is next is asked of the last check only: of an older one it comes too late
            string? title = null;
            for (int i = start; i < at; i++)
            {
                if (entries[i].Head.Kind == "check")
                {
                    // a check that was only begun is in no course yet
                    bool latest = day is null || current is null || day >= current;
                    WaitingLine? next = latest ? WaitingLine.In(document, entries[i]).FirstOrDefault() : null;
                    title ??= CheckProgress.Title(coverage, seen, latest, next?.Text);
                    lenses.Add(new LensText(LineOf(document, entries[i].Line), title, next is null ? null : new LensCommand(LensCommands.NextPart, document.Uri, new Place(entries[i].Line, 0))));
                }
            }
        }
    }

    private static LensText? Next(Document document, List<(DueItem Task, DateOnly On)> left, ImmutableArray<DueItem> due)
    {
        if (document.Note.Opening.Facts is not [{ } first, ..])
        {
            return null;
        }

        (DueItem Task, DateOnly On)? task = left.Count == 0 ? null : left.MinBy(task => task.On);

        // a check is only announced where the notes say how often
        DateOnly? check = due.FirstOrDefault(item => item.Kind == DueKind.Check && item.FactLine is not null)?.On;
        if (check is { } on && (task is null || on <= task.Value.On))
        {
            return new LensText(LineOf(document, first.Line), $"next: home check, {Due(document.Today, on)}", new LensCommand(LensCommands.AddCheck, document.Uri, new Place(first.Line, 0)));
        }

        return task is not { } next
            ? null
            : new LensText(
                LineOf(document, first.Line), $"next: {(next.Task.Kind == DueKind.Recheck ? "recheck " : "")}{next.Task.What}, {Due(document.Today, next.On)}",
                new LensCommand(LensCommands.GoTo, document.Uri, new Place(next.Task.Line, 0)));
    }

    private static string Due(DateOnly today, DateOnly day) => (day < today ? "was due " : "due ") + DayWords.From(today, day);

    private static PlaceRange LineOf(Document document, int line) =>
        PlaceRange.Of(line, new TextSpan(0, document.Syntax.Lines[line].Text.Length));
}
