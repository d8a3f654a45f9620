using System.Globalization;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using CsCheck;
using HealthNotes.Rendering.Drawing.Charts;

namespace HealthNotes.Tests.Rendering.Drawing;

/// <summary>The charts: what is drawn lies where its number says, and nothing is drawn that was not measured.</summary>
public class ChartTests
{
    private const string Dog = "pet A\nspecies dog\nborn 2017\nadult-weight 27kg\n";

    [Fact]
    public void Each_point_lies_where_the_axis_says()
    {
        IElement chart = Chart(Dog + Days("temp {0}C rectal", 38.2m, 38.9m, 37.8m, 39.1m), "Temperature, rectal");
        Func<double, double> value = ValueAt(chart);
        double[] drawn = [.. chart.QuerySelectorAll("circle.point").Select(point => Math.Round(value(Number(point, "cy")), 1))];
        Assert.Equal([38.2, 38.9, 37.8, 39.1], drawn);
    }

    /// <summary>The band of a grown dog's rectal temperature: Konietschke et al., Tierarztl Prax 2014;42:13-19 (37.2 to 39.2 °C) as the table takes it.</summary>
    [Fact]
    public void The_normal_band_has_the_edges_of_the_table()
    {
        IElement chart = Chart(Dog + Days("temp {0}C rectal", 38.2m, 38.9m, 38.5m), "Temperature, rectal");
        IElement band = Assert.Single(chart.QuerySelectorAll("rect.normal"));
        Func<double, double> value = ValueAt(chart);
        double top = Number(band, "y");
        Assert.Equal(39.2, value(top), 0.05);
        Assert.Equal(37.2, value(top + Number(band, "height")), 0.05);
    }

    [Fact]
    public void The_band_steps_where_the_life_stage_changes()
    {
        string note = "pet A\nspecies dog\nborn 2025-10-01\n" + string.Concat(Enumerable.Range(0, 12).Select(month => $"{new DateOnly(2025, 11, 1).AddMonths(month):yyyy-MM-dd} check\n  hr 25/15s\n"));
        Assert.Equal(2, Chart(note, "Pulse at rest").QuerySelectorAll("rect.normal").Length);
    }

    [Fact]
    public void A_count_shows_what_one_more_or_less_makes()
    {
        IElement chart = Chart(Dog + Days("hr {0}/15s", 18m, 20m), "Pulse at rest");
        Func<double, double> value = ValueAt(chart);
        IElement[] bars = [.. chart.QuerySelectorAll("line.doubt")];
        Assert.Equal(68, value(Number(bars[0], "y1")), 0.6);
        Assert.Equal(76, value(Number(bars[0], "y2")), 0.6);
    }

    [Fact]
    public void A_bound_is_an_arrow_and_joined_to_nothing()
    {
        IElement chart = Chart(Dog + "2026-09-01 check\n  temp 38.5C rectal\n2026-09-20 check\n  temp <38C rectal\n2026-10-01 check\n  temp >39C rectal\n  hr 18/15s\n", "Temperature, rectal");
        Assert.Equal(2, chart.QuerySelectorAll("path.about").Length);
        Assert.Single(chart.QuerySelectorAll("circle.point"));
        Assert.Equal(1, chart.QuerySelectorAll("polyline").Sum(line => line.GetAttribute("points")!.Split(' ').Length));
    }

    [Fact]
    public void Points_far_apart_in_time_are_not_joined()
    {
        IElement near = Chart(Dog + "2026-08-01 check\n  weight 27kg\n2026-09-01 check\n  weight 27kg\n2026-10-01 check\n  weight 27kg\n", "Weight");
        IElement far = Chart(Dog + "2025-08-01 check\n  weight 27kg\n2025-09-01 check\n  weight 27kg\n2026-10-01 check\n  weight 27kg\n", "Weight");
        Assert.Single(near.QuerySelectorAll("polyline"));
        Assert.Equal(["2", "1"], far.QuerySelectorAll("polyline").Select(line => $"{line.GetAttribute("points")!.Split(' ').Length}"));
    }

