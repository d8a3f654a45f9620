using HealthNotes.Analysis.Findings;
using static HealthNotes.Tests.Analysis.MarkedFindings;

namespace HealthNotes.Tests.Analysis;

/// <summary>Each vital at the edges of its lines. The lines themselves and their sources are rows of bounds.tsv.</summary>
public class NormalRangeRuleTests
{
    [Theory]
    [InlineData("rr 25 asleep", null)]
    [InlineData("rr 26 asleep", FindingLevel.Info)]
    [InlineData("rr 30 asleep", FindingLevel.Info)]
    [InlineData("rr 31 asleep", FindingLevel.Watch)] // a call takes two counts
    [InlineData("rr 40 asleep", FindingLevel.Watch)]
    [InlineData("rr 41 asleep", FindingLevel.Urgent)]
    [InlineData("rr 30", null)]
    [InlineData("rr 31", FindingLevel.Watch)]
    [InlineData("rr 120 panting", null)] // never compared with a resting range
    [InlineData("rr 80 excited", null)]
    [InlineData("hr 60", null)]
    [InlineData("hr 59", FindingLevel.Watch)]
    [InlineData("hr 39", FindingLevel.Call)]
    [InlineData("hr 140", null)]
    [InlineData("hr 141", FindingLevel.Watch)]
    [InlineData("hr 180", FindingLevel.Watch)]
    [InlineData("hr 181", FindingLevel.Urgent)]
    [InlineData("hr 190 after-walk", null)]
    [InlineData("temp 37.2C rectal", null)]
    [InlineData("temp 37.1C", FindingLevel.Watch)]
    [InlineData("temp 36.9C", FindingLevel.Call)]
    [InlineData("temp 35.9C", FindingLevel.Urgent)]
    [InlineData("temp 39.2C", null)]
    [InlineData("temp 39.5C", FindingLevel.Watch)]
    [InlineData("temp 39.6C", FindingLevel.Call)]
    [InlineData("temp 40.9C", FindingLevel.Call)]
    [InlineData("temp 41.0C", FindingLevel.Urgent)]
    [InlineData("temp 105.8F", FindingLevel.Urgent)] // 41.0 C exactly
    [InlineData("crt 1s", null)]
    [InlineData("crt 2s", null)]
    [InlineData("crt 2.5s", FindingLevel.Watch)]
    [InlineData("crt 3s", FindingLevel.Urgent)]
    [InlineData("crt <2s", null)] // a bound that may be fine raises nothing
    [InlineData("crt >3s", FindingLevel.Urgent)]
    [InlineData("crt 0.5s", FindingLevel.Watch)]
    [InlineData("bcs 4/9", null)]
    [InlineData("bcs 5/9", null)]
    [InlineData("bcs 6/9", FindingLevel.Watch)]
    [InlineData("bcs 3/9", FindingLevel.Call)]
    [InlineData("bcs 8/9", FindingLevel.Call)]
    [InlineData("bcs 3/5", null)] // AAHA weight management toolkit: 3/5 equals 5/9
    [InlineData("bcs 4.5/5", FindingLevel.Call)] // and 4.5/5 equals 8/9
    [InlineData("mcs normal", null)]
    [InlineData("mcs mild", FindingLevel.Watch)]
    [InlineData("mcs severe", FindingLevel.Call)]
    public void A_grown_dog(string line, FindingLevel? level) => Assert.Equal(level, LevelForDog(line));

    [Theory]
    [InlineData("hr 94", null)]
    [InlineData("hr 93", FindingLevel.Watch)]
    [InlineData("hr 189", null)]
    [InlineData("hr 190", FindingLevel.Watch)]
    [InlineData("rr 48", null)] // Szatmari and Dijkstra 2017: healthy cats at rest, 14 to 48
    [InlineData("rr 49", FindingLevel.Info)]
    [InlineData("rr 60", FindingLevel.Info)] // Dijkstra 2018: healthy cats at rest, 16 to 60
    [InlineData("rr 61", FindingLevel.Watch)]
    [InlineData("hr 66", FindingLevel.Watch)]
    [InlineData("hr 65", FindingLevel.Call)]
    [InlineData("rr 70", FindingLevel.Watch)]
    [InlineData("rr 71", FindingLevel.Call)]
    [InlineData("hr 221", FindingLevel.Urgent)]
    [InlineData("hr 132", null)] // Abbott, J Feline Med Surg 2005: mean of healthy cats at home
    [InlineData("hr 210 purring", null)]
    [InlineData("rr 21 asleep", null)] // Ljungvall et al. 2014: median of healthy cats
    [InlineData("temp 36.7C", null)]
    [InlineData("temp 38.9C", null)]
    [InlineData("temp 39.0C", FindingLevel.Watch)]
    [InlineData("temp 39.5C", FindingLevel.Call)]
    [InlineData("bcs 4/9", FindingLevel.Watch)]
    public void A_grown_cat(string line, FindingLevel? level) => Assert.Equal(level, LevelForCat(line));

