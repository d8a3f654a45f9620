using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using HealthNotes.Rendering;

namespace HealthNotes.Tests.Rendering;

/// <summary>What a reader is told, section by section.</summary>
public class PageContentTests
{
    private readonly IHtmlDocument page = Pages.Document(Pages.Check);

    [Fact]
    public void What_was_done_is_in_the_log() =>
        Assert.Contains("Done: rang the clinic", VisitPage.Markdown(Pages.Analyse("pet Marlow\nspecies dog\n2026-11-20 check\n  hr 18/15s\n2026-11-21 log\n  done rang the clinic\n")), StringComparison.Ordinal);

    [Fact]
    public void The_pet_stands_first_with_age_weight_and_dose_by_weight()
    {
        string pet = page.Section("pet");
        Assert.Contains("Age: about 9 years 6 months, senior (born 2017-03)", pet);
        Assert.Contains("Last weight: 27.3 kg on 2026-10-04", pet);
        Assert.Contains("benazepril 5mg every 24h from 2026-01-20 with food (is 0.183 mg/kg at 27.3 kg)", pet);
        Assert.Contains("call-if rr asleep >32 per vet 2026-01-20", pet);
        Assert.Contains("Owner: the household at Larch Lane", pet);
    }

    [Fact]
    public void Sections_keep_their_order()
    {
        string[] keys = [.. page.QuerySelectorAll("section").Select(section => section.ClassName!)];
        Assert.Equal(
            ["pet", "attention", "changes", "questions", "examination", "vitals", "body", "log", "not-looked-at", "due", "pictures", "texts", "not-understood", "to-know", "earlier", "cautions"],
            keys);
    }

    [Fact]
    public void Attention_is_strongest_first_and_names_evidence_and_source()
    {
        string[] levels = [.. page.QuerySelectorAll("section.attention > ul > li > strong").Select(level => level.TextContent)];
        string[] order = ["Urgent", "Call the vet", "Watch"];
        Assert.Equal(levels.OrderBy(level => Array.IndexOf(order, level)), levels);
        string attention = page.Section("attention");
        Assert.Contains("rr 9/15s asleep", attention);
        Assert.Contains("Source: the line drawn for this pet.", attention);
    }

    [Fact]
    public void Older_findings_are_counted_not_repeated()
    {
        Assert.Contains("Not repeated here, from earlier entries: 1 call the vet.", page.Section("attention"));
        Assert.DoesNotContain("lame", page.Section("attention"));
    }

