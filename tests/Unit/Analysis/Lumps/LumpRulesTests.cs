using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using static HealthNotes.Tests.Analysis.MarkedFindings;

namespace HealthNotes.Tests.Analysis.Lumps;

public class LumpRulesTests
{
    private const string Dog = "pet Marlow\nspecies dog\nborn 2017-03\n";

    [Fact]
    public void One_larger_size_is_to_watch_and_a_second_a_reason_to_call()
    {
        Check(Dog + """
            2026-10-20 log
              lump L-flank 7mm soft
                   ^^^^^^^ lump watch
            2026-11-01 log
              lump L-flank 10mm soft
                   ^^^^^^^ lump-growth watch
            """);
        NoteAnalysis analysis = Check(Dog + """
            2026-10-20 log
              lump L-flank 7mm soft
                   ^^^^^^^ lump watch
            2026-11-01 log
              lump L-flank 10mm soft
                   ^^^^^^^ lump info
            2026-11-10 log
              lump L-flank 11mm soft
                   ^^^^^^^ lump-growth call
            """);
        Assert.StartsWith("Lump L-flank: 11 mm on 2026-11-10, against 7 mm on 2026-10-20: 57 % more, about 3.9 times the volume. Already 10 mm on 2026-11-01.", analysis.Findings[^1].Message, StringComparison.Ordinal);
        Assert.Equal([4, 6, 8], analysis.Findings[^1].Evidence.ToArray());
    }

    /// <summary>cRECIST: 20 %; 3 mm besides, a rule of thumb; and two sizes of one hand, off by 10 % each, differ by 37 % in one of a hundred.</summary>
    [Theory]
    [InlineData("15mm", "20.6mm", FindingLevel.Watch)]
    [InlineData("15mm", "20.5mm", FindingLevel.Info)]
    [InlineData("20mm", "27.3mm", FindingLevel.Info)]
    [InlineData("20mm", "27.4mm", FindingLevel.Watch)]
    [InlineData("5mm", "7mm", FindingLevel.Info)] // 40 %, but 2 mm
    [InlineData("like pea", "12mm", FindingLevel.Info)] // 7 to 10 mm
    [InlineData("like pea", "13mm", FindingLevel.Watch)]
    [InlineData("like pea", "like grape", FindingLevel.Watch)]
    [InlineData("like pea", "like marble", FindingLevel.Watch)]
    [InlineData("like grape", "like hazelnut", FindingLevel.Info)]
    [InlineData("<12mm", "15mm", FindingLevel.Watch)]
    [InlineData("<12mm", "14mm", FindingLevel.Info)]
    [InlineData(">5mm", "15mm", FindingLevel.Info)]
    [InlineData("5mm", "<30mm", FindingLevel.Info)]
    [InlineData("5mm", ">8mm", FindingLevel.Watch)]
    [InlineData("15mm", "~18mm", FindingLevel.Info)] // about 18 may be 16
    [InlineData("20mm", "10mm", FindingLevel.Info)]
    [InlineData("0.6in", "0.82in", FindingLevel.Info)]
    [InlineData("0.6in", "0.83in", FindingLevel.Watch)]
    [InlineData("1.5cm", "21mm", FindingLevel.Watch)]
    [InlineData("15x10mm", "15x14mm", FindingLevel.Info)] // the longest counts
    public void Edges_of_growth(string before, string after, FindingLevel level) =>
        Assert.Equal(level, LevelOfLastLine(Dog + $"2026-11-01 log\n  lump L-flank {before}\n2026-11-20 log\n  lump L-flank {after}\n"));

    [Fact]
    public void Growth_is_seen_wherever_its_entries_stand() => Check(Dog + """
        2026-11-10 log
          lump L-flank 11mm soft
               ^^^^^^^ lump-growth call
        2026-10-20 log
          lump L-flank 7mm soft
               ^^^^^^^ lump watch
        2026-11-01 log
          lump L-flank 10mm soft
               ^^^^^^^ lump info
        """);

