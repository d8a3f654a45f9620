using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using HealthNotes.Rendering;

namespace HealthNotes.Cli.Commands;

/// <summary>Options that several commands have.</summary>
internal static class SharedOptions
{
    private const string DayShape = "yyyy-MM-dd";

    /// <summary><c>--today DATE</c>: everything that depends on the day takes it from here.</summary>
    public static Option<DateOnly?> Today() => Day("--today", "The day to work things out for, such as 2026-11-25 (the default is today)");

    /// <summary><c>--since DATE</c>: where the current period starts.</summary>
    public static Option<DateOnly?> Since() => Day("--since", "Take everything since this day as current (the default is since the last visit; without one, the last twelve months)");

    /// <summary>An option that takes a day.</summary>
    public static Option<DateOnly?> Day(string name, string description) => new(name) { Description = description, HelpName = "DATE", CustomParser = ParseDay };

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
    public static DateOnly DayOf(this ParseResult parsed, Option<DateOnly?> today) => parsed.GetValue(today) ?? TodayOfTests() ?? DateOnly.FromDateTime(DateTime.Now);

    /// <summary>The day in <c>HNOTE_TODAY</c>, for tests through a program that passes no option; null for everybody else.</summary>
    public static DateOnly? TodayOfTests() =>
        DateOnly.TryParseExact(Environment.GetEnvironmentVariable("HNOTE_TODAY"), DayShape, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day : null;

    private static DateOnly? ParseDay(ArgumentResult result)
    {
        string written = result.Tokens.Count > 0 ? result.Tokens[0].Value : "";
        if (!DateOnly.TryParseExact(written, DayShape, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day))
        {
            result.AddError($"`{written}` is not a date; write year-month-day, such as 2026-11-25");
        }

        return day;
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
