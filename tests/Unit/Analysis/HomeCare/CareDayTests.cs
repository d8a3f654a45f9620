using HealthNotes.Record.HomeCare;

namespace HealthNotes.Tests.Analysis.HomeCare;

/// <summary>The days of home care, added up.</summary>
public class CareDayTests
{
    [Fact]
    public void Each_day_is_added_up_from_its_lines_in_any_entry_and_unit()
    {
        var days = CareDay.Of(MarkedFindings.Read("""
            pet Tansy
            species cat
            born 2016-05-01
            known diabetes
            2026-11-02 log
              glucose 180mg/dL
            2026-11-01 log
              weight 4kg
              08:00 gave insulin 2 units
              ate 3/4
              water 100ml
              vomit hair-ball
              vomit food 2x
              glucose 8mmol/L
            2026-11-01 18:00 log
              missed insulin
              ate half
              water 0.1l
              pee 3x
              stool firm
            """).Record);
        Assert.Equal(
            [
                new CareDay(new DateOnly(2026, 11, 1), 1, 1, 1.25m, 200, 50, 3, 1, 2, 0, 0, 0, 8, 8),
                new CareDay(new DateOnly(2026, 11, 2), 0, 0, null, null, null, 0, 0, 0, 0, 0, 0, 180 / 18.016m, 180 / 18.016m),
            ],
            days.Select(day => day with { GlucoseLow = day.Day.Day == 2 ? 180 / 18.016m : day.GlucoseLow, GlucoseHigh = day.Day.Day == 2 ? 180 / 18.016m : day.GlucoseHigh }));
        // 1 mmol/L = 18.016 mg/dL: molar mass of glucose, 180.16 g/mol
        Assert.Equal(9.99m, Math.Round(days[1].GlucoseLow!.Value, 2));
    }

    [Fact]
    public void Without_home_care_there_are_no_days() => Assert.Empty(CareDay.Of(MarkedFindings.Read("pet X\nspecies dog\n2026-11-01 check\n  gums pink\n").Record));
}
