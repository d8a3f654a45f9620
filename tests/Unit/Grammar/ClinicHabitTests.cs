using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Parsing;

namespace HealthNotes.Tests.Grammar;

/// <summary>What technicians type at speed, and what `format` makes of it.</summary>
public class ClinicHabitTests
{
    [Theory]
    [InlineData("0730 gave benazepril 5mg PO", "07:30 gave benazepril 5mg oral")]
    [InlineData("BAR", "BAR")]
    [InlineData("QAR", "QAR")]
    [InlineData("MM pink/moist", "gums pink moist")]
    [InlineData("wound RH-knee CDI", "wound RH-knee clean dry closed")]
    [InlineData("pee x3", "pee 3x")]
    [InlineData("else NAD", "else ok")]
    [InlineData("OS clear", "eye L clear")]
    [InlineData("SRR 6/15s", "rr 6/15s asleep")]
    [InlineData("stop gabapentin course finished last dose was 23:00", "stop gabapentin course finished last dose was 23:00")]
    [InlineData("due heart listened to again 2026-12-01", "due heart listened to again 2026-12-01")]
    [InlineData("skip anus left him in peace", "skip anus left him in peace")]
    [InlineData("skip ear left refused", "skip ear left refused")]
    [InlineData("skip ear L refused", "skip ear L refused")]
    public void Are_read_without_a_problem(string typed, string formatted)
    {
        NoteSyntax syntax = NoteSyntax.Parse("2026-10-04 log\n  " + typed + "\n");
        Assert.Empty(syntax.Lines[1].Problems);
        Assert.Equal("2026-10-04 log\n  " + formatted + "\n", NoteFormatter.Format(syntax));
    }

    [Theory]
    [InlineData("2017 something")]
    [InlineData("2560 gave benazepril 5mg")]
    public void A_year_or_a_time_that_does_not_exist_is_no_time(string typed) =>
        Assert.NotEmpty(NoteSyntax.Parse("2026-10-04 log\n  " + typed + "\n").Lines[1].Problems);
}
