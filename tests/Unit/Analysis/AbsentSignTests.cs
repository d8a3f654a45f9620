using HealthNotes.Analysis.Findings;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Tests.Analysis;

/// <summary>Nothing that is absent or over is found; a good sign that is missing is.</summary>
public class AbsentSignTests
{
    [Theory]
    [InlineData("belly not bloated")]
    [InlineData("eye no discharge")]
    [InlineData("vomit none")]
    [InlineData("seizure none")]
    [InlineData("no cough")]
    [InlineData("lump gone")]
    [InlineData("no lump on L-flank")]
    [InlineData("cough 3x, no blood")]
    [InlineData("joint L-knee swelling gone")]
    [InlineData("coat no fleas")]
    [InlineData("gums not pale")]
    [InlineData("ear L no wax")]
    [InlineData("rr 20 no effort")]
    public void What_is_not_there_is_not_found(string line) =>
        Assert.DoesNotContain(MarkedFindings.Read($"pet Marlow\nspecies dog\nborn 2020-05-01\nadult-weight 15kg\n2026-11-01 check\n  {line}\n").Findings, finding => finding.Level is > FindingLevel.Info and < FindingLevel.Error);

    [Fact]
    public void A_good_sign_that_is_missing_is_worth_watching()
    {
        MarkedFindings.CheckDog("""
              gums not pink
                   ^^^^^^^^ gum-colour watch
              nose not dry
            """);
        Assert.Equal(FindingLevel.Watch, MarkedFindings.LevelForDog("  coat not glossy\n"));
        Assert.Equal("Gums: not pink. Worth watching.", MarkedFindings.Read("pet Marlow\nspecies dog\nborn 2020-05-01\n2026-11-01 check\n  gums not pink\n").Findings[0].Message);
    }

    [Fact]
    public void What_did_not_happen_counts_as_none()
    {
        CareDay day = Assert.Single(CareDay.Of(MarkedFindings.Read("pet Marlow\nspecies dog\n2026-11-01 log\n  vomit none\n  no cough\n  seizure none\n  sneeze none\n  no stool\n").Record));
        Assert.Equal((0, 0, 0, 0, 0), (day.Vomit, day.Cough, day.Seizures, day.Sneeze, day.Stools));
    }

    [Theory]
    [InlineData("ate refused")]
    [InlineData("stopped eating")]
    [InlineData("food not touched")]
    public void A_meal_that_was_not_touched_is_refused(string line) =>
        Assert.Contains(
            MarkedFindings.Read($"pet Tansy\nspecies cat\nborn 2020-05-01\n2026-11-01 log\n  08:00 ate all\n2026-11-02 log\n  08:00 {line}\n  20:00 {line}\n").Findings,
            finding => finding.Rule == "not-eating");
}