    [Fact]
    public void Two_sizes_of_one_day_confirm_nothing() => Check(Dog + """
        2026-10-20 log
          lump L-flank 7mm soft
               ^^^^^^^ lump watch
        2026-11-01 log
          08:00 lump L-flank 12mm soft
                     ^^^^^^^ lump info
          18:00 lump L-flank 11mm soft
                     ^^^^^^^ lump-growth watch
        """);

    [Fact]
    public void Another_tag_is_another_lump() => Check(Dog + """
        2026-11-01 log
          lump L-flank 6mm soft
               ^^^^^^^ lump watch
        2026-11-10 log
          lump L-flank @low 16mm soft
               ^^^^^^^ lump watch
        """);

    [Fact]
    public void What_the_vet_measured_is_where_growth_is_counted_from()
    {
        const string Seen = """
            2026-06-01 log
              lump L-flank 7mm soft
                   ^^^^^^^ lump watch
            2026-09-01 log
              lump L-flank 12mm soft
                   ^^^^^^^ lump info
            2026-09-10 visit by the vet
              lump L-flank 12mm soft
                   ^^^^^^^ lump info
            """;
        NoteAnalysis analysis = Check(Dog + Seen + """

            2026-11-10 log
              lump L-flank 13mm soft
                   ^^^^^^^ lump-growth info
            """);
        Assert.Contains("Noted at the visit of 2026-09-10", analysis.Findings[^1].Message, StringComparison.Ordinal);
        Check(Dog + Seen + """

            2026-11-01 log
              lump L-flank 18mm soft
                   ^^^^^^^ lump info
            2026-11-10 log
              lump L-flank 19mm soft
                   ^^^^^^^ lump-growth call
            """);
    }

    [Fact]
    public void A_dated_fact_is_a_look_of_the_vet_too() => Check(Dog + """
        2026-06-01 log
          lump L-flank 7mm soft
               ^^^^^^^ lump watch
        2026-09-01 log
          lump L-flank 12mm soft
               ^^^^^^^ lump info
        2026-09-10 visit by the vet
          known fatty lump on the left flank
        2026-11-10 log
          lump L-flank 13mm soft
               ^^^^^^^ lump-growth info
        """);

    [Fact]
    public void A_shrinking_lump_and_one_that_is_gone_are_no_alarm() => Check(Dog + """
        2026-10-20 log
          lump L-flank 20mm soft
               ^^^^^^^ lump watch
        2026-11-01 log
          lump L-flank 15mm shrinking
               ^^^^^^^ lump info
        2026-11-10 log
          lump L-flank gone
               ^^^^^^^ lump info
        """);

    /// <summary>Ettinger, WSAVA 2017: 1 cm or more, one month or more. A real pea is under 1 cm, so things count from 8 mm.</summary>
    [Theory]
    [InlineData("10mm", 30, FindingLevel.Call)]
    [InlineData("9.9mm", 30, FindingLevel.Info)]
    [InlineData("10mm", 29, FindingLevel.Info)]
    [InlineData("1cm", 45, FindingLevel.Call)]
    [InlineData("0.4in", 45, FindingLevel.Call)]
    [InlineData("0.39in", 45, FindingLevel.Info)]
    [InlineData("like pea", 45, FindingLevel.Call)]
    [InlineData("like lentil", 45, FindingLevel.Info)]
    [InlineData("like pencil-eraser", 45, FindingLevel.Info)]
    [InlineData("~10mm", 45, FindingLevel.Call)]
    [InlineData(">10mm", 45, FindingLevel.Call)]
    [InlineData("<10mm", 45, FindingLevel.Info)]
    [InlineData("<12mm", 45, FindingLevel.Info)]
    [InlineData("", 45, FindingLevel.Info)]
    public void Edges_of_the_sampling_rule(string size, int days, FindingLevel level)
    {
        DateOnly first = Today.AddDays(-days);
        Assert.Equal(level, LevelOfLastLine(Dog + $"{first:yyyy-MM-dd} log\n  lump L-flank {size} soft\n{Today:yyyy-MM-dd} log\n  lump L-flank {size} soft\n"));
    }

    [Fact]
    public void The_sampling_rule_speaks_once_at_the_last_line() => Check(Dog + """
        2026-08-01 log
          lump L-flank 12mm soft
               ^^^^^^^ lump watch
        2026-09-15 log
          lump L-flank 12mm soft
               ^^^^^^^ lump info
        2026-11-10 log
          lump L-flank soft
               ^^^^^^^ lump-sample call
        """);

