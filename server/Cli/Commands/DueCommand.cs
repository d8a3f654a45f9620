using System.CommandLine;
using System.Text;
using System.Text.Json;
using HealthNotes.Analysis.Findings;
using HealthNotes.Cli.Files;
using HealthNotes.Cli.Output;
using HealthNotes.Files;
using HealthNotes.Record;
using HealthNotes.Record.Due;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote due PATH...</c></summary>
internal static class DueCommand
{
    public static Command Create()
    {
        var paths = new Argument<string[]>("paths") { Description = "Notes, or folders of notes", Arity = ArgumentArity.OneOrMore };
        var calendar = new Option<string?>("--calendar") { Description = "Write a calendar file as well, to be imported: an alarm the day before, what is overdue on today", HelpName = "FILE.ics" };
        var days = new Option<int?>("--days") { Description = "Only what is overdue or falls due within so many days", HelpName = "DAYS" };
        Option<bool> json = SharedOptions.Json();
        Option<DateOnly?> today = SharedOptions.Today();
        Option<bool> force = SharedOptions.Force();
        var command = new Command("due", "List what is due: checks, weighings, visits, things to look at again, medicines, vaccines") { paths, days, calendar, json, force, today };
        command.SetAction(parsed => Run(parsed.GetValue(paths)!, parsed.GetValue(days), parsed.GetValue(calendar), parsed.GetValue(force), parsed.GetValue(json), parsed.DayOf(today), parsed.InvocationConfiguration.Output));
        return command;
    }

    private static int Run(string[] paths, int? days, string? calendar, bool force, bool json, DateOnly today, TextWriter output)
    {
        if (days < 0)
        {
            throw new RefusedException("--days counts from today on: write 0 for what is overdue or due today");
        }

        if (calendar is not null)
        {
            OutputFile.Check(calendar, paths, force);
        }

        var notes = new ReadableNotes(paths);
        List<DueOfPet> all = [];
        List<string> read = [];
        notes.ForEach(
            note => new { note.Path, Due = DueOfPet.Of(note.Path, PetRecord.Of(note.ToNote(notes.Rules), today)).ToArray() },
            note =>
            {
                all.AddRange(note.Due);
                read.Add(note.Path);
            });
        IReadOnlyList<DueOfPet> due = DueOfPet.InOrder(all.Where(one => days is null || (one.Due.On is { } on && on.DayNumber - today.DayNumber <= days)));
        if (calendar is not null)
        {
            OutputFile.Write(calendar, Encoding.UTF8.GetBytes(DueCalendar.Of(due, today)), read, force);
        }

        if (json)
        {
            Terminal.WriteJson(JsonSerializer.Serialize(Report(due, today), ContractJson.Readable.DueReport));
        }
        else
        {
            Print(output, due, today, days, several: read.Count > 1, nothing: read.Count > 0 && notes.Problem is null);
            if (calendar is not null)
            {
                int left = due.Count(one => one.Due.On is null);
                output.WriteLine($"Wrote {calendar}: {due.Count - left} events{(left == 0 ? "" : $"; {left} without a day left out")}.");
            }
        }

        return notes.Problem ?? ExitCodes.Fine;
    }

    /// <summary>That nothing is due is only said when every note was read.</summary>
    private static void Print(TextWriter output, IReadOnlyList<DueOfPet> due, DateOnly today, int? within, bool several, bool nothing)
    {
        if (due.Count == 0 && nothing)
        {
            output.WriteLine(within is { } days ? $"Nothing is overdue or due within {days} days by what is written down." : "Nothing is due by what is written down.");
            return;
        }

        foreach (DueOfPet one in due)
        {
            string line = $"{(several ? one.Pet + ": " : "")}{one.Line}";
            bool late = one.Due.On < today;
            output.WriteLine($"{(late ? Terminal.InColour(line, FindingLevel.Watch) : line)} {Terminal.Faint($"({one.Path}:{one.Due.Line + 1})")}");
        }
    }

    private static DueReport Report(IReadOnlyList<DueOfPet> due, DateOnly today) => new(
        Iso(today),
        [.. due.Select(one => new DueItemReport(
            one.Path, one.Due.Line + 1, one.Name, NameOf(one.Due.Kind), one.What, one.Due.On is { } on ? Iso(on) : null,
            one.Due.On is { } day ? day.DayNumber - today.DayNumber : null, one.Due.Source))]);

    private static string NameOf(DueKind kind) => kind == DueKind.CourseEnd ? "course-end" : kind.ToString().ToLowerInvariant();

    private static string Iso(DateOnly day) => $"{day:yyyy-MM-dd}";
}
