using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Rendering;

namespace HealthNotes.Cli.Commands;

/// <summary>Options that several commands have.</summary>
internal static class SharedOptions
{
    private const string DayShape = "yyyy-MM-dd";

    /// <summary><c>--today DATE</c>: everything that depends on the day takes it from here.</summary>
    public static Option<DateOnly?> Today() => Day("--today", "The day to work things out for, such as 2026-11-25 or \"25 nov\" (the default is today)", null);

    /// <summary><c>--since DATE</c>: where the current period starts.</summary>
    public static Option<DateOnly?> Since(Option<DateOnly?> today) =>
        Day("--since", "Take everything since this day as current, such as 3nov (the default is since the last visit; without one, the last twelve months)", today);

    private static Option<DateOnly?> Day(string name, string description, Option<DateOnly?>? today) =>
        new(name) { Description = description, HelpName = "DATE", CustomParser = result => ParseDay(result, today) };

    /// <summary><c>--units metric|us</c>.</summary>
    public static Option<string?> Units()
    {
        var units = new Option<string?>("--units") { Description = "metric or us (the default is what the note asks for)", HelpName = "UNITS" };
        units.AcceptOnlyFromAmong("metric", "us");
        return units;
    }

    /// <summary>True for US units, false for metric ones, null when nothing was asked for.</summary>
    public static bool? UsUnits(string? units) => units is null ? null : units == "us";

    /// <summary><c>--paper a4|letter</c>.</summary>
    public static Option<Paper> OnPaper() => new("--paper") { Description = "The paper of a PDF: a4 or letter (the default is a4)", HelpName = "PAPER", CustomParser = ParsePaper, DefaultValueFactory = _ => Paper.A4 };

    /// <summary>The same where the note decides: letter for US units.</summary>
    public static Option<Paper?> PaperOfNote() => new("--paper") { Description = "The paper: a4 or letter (the default is a4; letter where the note says `units us`)", HelpName = "PAPER", CustomParser = result => ParsePaper(result) };

    /// <summary><c>--force</c>.</summary>
    public static Option<bool> Force() => new("--force") { Description = "Replace a file that was not made by hnote (a note is never replaced)" };

    /// <summary><c>--no-cache</c>.</summary>
    public static Option<bool> NoCache() => new("--no-cache") { Description = "Work everything out again, and keep nothing for the next run (of many notes, what did not change is kept in your cache folder)" };

    /// <summary><c>--json</c>.</summary>
    public static Option<bool> Json() => new("--json") { Description = "Print JSON for other programs" };

    /// <summary>The day that was given, else the clock's: the only place that reads it.</summary>
    public static DateOnly DayOf(this ParseResult parsed, Option<DateOnly?> today) => parsed.GetValue(today) ?? Clock();

    private static DateOnly Clock() => TodayOfTests() ?? DateOnly.FromDateTime(DateTime.Now);

    /// <summary>The day in <c>HNOTE_TODAY</c>, for tests through a program that passes no option; null for everybody else.</summary>
    public static DateOnly? TodayOfTests() =>
        DateOnly.TryParseExact(Environment.GetEnvironmentVariable("HNOTE_TODAY"), DayShape, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day : null;

    /// <summary>A day in each form that the heading of an entry takes; without its year it is the last such day up to <paramref name="today"/>.</summary>
    private static DateOnly? ParseDay(ArgumentResult result, Option<DateOnly?>? today)
    {
        string written = result.Tokens.Count > 0 ? result.Tokens[0].Value : "";
        LineSyntax? line = NoteSyntax.Parse(written).Lines is [var only] ? only : null;
        if (line is { Problems: [], EntryHead: { } head } && head.DateSpan.Length == written.Length)
        {
            DateOnly last = (today is null ? null : result.GetValue(today)) ?? Clock();
            return head.Date ?? new PartialDate(head.DateSpan, PartialDate.NoYear, head.NoYear!.Value.Month, head.NoYear.Value.Day, About: false).Near(last, after: false).Exact;
        }

        result.AddError(line is { EntryHead: not null, Problems: [{ Rule: ProblemRules.BadDate } problem, ..] } ? problem.Message : $"`{written}` is not a date. Write year-month-day, such as 2026-11-25, or \"25 nov\".");
        return null;
    }

    private static Paper ParsePaper(ArgumentResult result)
    {
        string written = result.Tokens.Count > 0 ? result.Tokens[0].Value : "";
        if (Enum.TryParse(written, ignoreCase: true, out Paper paper) && Enum.IsDefined(paper) && !char.IsDigit(written[0]))
        {
            return paper;
        }

        result.AddError($"unknown paper size `{written}`: use a4 or letter");
        return Paper.A4;
    }
}
