using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Readings;

namespace HealthNotes.Tests.Analysis;

public class CountRateTests
{
    [Theory]
    [InlineData("hr 18/15s", 72, 68, 76)]
    [InlineData("hr 7/6s", 70, 60, 80)] // one beat missed in 6 s is 10 a minute
    [InlineData("rr 22/1min", 22, 21, 23)]
    [InlineData("rr 8/30s", 16, 14, 18)]
    [InlineData("hr 0/15s", 0, 0, 4)]
    public void A_count_gives_a_rate_and_what_one_more_or_less_makes_of_it(string line, int perMinute, int low, int high)
    {
        ReadValue value = ReadValue.Of(Assert.IsType<Reading>(Note.Read("2026-01-01\n" + line).Entries[0].Items[0].Value).Value)!;
        Assert.Equal((perMinute, low, high), (value.Number, value.Low, value.High));
        Assert.Equal("/min", value.Unit);
    }

    [Fact]
    public void A_rate_that_is_written_as_such_claims_no_spread()
    {
        ReadValue value = ReadValue.Of(Assert.IsType<Reading>(Note.Read("2026-01-01\nhr 72/min").Entries[0].Items[0].Value).Value)!;
        Assert.Equal((72m, null, null), (value.Number, value.Low, value.High));
    }
}
