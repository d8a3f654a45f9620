using System.Globalization;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using CsCheck;
using HealthNotes.Rendering.Drawing.Charts;
using HealthNotes.Rendering.Model;
using HealthNotes.Tests.Support;

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
        Assert.Equal(2, Chart(note, "Pulse").QuerySelectorAll("rect.normal").Length);
    }

    [Fact]
    public void A_count_shows_what_one_more_or_less_makes()
    {
        IElement chart = Chart(Dog + Days("hr {0}/15s", 18m, 20m, 19m), "Pulse");
        Func<double, double> value = ValueAt(chart);
        IElement[] bars = [.. chart.QuerySelectorAll("line.doubt")];
        Assert.Equal(68, value(Number(bars[0], "y1")), 0.6);
        Assert.Equal(76, value(Number(bars[0], "y2")), 0.6);
    }

    /// <summary>What each way of measuring may be off by: the rows of measuring-errors.tsv and lumps.tsv, worked out by hand.</summary>
    [Theory]
    [InlineData("weight 20kg", "Weight", 19.8, 20.2)]
    [InlineData("weight 80.1-60.1kg", "Weight", 19.9, 20.1)]
    [InlineData("temp 38.5C rectal", "Temperature, rectal", 38.3, 38.7)]
    [InlineData("glucose 10mmol/L", "Blood glucose", 8.5, 11.5)]
    [InlineData("rr 18 asleep", "Breathing asleep", 16, 20)]
    [InlineData("lump L-flank 20mm", "Lump 1, left flank", 18, 22)]
    public void Every_measure_shows_what_it_may_be_off_by(string line, string title, double low, double high)
    {
        IElement chart = Chart(Dog + string.Concat(Enumerable.Range(1, 3).Select(month => $"2026-0{month + 5}-01 check\n  {line}\n")), title);
        IElement bar = chart.QuerySelector("line.doubt")!;
        Assert.Equal(low, ValueAt(chart)(Number(bar, "y1")), (high - low) / 8);
        Assert.Equal(high, ValueAt(chart)(Number(bar, "y2")), (high - low) / 8);
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
    public void The_clinics_limit_stands_in_the_counted_unit_in_the_place_of_the_range()
    {
        const string Note = "call-if rr asleep >30 per vet 2026-08-10\n";
        IElement figure = Figure(Dog + Note + Days("rr {0}/30s asleep", 9m, 10m, 11m), "Breathing asleep");
        IElement line = Assert.Single(figure.QuerySelectorAll("line.limit"), line => line.ParentElement!.QuerySelector("title") is not null);
        Assert.Equal(30, ValueAt(line.ParentElement!)(Number(line, "y1")), 0.3);
        Assert.Equal("phone at 16 or more in 30 s", figure.QuerySelector("text.limit")!.TextContent);
        Assert.Empty(figure.QuerySelectorAll("rect.normal"));
        Assert.Contains("clinic's limit", figure.QuerySelector("ul.chart-key")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("phone below 20 kg", Chart(Dog + "call-if weight <20kg\n" + Days("weight {0}kg", 27m, 26m, 25m), "Weight").QuerySelector("text.limit")!.TextContent);
    }

    /// <summary>The first count past a limit, found by counting up or down one by one.</summary>
    [Fact]
    public void The_first_count_past_a_limit_is_past_it_and_none_before_is() =>
        Gen.Select(Gen.Int[1, 300], Gen.Int[1, 6], Gen.Bool).ForAll((limit, tens, above) =>
        {
            int seconds = tens * 10;
            int[] past = [.. Enumerable.Range(0, 400).Where(count => above ? count * 60 > limit * seconds : count * 60 < limit * seconds)];
            Assert.Equal(above ? past.Min() : past.Max(), ClinicLimit.FirstPast(limit, above, seconds));
        });

    [Fact]
    public void Home_and_clinic_are_told_apart_and_never_joined()
    {
        IElement figure = Figure(Dog + "2026-06-01 check\n  weight 20kg\n2026-07-01 visit\n  weight 22kg\n2026-07-05 check\n  weight 20kg\n2026-08-01 check\n  weight 18kg\n", "Weight");
        Assert.Single(figure.QuerySelectorAll("svg[role=img] rect.clinic"));
        Assert.Equal(["3", "1"], figure.QuerySelectorAll("polyline").Select(line => $"{line.GetAttribute("points")!.Split(' ').Length}"));
    }

    [Fact]
    public void Lumps_without_a_clear_change_share_a_chart_under_their_numbers()
    {
        string note = Dog + string.Concat(Enumerable.Range(0, 4).Select(month => $"{new DateOnly(2026, 6, 1).AddMonths(month):yyyy-MM-dd} check\n  lump L-flank 20mm\n  lump R-thigh {10 + (4 * month)}mm\n  lump chin 5mm\n"));
        Assert.Equal(["Lump 2, right thigh", "No clear change"], Pages.Document(note).QuerySelectorAll("section.charts figure strong").Select(title => title.TextContent));
        Assert.Equal(["3", "1"], Chart(note, "No clear change").QuerySelectorAll("text.series").Select(label => label.TextContent));
    }

    [Fact]
    public void What_is_usual_is_not_drawn_while_it_moves_and_never_past_the_range()
    {
        string Rising(int step) => Dog + string.Concat(Enumerable.Range(0, 12).Select(month => $"{new DateOnly(2025, 10, 1).AddMonths(month):yyyy-MM-dd} check\n  rr {8 + (month * step)}/30s asleep\n"));
        Assert.Empty(Chart(Rising(1), "Breathing asleep").QuerySelectorAll("rect.usual"));
        Assert.Single(Chart(Rising(0), "Breathing asleep").QuerySelectorAll("rect.usual"));
        IElement high = Chart(Dog + string.Concat(Enumerable.Range(0, 12).Select(month => $"{new DateOnly(2025, 10, 1).AddMonths(month):yyyy-MM-dd} check\n  rr 12/30s asleep\n")), "Breathing asleep");
        Assert.Equal(25, ValueAt(high)(Number(high.QuerySelector("rect.usual")!, "y")), 0.3);
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
    public void Events_and_changed_doses_are_written_on_the_chart()
    {
        IHtmlDocument page = Pages.Document(Dog + "surgery spleen removed 2026-08-20\nmed insulin 1 unit every 12h from 2026-08-10\nmed insulin 2 unit every 12h from 2026-09-05\nmed x 5mg every 24h from 2025-01-01\nmed y 5mg every 24h from 2026-08-03 until 2026-08-04\n2026-08-01 visit\n  weight 27kg\n  vaccine distemper\n2026-09-01 check\n  weight 27kg\n2026-10-01 check\n  weight 26kg\n");
        IElement chart = page.QuerySelector("section.charts svg")!;
        Assert.Equal(["vaccine, visit", "surgery"], chart.QuerySelectorAll("text.event").Select(text => text.TextContent));
        Assert.Equal(["insulin 1 unit", "2 units twice a day"], chart.QuerySelectorAll("text.dose").Select(text => text.TextContent));
        Assert.InRange(Number(chart.QuerySelectorAll("rect.medicine")[0], "x"), 60, 110);
        Assert.DoesNotContain("x: 5 mg", page.Section("charts"), StringComparison.Ordinal);
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
        IElement chart = Chart(Dog + "units us\n" + Days("weight {0}kg", 20m, 15m, 10m), "Weight");
        Func<double, double> value = ValueAt(chart);
        Assert.Equal(44.1, value(Number(chart.QuerySelector("circle.point")!, "cy")), 0.4);
        Assert.Contains("lb", chart.QuerySelector("title")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_chart_tells_in_words_what_it_shows()
    {
        IElement chart = Chart(Dog + Days("weight {0}kg", 27m, 25.5m, 26m), "Weight");
        Assert.Equal("3 readings since 1 Aug 2026, 25.5 to 27 kg.", chart.QuerySelector("desc")!.TextContent);
        Assert.Contains("- Weight: 3 readings since 1 Aug 2026, 25.5 to 27 kg.\n", Pages.Markdown(Dog + Days("weight {0}kg", 27m, 25.5m, 26m)), StringComparison.Ordinal);
    }

    [Fact]
    public void Marks_are_in_the_order_of_time_and_words_tell_of_bounds()
    {
        IElement chart = Chart(Dog + "2026-09-01 check\n  temp 38.5C rectal\n2026-09-20 check\n  temp 38.9C rectal\n  08:00 temp 38.2C rectal\n2026-10-01 check\n  temp <37C rectal\n  temp 101.6F rectal\n", "Temperature, rectal");
        double[] drawn = [.. chart.QuerySelector("polyline")!.GetAttribute("points")!.Split(' ').Select(point => double.Parse(point.Split(',')[0], CultureInfo.InvariantCulture))];
        Assert.Equal(drawn.Order(), drawn);
        Assert.Equal("5 readings since 1 Sep 2026, 38.2 to 38.9 °C, one of them only below or above a value.", chart.QuerySelector("desc")!.TextContent);
        Assert.Contains("101.2 to 101.6 °F", Pages.Document(Dog + "units us\n" + Days("temp {0}F rectal", 101.2m, 101.4m, 101.6m)).Section("charts"), StringComparison.Ordinal);
    }

    [Fact]
    public void Two_days_with_readings_make_no_chart() => Assert.Empty(Pages.Document(Dog + Days("temp {0}C rectal\n  temp 38.4C rectal", 38.1m, 38.6m)).QuerySelectorAll("section.charts"));

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
    public void An_axis_is_round_and_holds_every_value() => Gen.Select(Gen.Double[0, 500].Array[2, 12], Gen.Bool, Gen.Double[0, 60]).ForAll((values, zero, least) =>
    {
        Mark[] marks = [.. values.Select((value, day) => new Mark(new DateTime(2026, 1, 1).AddDays(day), value, null, null, MarkKind.Point))];
        ValueAxis axis = ValueAxis.Of(new Chart("", "", [new Series("", marks)], [], null, "", [], zero, least, "", "", "", false));
        Assert.True(axis.Low <= values.Min() + 1e-6 && axis.High >= values.Max() - 1e-6 && axis.High > axis.Low);
        Assert.True(!zero || axis.Low == 0);
        Assert.InRange(axis.Ticks.Count(), 2, 8);
        double mantissa = axis.Step / Math.Pow(10, Math.Floor(Math.Log10(axis.Step) + 1e-9));
        Assert.Contains(Math.Round(mantissa, 6), new[] { 1.0, 2, 5 });
    });

    [Fact]
    public void The_time_axis_has_few_ticks_in_order() => Gen.Select(Gen.Int[0, 3_000], Gen.Int[1, 20_000]).ForAll((start, days) =>
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
        IHtmlDocument page = Pages.Document(Dog + $"med {attack} 5mg every 24h from 2026-08-01\n2026-08-15 check\n  lump L-flank @a 10mm\n  weight 20kg\n2026-09-01 check\n  lump L-flank @a 10mm\n  weight 20kg\n2026-10-01 check\n  lump L-flank @a 12mm\n  weight 20kg\n");
        Assert.Empty(page.QuerySelectorAll("script, img, section.charts b"));
        Assert.Contains(attack, page.Body!.TextContent, StringComparison.Ordinal);
    }

    private static string Days(string line, params decimal[] values) => string.Concat(values.Select((value, index) =>
        $"{new DateOnly(2026, 8, 1).AddDays(index * 20):yyyy-MM-dd} check\n  {string.Format(CultureInfo.InvariantCulture, line, value)}\n"));

    private static IElement Figure(string note, string title) =>
        Pages.Document(note).QuerySelectorAll("section.charts figure").Single(figure => figure.QuerySelector("strong")!.TextContent == title);

    private static IElement Chart(string note, string title) => Figure(note, title).QuerySelector("svg[role=img]")!;

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