    [Fact]
    public void Visits_and_medicines_are_on_the_axis()
    {
        IHtmlDocument page = Pages.Document(Dog + "med benazepril 5mg every 24h from 2026-08-10\n2026-08-01 visit\n  weight 27kg\n2026-10-01 check\n  weight 26kg\n");
        IElement chart = page.QuerySelector("section.charts svg")!;
        Assert.Single(chart.QuerySelectorAll("line.visit"));
        IElement bar = Assert.Single(chart.QuerySelectorAll("rect.medicine"));
        Assert.InRange(Number(bar, "x"), 60, 110);
        Assert.Contains("A: benazepril 5mg every 24h", page.Section("charts"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_vets_usual_range_goes_before_the_one_by_readings()
    {
        string readings = string.Concat(Enumerable.Range(1, 9).Select(week => $"{new DateOnly(2026, 7, 1).AddDays(week * 7):yyyy-MM-dd} check\n  rr 10/30s asleep\n"));
        IElement own = Chart(Dog + readings, "Breathing asleep");
        IElement vet = Chart(Dog + "usual rr 16-24 asleep per vet 2026-01-20\n" + readings, "Breathing asleep");
        Assert.Single(own.QuerySelectorAll("rect.usual"));
        IElement band = Assert.Single(vet.QuerySelectorAll("rect.usual"));
        Assert.Equal(24, ValueAt(vet)(Number(band, "y")), 0.3);
        Assert.Equal(16, ValueAt(vet)(Number(band, "y") + Number(band, "height")), 0.3);
    }

    [Fact]
    public void Us_units_change_the_axis_not_the_readings()
    {
        IElement chart = Chart(Dog + "units us\n" + Days("weight {0}kg", 20m, 10m), "Weight");
        Func<double, double> value = ValueAt(chart);
        Assert.Equal(44.1, value(Number(chart.QuerySelector("circle.point")!, "cy")), 0.4);
        Assert.Contains("lb", chart.QuerySelector("title")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_chart_tells_in_words_what_it_shows()
    {
        IElement chart = Chart(Dog + Days("weight {0}kg", 27m, 25.5m, 26m), "Weight");
        Assert.Equal("27 kg (2026-08-01) to 26 kg (2026-09-10); lowest 25.5 kg (2026-08-21), highest 27 kg (2026-08-01); 3 readings.", chart.QuerySelector("desc")!.TextContent);
        Assert.Contains("- Weight: 27 kg (2026-08-01) to 26 kg (2026-09-10)", Pages.Markdown(Dog + Days("weight {0}kg", 27m, 25.5m, 26m)), StringComparison.Ordinal);
    }

    [Fact]
    public void Marks_are_in_the_order_of_time_and_words_tell_of_bounds()
    {
        IElement chart = Chart(Dog + "2026-09-01 check\n  temp 38.5C rectal\n2026-09-20 check\n  temp 38.9C rectal\n  08:00 temp 38.2C rectal\n2026-10-01 check\n  temp <37C rectal\n  temp 101.6F rectal\n", "Temperature, rectal");
        double[] drawn = [.. chart.QuerySelector("polyline")!.GetAttribute("points")!.Split(' ').Select(point => double.Parse(point.Split(',')[0], CultureInfo.InvariantCulture))];
        Assert.Equal(drawn.Order(), drawn);
        Assert.EndsWith("; 5 readings, one of them only below or above a value.", chart.QuerySelector("desc")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("last 101.6 on", Pages.Document(Dog + "units us\n" + Days("temp {0}F rectal", 101.2m, 101.6m)).Section("charts"), StringComparison.Ordinal);
    }

    [Fact]
    public void One_reading_makes_no_chart() => Assert.Empty(Pages.Document(Dog + "2026-10-01 check\n  weight 27kg\n").QuerySelectorAll("section.charts"));

    [Fact]
    public void Years_of_readings_are_thinned_and_keep_their_extremes()
    {
        var note = new System.Text.StringBuilder(Dog);
        for (int day = 0; day < 700; day++)
        {
            note.Append(CultureInfo.InvariantCulture, $"{new DateOnly(2024, 11, 1).AddDays(day):yyyy-MM-dd} log\n  08:00 rr {8 + (day % 3)}/30s asleep\n  20:00 rr {(day == 311 ? 24 : day == 402 ? 3 : 9)}/30s asleep\n");
        }

        IElement chart = Chart(note.ToString(), "Breathing asleep");
        Func<double, double> value = ValueAt(chart);
        double[] drawn = [.. chart.QuerySelectorAll("circle.point").Select(point => value(Number(point, "cy")))];
        Assert.InRange(drawn.Length, 100, Thinning.MostMarks);
        Assert.Equal(48, drawn.Max(), 0.5);
        Assert.Equal(6, drawn.Min(), 0.5);
        Assert.Contains("1,400 readings", chart.QuerySelector("desc")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void An_axis_is_round_and_holds_every_value() => Gen.Select(Gen.Double[0, 500].Array[2, 12], Gen.Bool, Gen.Double[0, 60]).Sample((values, zero, least) =>
    {
        Mark[] marks = [.. values.Select((value, day) => new Mark(new DateTime(2026, 1, 1).AddDays(day), value, null, null, MarkKind.Point))];
        ValueAxis axis = ValueAxis.Of(new Chart("", "", marks, [], null, "", zero, least, "", false));
        Assert.True(axis.Low <= values.Min() + 1e-6 && axis.High >= values.Max() - 1e-6 && axis.High > axis.Low);
        Assert.True(!zero || axis.Low == 0);
        Assert.InRange(axis.Ticks.Count(), 2, 8);
        double mantissa = axis.Step / Math.Pow(10, Math.Floor(Math.Log10(axis.Step) + 1e-9));
        Assert.Contains(Math.Round(mantissa, 6), new[] { 1.0, 2, 5 });
    });

    [Fact]
    public void The_time_axis_has_few_ticks_in_order() => Gen.Select(Gen.Int[0, 3_000], Gen.Int[1, 20_000]).Sample((start, days) =>
    {
        DateTime from = new DateTime(2000, 1, 1).AddDays(start);
        var axis = new TimeAxis(from, from.AddDays(days));
        DateTime[] ticks = [.. axis.Ticks().Select(tick => tick.At)];
        Assert.InRange(ticks.Length, days < 3 ? 0 : 1, 8);
        Assert.Equal(ticks.Order(), ticks);
        Assert.All(ticks, tick => Assert.InRange(tick, axis.From, axis.To));
    });

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\"><img src=x onerror=alert(1)>")]
    [InlineData("]]>&lt;b&gt;")]
    public void Names_of_medicines_and_tags_stay_text(string attack)
    {
        IHtmlDocument page = Pages.Document(Dog + $"med {attack} 5mg every 24h from 2026-08-01\n2026-09-01 check\n  lump L-flank @a 10mm\n  weight 20kg\n2026-10-01 check\n  lump L-flank @a 12mm\n  weight 20kg\n");
        Assert.Empty(page.QuerySelectorAll("script, img, section.charts b"));
        Assert.Contains(attack, page.Body!.TextContent, StringComparison.Ordinal);
    }

    private static string Days(string line, params decimal[] values) => string.Concat(values.Select((value, index) =>
        $"{new DateOnly(2026, 8, 1).AddDays(index * 20):yyyy-MM-dd} check\n  {string.Format(CultureInfo.InvariantCulture, line, value)}\n"));

    private static IElement Chart(string note, string title) =>
        Pages.Document(note).QuerySelectorAll("section.charts figure").Single(figure => figure.QuerySelector("strong")!.TextContent == title).QuerySelector("svg")!;

    /// <summary>The value at a height of the drawing, by the words on its ticks.</summary>
    private static Func<double, double> ValueAt(IElement chart)
    {
        (double Y, double Value)[] ticks = [.. chart.QuerySelectorAll("line.grid").Zip(chart.QuerySelectorAll("text.y"), (line, text) => (Number(line, "y1"), double.Parse(text.TextContent, CultureInfo.InvariantCulture)))];
        (double y0, double v0) = ticks[0];
        (double y1, double v1) = ticks[^1];
        return y => v0 + ((y - y0) / (y1 - y0) * (v1 - v0));
    }

    private static double Number(IElement element, string name) => double.Parse(element.GetAttribute(name)!, CultureInfo.InvariantCulture);
}
