using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;

namespace HealthNotes.Cli.Commands;

/// <summary>Options that several commands have.</summary>
internal static class SharedOptions
{
    /// <summary><c>--today DATE</c>: everything that depends on the day takes it from here.</summary>
    public static Option<DateOnly?> Today() => new("--today")
    {
        Description = "The day to work things out for, such as 2026-11-25 (the default is today)",
        HelpName = "DATE",
        CustomParser = ParseDay,
    };

    /// <summary><c>--json</c>.</summary>
    public static Option<bool> Json() => new("--json") { Description = "Print JSON for other programs" };

    /// <summary>The day that was given, else the clock's: the only place that reads it.</summary>
    public static DateOnly DayOf(this ParseResult parsed, Option<DateOnly?> today) => parsed.GetValue(today) ?? DateOnly.FromDateTime(DateTime.Now);

    private static DateOnly? ParseDay(ArgumentResult result)
    {
        string written = result.Tokens.Count > 0 ? result.Tokens[0].Value : "";
        if (!DateOnly.TryParseExact(written, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day))
        {
            result.AddError($"`{written}` is not a date; write year-month-day, such as 2026-11-25");
        }

        return day;
    }
}
