using CsCheck;
using HealthNotes.Tests.Support;

namespace HealthNotes.Cli.Tests;

/// <summary>Whatever a note says, its calendar is one; <c>tests/fuzz.sh SECONDS</c> goes on longer.</summary>
public class CalendarFuzzTests
{
    private static readonly Gen<string> Words = Gen.String[Gen.Char[' ', '\u2FFF'], 1, 120].Select(text => text.Replace('\u0085', ' ').Replace('\u2028', ' ').Replace('\u2029', ' '));

    [Fact]
    public void Any_words_make_a_calendar_that_can_be_read() => Gen.Select(Words, Words, Gen.OneOf("2026-12-01", "9999-12-31", "0001-01-01")).ForAll(
        (name, topic, day) =>
        {
            using var work = new Workspace();
            string file = work.PathOf("x.ics");
            Outcome outcome = Hnote.Run("due", work.Note($"pet {name}\nspecies dog\ndue {topic} {day}\ndue worming 2026-12-01\n"), "--calendar", file, "--today", Hnote.Today);
            Assert.False(outcome.ShowsInternals, outcome.Errors);
            Assert.Equal(0, outcome.Code);
            Assert.NotEmpty(Ical.Net.Calendar.Load(File.ReadAllText(file))!.Events);
            Assert.All(File.ReadAllLines(file), line => Assert.DoesNotContain(line, char.IsControl));
        },
        iter: 6);
}