    [Fact]
    public void Vitals_show_count_rate_uncertainty_state_and_ranges()
    {
        string[] rows = page.Rows("vitals");
        Assert.Contains(rows, row => row.StartsWith("Pulse | 18/15s | 72 a minute (68 to 76) |  | 60 to 120 a minute (large or giant senior dog, at rest)", StringComparison.Ordinal));
        Assert.Contains(rows, row => row.Contains("36 a minute (32 to 40) | asleep", StringComparison.Ordinal) && row.Contains("16-24 asleep per vet 2026-01-20 | Call the vet", StringComparison.Ordinal));
        Assert.Contains(rows, row => row.Contains("101.5F | 38.6 °C | rectal", StringComparison.Ordinal));
        Assert.Contains(rows, row => row.StartsWith("Weight | 83.2-55.9kg | 27.3 kg", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("hr 18/15s", "As expected")]
    [InlineData("bcs 11/9", "Not understood")]
    [InlineData("crt <2s", "")]
    [InlineData("hr 45/15s panting", "")]
    [InlineData("bcs 3/5", "As expected")]
    [InlineData("hr 58", "As usual")]
    [InlineData("weight 20kg", "")]
    public void Only_what_was_compared_is_called_expected(string line, string level)
    {
        IHtmlDocument vitals = Pages.Document($"pet A\nspecies dog\nborn 2020\nadult-weight 20kg\nusual hr 50-90 per vet 2026-01-01\n2026-10-01 check\n  rr 5/15s\n  {line}\n");
        IElement row = vitals.QuerySelectorAll("section.vitals tbody tr").Single(row => !row.TextContent.StartsWith("Breathing", StringComparison.Ordinal));
        Assert.Equal(level, row.Children[^1].TextContent);
    }

    [Fact]
    public void Lumps_show_all_diameters_objects_and_when_first_noted()
    {
        string[] rows = page.Rows("body");
        Assert.Contains(rows, row => row.StartsWith("1 | Lump | left flank | 2026-09-04: 10 mm; 2026-10-04: 12 × 9 mm | +2 mm (+20 %); within the error of measuring | soft, moves; sampled (2026-09-04) | 2026-09-04 | 2026-10-04", StringComparison.Ordinal));
        Assert.Contains(rows, row => row.StartsWith("2 | Lump | right gland 3 @lower | 2026-10-04: about 8.5 mm (7 to 10), like pea |  | firm | 2026-10-04", StringComparison.Ordinal));
    }

    [Fact]
    public void Parts_stand_head_to_tail() =>
        Assert.Equal(["Alertness", "Ear", "Gums"], page.Rows("examination").Select(row => row.Split(" | ")[0]));

    [Fact]
    public void Two_entries_of_one_day_make_one_check() =>
        Assert.Equal(["Alertness", "Ear"], Pages.Document("pet A\n2026-10-01 08:00 check\n  ear L clean\n2026-10-01 18:00 check\n  alert bright\n").Rows("examination").Select(row => row.Split(" | ")[0]));

    [Fact]
    public void What_was_skipped_and_not_mentioned_is_said()
    {
        string section = page.Section("not-looked-at");
        Assert.Contains("Anus: skipped, refused", section);
        Assert.Contains("Not mentioned in the check: stance, gait,", section);
    }

    [Fact]
    public void Else_ok_speaks_for_parts_but_not_for_measurements()
    {
        string section = Pages.Document("pet A\n2026-10-01 check\n  alert bright\n  weight 20kg\n  else ok\n").Section("not-looked-at");
        Assert.DoesNotContain("stance", section);
        Assert.Contains("temperature", section);
    }

    [Fact]
    public void Due_things_have_their_day()
    {
        string due = page.Section("due");
        Assert.Contains("2026-10-18 (in 13 days): Look again at left ear", due);
        Assert.Contains("2026-11-03 (in 29 days): Next home check (every 30 days)", due);
    }

    [Fact]
    public void What_was_looked_for_and_is_not_there_is_shown_as_written()
    {
        IHtmlDocument shown = Pages.Document("pet A\nspecies dog\n2026-10-01 check\n  eye L no discharge\n  joint L-knee swelling gone\n  vomit none\n  BAR, eating well\n");
        Assert.Contains("no discharge", shown.Section("examination"));
        Assert.Contains("swelling gone", shown.Section("examination"));
        Assert.Contains("Vomit | none", string.Join('\n', shown.Rows("log")), StringComparison.Ordinal);
    }

    [Fact]
    public void Laboratory_values_stand_beside_the_laboratorys_own_range()
    {
        string[] rows = Pages.Document("pet A\nspecies dog\n2026-10-01 visit\n  lab creatinine 110umol/L ref 44-159\n  lab ALT 300U/L ref 10-100\n  bp 150/90\n  T 38.6 P 84 R 20\n").Rows("lab");
        Assert.Equal(["2026-10-01 | creatinine | 110umol/L | 44-159 | ", "2026-10-01 | ALT | 300U/L | 10-100 | outside the laboratory's range"], rows);
    }

    [Fact]
    public void Each_value_of_a_line_has_its_row()
    {
        string[] rows = Pages.Document("pet A\nspecies dog\n2026-10-01 check\n  T 38.6 P 84 R 20\n  bp 150/90\n  weight 0kg\n  gave carprofen 75mg\n").Rows("vitals");
        Assert.Equal(["Pulse", "Breathing rate", "Temperature", "Weight", "Blood pressure"], rows.Select(row => row.Split(" | ")[0]));
        Assert.Contains("150/90 mmHg", rows[4], StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_done_is_no_longer_due() =>
        Assert.DoesNotContain("2026-09-01", Pages.Markdown("pet A\ndue rabies vaccination 2026-09-01\n2026-09-02 log\n  done rabies vaccination at the clinic\n"));

    [Fact]
    public void Lines_not_understood_stand_as_written_with_their_number() =>
        Assert.Contains("line 42, 2026-10-05: the cat looked at him", page.Section("not-understood"));

    [Fact]
    public void A_value_that_cannot_be_right_stands_with_the_lines_not_understood() =>
        Assert.Contains("line 4, 2026-10-01: hr 1800", Pages.Document("pet A\nspecies dog\n2026-10-01 check\n  hr 1800\n").Section("not-understood"));

    [Fact]
    public void Nothing_found_is_no_clean_bill_of_health()
    {
        IHtmlDocument calm = Pages.Document("pet A\nspecies dog\nborn 2020\n2026-10-01 check\n  alert bright\n");
        Assert.Contains("not a clean bill of health", calm.Section("attention"));
        Assert.Contains("nothing to compare yet", Pages.Document("").Section("attention"));
    }

    [Theory]
    [InlineData("med ax 5mg every 24h until 2026-10-04", false)]
    [InlineData("med ax 5mg every 24h until 2026-10-05", true)]
    [InlineData("med ax 5mg every 24h from 2026-09-25 for 7d", false)]
    [InlineData("med ax 5mg every 24h from 2026-10-03 for 7d", true)]
    [InlineData("med ax 5mg every 24h\n2026-10-01 log\n  stop ax", false)]
    [InlineData("med ax 5mg every 24h\n2026-10-01 log\n  stop axb", true)]
    [InlineData("med ax 5mg every 24h\n2026-10-01 log\n  stop ax\n2026-10-03 visit\n  med ax 10mg every 24h", true)]
    public void A_medicine_is_listed_while_its_plan_holds(string lines, bool listed) =>
        Assert.Equal(listed, Pages.Document("pet A\n" + lines).Section("pet").Contains("Medicines now", StringComparison.Ordinal));

    [Fact]
    public void The_same_finding_on_several_days_is_one_item()
    {
        IHtmlDocument log = Pages.Document("pet A\nspecies dog\nborn 2020\n2026-10-01 log\n  stool soft 1x\n2026-10-02 log\n  stool soft 1x\n2026-10-03 log\n  stool soft 2x\n");
        Assert.Single(log.QuerySelectorAll("section.attention > ul > li"));
        Assert.Contains("Also on 2026-10-02, 2026-10-01", log.Section("attention"));
    }

    [Fact]
    public void Without_a_check_the_last_thirty_days_are_shown()
    {
        string markdown = Pages.Markdown("pet A\nspecies dog\n2026-08-01 log\n  vomit blood 1x\n2026-09-30 log\n  walk 20min\n");
        Assert.Contains("everything since 2026-08-31", markdown);
        Assert.Contains("**2026**: 08-01 log", markdown);
    }

    [Fact]
    public void A_check_dated_after_today_does_not_hide_the_last_real_one() =>
        Assert.Contains("the last check, 2026-10-01,", Pages.Markdown("pet A\n2026-10-01 check\n  alert bright\n2062-10-01 check\n  alert bright\n"));

    [Fact]
    public void The_same_note_gives_the_same_page_to_the_byte()
    {
        Assert.Equal(Pages.Html(Pages.Check), Pages.Html(Pages.Check));
        Assert.Equal(Pages.Markdown(Pages.Check), Pages.Markdown(Pages.Check));
    }
}
