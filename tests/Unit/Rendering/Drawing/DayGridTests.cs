using System.Text;
using AngleSharp.Html.Dom;
using CsCheck;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Rendering.Drawing;

/// <summary>Home care day by day: a column a medicine, what was eaten, drunk and passed, and glucose curves.</summary>
public class DayGridTests
{
    private const string Start = "pet A\nspecies dog\nmed x 5mg every 12h from 2026-09-01\n2026-09-20 check\n  weight 10kg\n";

    [Fact]
    public void A_day_is_a_row_and_days_without_a_note_are_one()
    {
        IHtmlDocument page = Pages.Document(Start + """
            2026-09-21 log
              gave x 5mg
              missed x
              ate 3/4
              ate 1/2
              water 300ml
              water 250ml
              pee 3x
              stool soft 2x
              vomit 1x
              cough 2x
            2026-09-25 log
              gave x 5mg
              glucose 5.5mmol/L
              glucose 9.1mmol/L
            """);
        Assert.Equal(
            [
                "21 Sep | 1 of 2 given, 1 missed | 2 meals: 3/4, 1/2; water 550 mL; urine 3\u00D7; stool see problem 2; vomit 1\u00D7; cough 2\u00D7 | 2, 3",
                "25 Sep | 1 of 2 given, 1 not logged | glucose 5.5 to 9.1 mmol/L | ",
            ],
            page.Rows("days"));
        Assert.Contains("No food, water, dose, urine or stool logged 22 to 24 Sep.", page.Section("days"), StringComparison.Ordinal);
        Assert.Equal("X", page.QuerySelectorAll("section.days thead th")[1].TextContent);
    }

    [Fact]
    public void Every_medicine_has_a_column_with_what_became_of_each_dose()
    {
        string[] rows = Pages.Document("""
            pet A
            species dog
            med x 5mg every 24h from 2026-09-01
            med y 5mg every 8h from 2026-09-01 until 2026-09-23
            med z 2mg every 24h from 2026-09-01
            2026-09-20 check
              weight 10kg
            2026-09-21 log
              06:50 gave x 5mg
              08:10 gave x 5mg
              07:00 gave y 5mg
              15:00 gave y 5mg
              23:00 gave y 5mg
            2026-09-22 log
              07:00 withheld x 5mg as the clinic said
              07:00 gave y 5mg
              15:00 missed y 5mg spat out
            2026-09-23 log
              07:00 gave y 5mg
              07:30 gave y 5mg
            2026-09-24 log
              07:00 gave x 2.5mg
              07:05 gave x 2.5mg
            """).Rows("days");
        Assert.Equal(
            [
                "21 Sep | all 3 given | given twice: 06:50, 08:10 | 2",
                "22 Sep | 1 of 3 given, 1 missed, 1 not logged | withheld | 1, 2",
                "23 Sep | given twice: 07:00, 07:30, 1 not logged | not logged | 1",
                "24 Sep | not planned | given twice | ",
            ],
            rows);
    }

    [Fact]
    public void A_medicine_without_any_line_is_named_once_and_days_that_read_the_same_share_a_row()
    {
        IHtmlDocument page = Pages.Document("pet A\nspecies dog\nmed x 5mg every 24h from 2026-09-01\nmed z 2mg every 24h from 2026-09-01\n2026-09-20 check\n  weight 10kg\n"
            + string.Concat(Enumerable.Range(21, 9).Select(day => $"2026-09-{day} log\n  07:{day} gave x 5mg\n  ate all\n")));
        Assert.Equal(["21 to 29 Sep | given | 1 meal: all"], page.Rows("days"));
        Assert.Contains("Z: planned since 1 Sep, no dose logged; it may have been given.", page.Section("days"), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_not_logged_is_never_called_missed_and_today_is_not_over()
    {
        IHtmlDocument page = Pages.Document(Start + "2026-10-04 log\n  gave x 5mg\n2026-10-05 log\n  gave x 5mg\n  pee none\n");
        Assert.Equal(["4 Oct | 1 of 2 given, 1 not logged | ", "5 Oct | 1 of 2 given | 1"], page.Rows("days"));
        Assert.Contains("it may have been given", page.Section("days"), StringComparison.Ordinal);
    }

    [Fact]
    public void One_day_makes_no_grid_and_many_are_cut()
    {
        Assert.Empty(Pages.Document(Start + "2026-10-04 log\n  gave x 5mg\n").QuerySelectorAll("section.days"));
        string note = "pet A\n2026-06-01 check\n  alert bright\n" + string.Concat(Enumerable.Range(0, 60).Select(day => $"{new DateOnly(2026, 8, 1).AddDays(day):yyyy-MM-dd} log\n  vomit {1 + (day % 2)}x\n"));
        IHtmlDocument page = Pages.Document(note);
        Assert.Equal(31, page.Rows("days").Length);
        Assert.Contains("29 more are in the notes.", page.Section("days"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_glucose_curve_tells_each_value_with_its_time()
    {
        IHtmlDocument page = Pages.Document("""
            pet A
            species cat
            med insulin 2 unit every 12h from 2026-09-01
            2026-09-20 log
              07:00 glucose 16mmol/L before-food
              07:10 gave insulin 2 unit
              09:00 glucose 12mmol/L
              13:00 glucose 6.5mmol/L
              17:00 glucose 9mmol/L
            2026-09-21 log
              07:00 glucose 15mmol/L
              19:00 glucose 14mmol/L
            """);
        Assert.Contains("20 Sep | 2 units at 07:10 | 07:00 16 mmol/L before food; 09:00 12 mmol/L; 13:00 6.5 mmol/L; 17:00 9 mmol/L", page.Rows("days"));
        Assert.DoesNotContain(page.Rows("days"), row => row.StartsWith("21 Sep", StringComparison.Ordinal) && row.Contains("07:00", StringComparison.Ordinal));
    }

    /// <summary>Doses of random days, counted a second time from the lines themselves.</summary>
    [Fact]
    public void The_cells_count_what_the_lines_say() => Gen.Select(Gen.Int[0, 3], Gen.Int[0, 2]).Array[2, 8].ForAll(days =>
    {
        var note = new StringBuilder(Start);
        for (int day = 0; day < days.Length; day++)
        {
            note.Append($"2026-09-{21 + day} log\n  pee {day + 1}x\n");
            note.Append(string.Concat(Enumerable.Range(0, days[day].Item1).Select(dose => $"  {7 + (8 * dose):00}:00 gave x 5mg\n"))).Append(string.Concat(Enumerable.Repeat("  missed x\n", days[day].Item2)));
        }

        string[] cells = [.. Pages.Document(note.ToString()).Rows("days").Select(row => row.Split(" | ")[1])];
        for (int day = 0; day < days.Length && days.Any(one => one.Item1 + one.Item2 > 0); day++)
        {
            (int given, int missed) = days[day];
            int left = Math.Max(0, 2 - given - missed);
            string expected = given switch { 0 => "", 1 => "1 of 2 given", 2 => "both given", _ => "given 3 times: 07:00, 15:00, 23:00" }
                + (missed == 0 ? "" : $", {missed} missed") + (left == 0 ? "" : left == 2 ? "not logged" : $", {left} not logged");
            Assert.Equal(expected.TrimStart(',', ' '), cells[day]);
        }
    });
}