    [Theory]
    [InlineData("", "2026-09-15 log\n  lump L-flank 12mm sampled\n", FindingLevel.Info)]
    [InlineData("", "2026-09-15 visit by the vet\n  lump L-flank 12mm\n", FindingLevel.Info)]
    [InlineData("", "2026-08-05 visit by the vet\n  lump L-flank\n", FindingLevel.Info)] // as large already at the visit
    [InlineData("", "2026-09-15 log\n  lump L-flank 12mm vet-knows\n", FindingLevel.Info)]
    [InlineData("", "2026-09-15 visit by the vet\n  weight 20kg\n", FindingLevel.Call)] // the visit says nothing of it
    [InlineData("", "2026-07-05 visit by the vet\n  lump L-flank 6mm\n", FindingLevel.Call)] // far smaller then
    [InlineData("known fatty lump L-flank, needled 2024-09\n", "", FindingLevel.Info)]
    [InlineData("known lump on the left flank\n", "", FindingLevel.Info)]
    [InlineData("known lump R-flank\n", "", FindingLevel.Call)]
    [InlineData("known lump L-flank @low\n", "", FindingLevel.Call)]
    [InlineData("known sore left flank\n", "", FindingLevel.Call)]
    public void What_a_vet_looked_at_is_something_to_know(string fact, string between, FindingLevel level) =>
        Assert.Equal(level, LevelOfLastLine(Dog + fact + "2026-07-01 log\n  lump L-flank 12mm soft\n".Replace("12mm", between.Contains("6mm", StringComparison.Ordinal) ? "6mm" : "12mm", StringComparison.Ordinal)
            + between + "2026-11-10 log\n  lump L-flank 12mm soft\n"));

    [Fact]
    public void A_lump_that_a_vet_knows_of_is_not_to_watch_when_it_is_first_noted() => Check(Dog + """
        known lump on the left elbow
        2026-10-01 log
          lump L-flank 6mm sampled
               ^^^^^^^ lump info
          lump L-elbow 6mm soft
               ^^^^^^^ lump info
          lump R-paw 6mm vet-knows
               ^^^^^ lump info
          lump R-ribs 6mm soft
               ^^^^^^ lump watch
        2026-10-01 visit
          lump L-thigh 6mm soft
               ^^^^^^^ lump info
        """);

