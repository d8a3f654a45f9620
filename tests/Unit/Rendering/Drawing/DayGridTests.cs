using AngleSharp.Html.Dom;

namespace HealthNotes.Tests.Rendering.Drawing;

/// <summary>Home care day by day.</summary>
public class DayGridTests
{
    private const string Start = "pet A\nspecies dog\nmed x 5mg every 12h from 2026-09-01\n2026-09-20 check\n  weight 10kg\n";

    [Fact]
    public void A_day_is_a_row_and_days_without_a_note_are_one()
    {
        string[] rows = Pages.Document(Start + """
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
            """).Rows("days");
        Assert.Equal(
            [
                "2026-09-21 | 1 given, 1 missed | 1.25 eaten | 550 mL (55 mL/kg) | 3× | 2× soft | 1× | cough 2× | ",
                "2026-09-22 to 2026-09-24: 3 days without a note |  |  |  |  |  |  |  | ",
                "2026-09-25 | 1 given, 1 not noted |  |  |  |  |  |  | 5.5 to 9.1 mmol/L",
            ],
            rows);
    }

    [Fact]
    public void None_is_not_once_and_every_medicine_is_counted_for_itself()
    {
        string[] rows = Pages.Document("pet A\nspecies dog\nmed x 5mg every 12h from 2026-09-01\nmed z 5mg every 24h from 2026-09-01 until 2026-09-22\n2026-09-20 check\n  weight 10kg\n2026-09-21 log\n  gave x 5mg\n  gave y 1 tablet\n  pee none\n  stool none\n2026-09-22 log\n  gave x 5mg\n  gave x 5mg\n  stool 2x\n").Rows("days");
        Assert.Equal(["2026-09-21 | 2 given, 2 not noted | none | none", "2026-09-22 | 2 given, 1 not noted |  | 2×"], rows);
    }

    [Fact]
    public void What_is_not_noted_is_never_called_missed_and_today_is_not_over()
    {
        IHtmlDocument page = Pages.Document(Start + "2026-10-04 log\n  gave x 5mg\n2026-10-05 log\n  gave x 5mg\n");
        Assert.Equal(["2026-10-04 | 1 given, 1 not noted", "2026-10-05 | 1 given"], page.Rows("days"));
        Assert.Contains("it does not say that it was missed", page.Section("days"), StringComparison.Ordinal);
    }

    [Fact]
    public void One_day_makes_no_grid_and_many_are_cut()
    {
        Assert.Empty(Pages.Document(Start + "2026-10-04 log\n  gave x 5mg\n").QuerySelectorAll("section.days"));
        string note = "pet A\n2026-06-01 check\n  alert bright\n" + string.Concat(Enumerable.Range(0, 60).Select(day => $"{new DateOnly(2026, 8, 1).AddDays(day):yyyy-MM-dd} log\n  vomit 1x\n"));
        IHtmlDocument page = Pages.Document(note);
        Assert.Equal(31, page.Rows("days").Length);
        Assert.Contains("29 more are in the notes.", page.Section("days"), StringComparison.Ordinal);
    }
}
