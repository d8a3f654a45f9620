using static HealthNotes.Tests.Analysis.MarkedFindings;

namespace HealthNotes.Tests.Analysis;

/// <summary>What the clinic has seen is not said again as if it were new.</summary>
public class SeenAtVisitTests
{
    [Fact]
    public void A_sign_noted_at_a_visit_is_something_to_know_there_and_later() => Check("""
        pet Marlow
        species dog
        born 2020-05-01
        2026-09-01 check
          tooth 208 tartar
                    ^^^^^^ sign watch
        2026-09-10 visit
          tooth 208 tartar
                    ^^^^^^ sign info
        2026-11-20 check
          tooth 208 tartar
                    ^^^^^^ sign info
          tooth 108 tartar
                    ^^^^^^ sign watch
        """);

    [Fact]
    public void A_reason_to_phone_stays_one_and_says_that_it_was_seen()
    {
        var analysis = Check("""
            pet Marlow
            species dog
            born 2020-05-01
            2026-09-10 visit
              node L-jaw firm
                         ^^^^ sign info
            2026-11-20 check
              node L-jaw firm
                         ^^^^ sign call
            """);
        Assert.Contains("Also noted at the visit of 2026-09-10.", analysis.Findings[^1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_wait_cannot_wait_at_any_time() => Check("""
        pet Marlow
        species dog
        born 2020-05-01
        2026-09-10 visit
          gums white
               ^^^^^ gum-colour urgent
        2026-11-20 check
          gums white
               ^^^^^ gum-colour urgent
        """);

    [Fact]
    public void A_new_word_beside_one_that_was_seen_is_said() => Check("""
        pet Marlow
        species dog
        born 2020-05-01
        2026-09-10 visit
          wound RH-knee bruised
                        ^^^^^^^ sign info
        2026-11-20 check
          wound RH-knee bruised swollen
                                ^^^^^^^ sign watch
        """);
}