    [Fact]
    public void A_new_word_that_is_a_reason_to_call_says_since_when()
    {
        NoteAnalysis analysis = Check(Dog + """
            2026-11-01 log
              lump L-flank 6mm soft moves
                   ^^^^^^^ lump watch
            2026-11-10 log
              lump L-flank 6mm firm hard
                                    ^^^^ lump-change call
            2026-11-12 log
              lump L-flank 6mm hard
                               ^^^^ sign call
            2026-11-14 log
              lump L-flank 6mm hard bleeding
                                    ^^^^^^^^ lump-change urgent
            """);
        Assert.Contains("new since 2026-11-01. Also written: firm.", analysis.Findings[1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_that_are_not_new_or_known_are_no_change() => Check(Dog + """
        known lump L-flank hard since 2025
        2026-11-01 log
          lump L-flank 6mm soft
               ^^^^^^^ lump info
          lump R-elbow 6mm soft
               ^^^^^^^ lump watch
        2026-11-10 log
          lump L-flank 6mm hard
               ^^^^^^^ lump info
          lump R-elbow 6mm hot same
                           ^^^ sign call
        2026-11-11 log
          lump R-elbow 6mm soft
               ^^^^^^^ lump info
        """);

    [Fact]
    public void What_is_known_of_one_lump_says_nothing_of_another() => Check(Dog + """
        known lump L-flank hard since 2025
        2026-11-01 log
          lump R-elbow 6mm soft
               ^^^^^^^ lump watch
        2026-11-10 log
          lump R-elbow 6mm hard
                           ^^^^ lump-change call
        """);

    [Fact]
    public void A_lump_that_is_back_is_to_watch() => Check(Dog + """
        2026-10-01 log
          lump L-flank 6mm soft
               ^^^^^^^ lump watch
        2026-10-10 visit
          lump L-flank removed
               ^^^^^^^ lump info
        2026-11-10 log
          lump L-flank 4mm soft
               ^^^^^^^ lump-change watch
        2026-11-12 log
          lump L-flank 4mm soft
               ^^^^^^^ lump info
        """);

    [Fact]
    public void A_mammary_lump_is_a_reason_to_call_until_a_vet_has_felt_it() => Check(Dog + """
        2026-10-01 log
          lump R-gland3 4mm soft
               ^^^^^^^^ mammary-lump call
        2026-10-10 visit
          lump R-gland3 4mm soft
               ^^^^^^^^ mammary-lump info
        2026-11-10 log
          lump R-gland3 5mm soft
               ^^^^^^^^ mammary-lump info
        2026-11-12 log
          lump R-gland3 8mm soft
               ^^^^^^^^ mammary-lump info
        2026-11-14 log
          lump R-gland3 9mm soft
               ^^^^^^^^ lump-growth call
        """);

    [Fact]
    public void A_mammary_lump_taken_away_is_no_alarm() => Check(Dog + """
        2026-10-01 log
          lump R-gland3 4mm soft
               ^^^^^^^^ mammary-lump call
        2026-10-10 visit
          lump R-gland3 removed
        """);

    [Fact]
    public void A_mammary_lump_in_an_entry_after_today_is_not_lost() => Check(Dog + """
        2026-12-01 log
        ^^^^^^^^^^ entry-date watch
          lump R-gland3 4mm soft
               ^^^^^^^^ mammary-lump call
        """);

    [Fact]
    public void Lumps_on_both_sides_are_something_to_know() => Check(Dog + """
        2026-10-01 log
          lump L-flank 6mm soft
               ^^^^^^^ lump watch
          lump R-elbow 6mm soft
               ^^^^^^^ lump watch
        2026-11-10 log
          lump R-flank 5mm soft
               ^^^^^^^ lump watch
        2026-11-20 log
          lump R-flank 5mm soft
               ^^^^^^^ lump-sides info
        """);

    [Fact]
    public void A_word_that_was_seen_at_a_visit_is_not_new() => Check(Dog + """
        2026-11-01 visit
          lump L-flank 6mm hard
               ^^^^^^^ lump info
        2026-11-10 log
          lump L-flank 6mm
               ^^^^^^^ lump info
        2026-11-12 log
          lump L-flank 6mm hard
                           ^^^^ sign call
        2026-11-14 visit
          lump L-flank 6mm hard red
               ^^^^^^^ lump info
        """);

    [Theory]
    [InlineData("2026-09-01", "L-flank", "")] // 80 days apart
    [InlineData("2026-11-01", "L-elbow", "")]
    [InlineData("2026-11-01", "R-flank @low", "")]
    [InlineData("2026-11-01", "L-flank", "2026-11-05 log\n  lump L-flank gone\n")]
    [InlineData("2026-11-01", "L-gland2", "")]
    public void Other_pairs_are_not_named(string day, string site, string then) =>
        Assert.DoesNotContain(Read(Dog + $"{day} log\n  lump {site} 6mm soft\n{then}2026-11-19 log\n  lump R-flank 5mm soft\n2026-11-20 log\n  lump R-flank 5mm soft\n").Findings, finding => finding.Rule == "lump-sides");

    [Fact]
    public void The_same_finding_comes_of_either_unit()
    {
        static IEnumerable<string> Levels(string first, string then) =>
            Read(Dog + $"2026-06-01 log\n  lump L-flank {first}\n2026-11-20 log\n  lump L-flank {then}\n").Findings.Select(f => $"{f.Line} {f.Rule} {f.Level}");

        Assert.Equal(Levels("12.7mm", "25.4mm"), Levels("0.5in", "1in"));
        Assert.Contains("1 in on 2026-11-20", Read("units us\n" + Dog + "2026-11-01 log\n  lump L-flank 0.5in\n2026-11-20 log\n  lump L-flank 1in\n").Findings[^1].Message, StringComparison.Ordinal);
    }
}
