using static HealthNotes.Tests.Analysis.MarkedFindings;

namespace HealthNotes.Tests.Analysis;

/// <summary>What the vet wrote for this pet takes precedence, and never hides what cannot wait.</summary>
public class OwnLimitsTests
{
    [Fact]
    public void A_line_the_clinic_drew_is_a_reason_to_call()
    {
        var analysis = Check("""
            pet Marlow
            species dog
            born 2017-03
            call-if rr asleep >28 per vet 2026-01-20
            2026-11-01 check
              rr 29 asleep
                 ^^ call-if call
              rr 28 asleep
                 ^^ rr-range info
            """);
        Assert.Equal([3, 5], analysis.Findings[0].Evidence.ToArray());
        Assert.Contains("above the clinic's limit of 28 a minute (set 20 Jan", analysis.Findings[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_urgent_line_is_stronger_than_the_clinics() => Check("""
        pet Marlow
        species dog
        born 2017-03
        call-if rr asleep >32
        2026-11-01 check
          rr 44 asleep
             ^^ rr-range urgent
        """);

    [Fact]
    public void Inside_the_usual_range_the_population_is_silent() => Check("""
        pet Marlow
        species dog
        born 2017-03
        usual hr 44-70 rest per vet
        2026-11-01 check
          hr 48
        """);

    [Fact]
    public void Outside_the_usual_range_is_worth_watching() => Check("""
        pet Marlow
        species dog
        born 2017-03
        usual rr 16-20 asleep per vet
        2026-11-01 check
          rr 22 asleep
             ^^ usual-range watch
          rr 22 rest
        """);

    [Fact]
    public void Usual_in_other_units_is_compared_in_the_same() => Check("""
        pet Marlow
        species dog
        born 2017-03
        usual temp 99-101F
        call-if weight <25kg
        2026-11-01 check
          temp 38.2C
          temp 38.5C
               ^^^^^ usual-range watch
          weight 54lb
                 ^^^^ call-if call
        """);

    [Fact]
    public void What_a_later_visit_draws_takes_the_place_of_what_was_drawn_before() => Check("""
        pet Marlow
        species dog
        born 2017-03
        call-if rr asleep >20
        2026-10-01 log
          rr 22 asleep
             ^^ call-if call
        2026-10-10 visit
          call-if rr asleep >26
          call-if rr asleep >24
          call-if rr asleep <8
        2026-11-01 log
          rr 23 asleep
        2026-11-02 log
          rr 25 asleep
             ^^ call-if call
        2026-11-03 log
          rr 7 asleep
             ^ call-if call
        """);

    [Fact]
    public void A_limit_outside_opening_and_visits_is_refused_and_does_not_hold() => Check("""
        pet Marlow
        species dog
        born 2017-03
        2026-11-10 check
          usual hr 44-70 rest
          ^^^^^ misplaced error
          hr 48
             ^^ hr-range watch
        """);

    [Fact]
    public void A_usual_range_holds_from_the_visit_it_stands_in() => Check("""
        pet Marlow
        species dog
        born 2017-03
        2026-11-01 check
          hr 48
             ^^ hr-range watch
        2026-11-10 visit
          usual hr 44-70 rest per vet
        2026-11-20 check
          hr 48
        """);
}