    [Fact]
    public void Two_high_sleeping_counts_in_a_row_are_a_reason_to_call()
    {
        var analysis = CheckDog("""
              08:00 rr 31 asleep
                       ^^ rr-range watch
              14:00 rr 32 asleep
                       ^^ rr-range call
            """);
        Assert.Equal([5, 6], analysis.Findings[1].Evidence.ToArray());
        Assert.Contains("2 readings in a row", analysis.Findings[1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_normal_count_between_two_high_ones_starts_the_row_again() => CheckDog("""
          08:00 rr 31 asleep
                   ^^ rr-range watch
          12:00 rr 18 asleep
          14:00 rr 32 asleep
                   ^^ rr-range watch
        """);

    [Fact]
    public void A_count_awake_does_not_stand_between_two_asleep() => CheckDog("""
          08:00 rr 31 asleep
                   ^^ rr-range watch
          12:00 rr 22 rest
          14:00 rr 32 asleep
                   ^^ rr-range call
        """);

    [Fact]
    public void A_count_of_last_spring_is_no_count_before() => Check("""
        pet Marlow
        species dog
        born 2020-05-01
        2026-04-01 check
          rr 31 asleep
             ^^ rr-range watch
        2026-11-01 check
          rr 31 asleep
             ^^ rr-range watch
        """);

    [Fact]
    public void The_message_says_how_far_the_count_may_be_out()
    {
        var analysis = CheckDog("""
              rr 11/15s asleep
                 ^^^^^^ rr-range urgent
            """);
        Assert.Contains("11/15s; one count more or less makes it 40 to 48", analysis.Findings[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Outside_the_range_shown_but_past_no_line_is_something_to_know() => Check("""
        pet Bruno
        species dog
        born 2022-05-01
        adult-weight 30kg
        2026-11-01 check
          hr 130
             ^^^ hr-range info
        """);

    [Fact]
    public void The_size_counts_a_large_dog_may_be_slower() => Check("""
        pet Bruno
        species dog
        born 2022-05-01
        adult-weight 30kg
        2026-11-01 check
          hr 55
             ^^ hr-range info
        """);

    [Fact]
    public void A_puppys_pulse_is_not_held_against_a_grown_dogs() => Check("""
        pet Pip
        species dog
        born 2026-08-01
        2026-11-01 check
          hr 165
        """);

    [Fact]
    public void Without_a_species_nothing_is_compared_and_that_is_said() => Check("""
        pet Pip
        ^^^^^^^ facts-missing info
        2026-11-01 check
          hr 240
        """);

    [Fact]
    public void An_ear_reading_may_raise_a_flag_high_up_but_low_down_it_is_given_a_degree() => CheckDog("""
          temp 37.0C ear
               ^^^^^ temp-range info
          temp 39.6C ear
               ^^^^^ temp-range call
        """);

    [Fact]
    public void Findings_speak_the_readers_units()
    {
        var analysis = Check("""
            pet Bruno
            species dog
            born 2022-05-01
            units us
            2026-11-01 check
              temp 104F
                   ^^^^ temp-range call
            """);
        Assert.StartsWith("Temperature 104 °F: above 103.1 °F.", analysis.Findings[0].Message, StringComparison.Ordinal);
        Assert.EndsWith("Shown as normal: 99 to 102.6 °F.", analysis.Findings[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Glucose_of_a_pet_on_insulin_has_its_own_lines() => Check("""
        pet Tansy
        species cat
        born 2014
        med insulin 2 units every 12h
        2026-11-01 log
          07:00 glucose 250mg/dL
          11:00 glucose 75mg/dL
                        ^^^^^^^ glucose-range call
          12:00 glucose 3.2mmol/L
                        ^^^^^^^^^ glucose-range urgent
        """);

    [Theory]
    [InlineData("as slow as it often is", "info watch", 66, 58, 72, 62, 70, 64, 66, 62, 56, 56)]
    [InlineData("slower than it ever is", "info call", 66, 58, 72, 62, 70, 64, 66, 62, 56, 36)]
    [InlineData("a change does not become usual", "watch call call call call call call", 90, 96, 92, 88, 94, 90, 56, 52, 56, 52, 56, 52, 56)]
    [InlineData("five readings tell what is usual, four do not", "info call", 72, 62, 70, 66, 56, 56)]
    [InlineData("one reading in range is near enough to watch no further", "info", 64, 56)]
    [InlineData("one out of range is not", "watch call", 56, 56)]
    public void A_dog_whose_pulse_lies_about_the_line(string why, string levels, params int[] pulses)
    {
        string note = Trends.Drawn.Dog + Trends.Drawn.Every(7, [.. pulses.Select(pulse => $"hr {pulse} rest")]);
        Assert.True(levels.Split(' ').SequenceEqual(
            MarkedFindings.Read(note).Findings.Where(finding => finding.Rule == "hr-range").TakeLast(levels.Split(' ').Length).Select(finding => finding.Level.ToString().ToLowerInvariant())), why);
    }

    [Fact]
    public void A_range_of_the_vet_goes_before_what_the_pet_often_has() => Assert.Equal("call", Trends.Drawn.By(
        "hr-range", Trends.Drawn.Dog + "usual hr 62-100 per vet 2026-01-10\n" + Trends.Drawn.Every(7, [.. new[] { 66, 58, 72, 62, 70, 64, 66, 62, 56, 56 }.Select(pulse => $"hr {pulse} rest")]))[^1][11..]);
}
