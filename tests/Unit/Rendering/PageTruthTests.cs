using HealthNotes.Rendering;

namespace HealthNotes.Tests.Rendering;

/// <summary>What a vet would take a line of the page to say is what the note says.</summary>
public class PageTruthTests
{
    private const string Dog = "pet A\nspecies dog\nborn 2018\nadult-weight 20kg\n";

    /// <summary>What the clinic asked to be phoned about is a reason to phone, whatever level the rules give it.</summary>
    [Theory]
    [InlineData("Any three counts in a row above his usual: ring, do not wait for 32.", "26 25 28 26", "call", "above the clinic's usual 16 to 24 (set 1 Aug) in all 4 readings, highest 28 on 4 Sep, the clinic's 3 in a row above 24 reached 4 Sep")]
    [InlineData("Any three counts in a row above his usual: ring.", "26 25 20 26", "watch", null)]
    [InlineData("Breathing above 25 twice in a row: phone.", "26 19 27 28", "call", "the clinic's 2 in a row above 25 reached 5 Sep")]
    [InlineData("Breathing above 20 twice in a row: phone.", "22 19 23 21", "call", "the clinic's 2 in a row above 20 reached 5 Sep")]
    public void Counts_in_a_row_that_the_clinic_named_are_a_reason_to_phone(string said, string counts, string level, string? told)
    {
        string readings = string.Concat(counts.Split(' ').Select((count, at) => $"2026-09-{at + 2:00} log\n  rr {count} asleep\n"));
        var page = Pages.Document($"{Dog}usual rr 16-24 asleep per vet 2026-08-01\ncall-if rr asleep >32 per vet 2026-08-01\n2026-09-01 visit by the vet\n  weight 20kg\n  > {said}\n{readings}");
        var breathing = page.QuerySelectorAll("ol.findings > li").Single(item => item.TextContent.Contains("Breathing:", StringComparison.Ordinal));
        Assert.Contains(level, breathing.ClassList);
        Assert.Equal(told is not null, breathing.TextContent.Contains(told ?? "reached", StringComparison.Ordinal));
        Assert.Equal(said.Contains("32", StringComparison.Ordinal) ? null : "phone at 17 or more in 30 s", page.QuerySelector("section.charts text.limit")?.TextContent);
    }

    /// <summary>A wound's sign that the clinic named is a reason to phone while it is there, and worth watching once it is gone.</summary>
    [Theory]
    [InlineData("", "call")]
    [InlineData("2026-09-12 log\n  wound LH-paw dry no weeping\n", "watch")]
    public void A_sign_that_the_clinics_sentence_names_raises_the_problem(string later, string level)
    {
        string said = "2026-09-01 visit by the vet\n  wound LH-paw 30mm\n  > Ring if it weeps.\n2026-09-10 log\n  wound LH-paw weeping\n";
        Assert.Contains(Pages.Document(Dog + said + later).QuerySelectorAll("ol.findings > li"), item => item.ClassList.Contains(level) && item.TextContent.Contains("weeping", StringComparison.Ordinal));
    }

    [Fact]
    public void A_score_is_told_from_the_first_entry_of_each_level() =>
        Assert.Contains("condition 5/9 (until 1 Mar) \u2192 4/9 (since 1 Apr, last 1 Sep)", Section(
            "2026-02-01 check\n  bcs 5/9\n  weight 22kg\n2026-03-01 check\n  bcs 5/9\n  weight 22kg\n2026-04-01 check\n  bcs 4/9\n  weight 21kg\n2026-05-01 visit\n  bcs 4/9\n  weight 20kg\n2026-09-01 check\n  bcs 4/9\n  weight 19kg\n", "problems"), StringComparison.Ordinal);

    /// <summary>A cough is a cough with whatever words, as far back as the note goes.</summary>
    [Fact]
    public void Days_with_a_cough_are_counted_whatever_words_stand_with_it() =>
        Assert.Contains("cough: night (4\u00D7 on 3 Sep, up to 4 in one day (3 Sep), before that at most 2 (3 Aug), before the visit on 4 days since 1 Jan 2024)", Section(
            "2024-01-01 log\n  cough 1x\n2026-08-01 log\n  cough dry 1x\n2026-08-02 log\n  cough wet 1x\n2026-08-03 log\n  cough night 2x\n2026-09-01 visit\n  weight 20kg\n2026-09-03 log\n  cough night 4x\n", "problems"), StringComparison.Ordinal);

    [Fact]
    public void Eating_more_began_with_the_first_word_for_it() =>
        Assert.Contains("eating more (3 Sep, before the visit 1 Jul)", Section("2026-07-01 log\n  ate ravenous\n2026-08-01 visit\n  weight 20kg\n2026-09-03 log\n  ate more\n", "problems"), StringComparison.Ordinal);

    [Fact]
    public void Drinking_more_began_when_it_was_first_written() =>
        Assert.Contains("\u201Cmore\u201D first written 1 Jul", Section("2026-07-01 log\n  water more\n2026-07-10 check\n  weight 10kg\n  water 500ml\n2026-09-03 log\n  water 1200ml\n", "problems"), StringComparison.Ordinal);

    [Theory]
    [InlineData("08:00 glucose 9mmol/L\n  11:00 glucose 6mmol/L\n  13:00 glucose 7mmol/L", "Was due: glucose curve, only 3 values, 08:00 to 13:00 (10 Sep)")]
    [InlineData("08:00 glucose 9mmol/L\n  09:00 glucose 8mmol/L\n  11:00 glucose 6mmol/L\n  13:00 glucose 7mmol/L", "Was due: glucose curve, only 4 values, 08:00 to 13:00")]
    [InlineData("08:00 glucose 9mmol/L\n  11:00 glucose 6mmol/L\n  13:00 glucose 7mmol/L\n  16:00 glucose 8mmol/L", "Ordered: glucose curve done 10 Sep")]
    public void A_glucose_curve_is_done_with_enough_values(string values, string told) =>
        Assert.Contains(told, Section($"known diabetes\n2026-09-01 visit\n  weight 20kg\n  due glucose curve 2026-09-10\n2026-09-10 log\n  {values}\n", "pet"), StringComparison.Ordinal);

    [Fact]
    public void Glucose_says_how_it_was_taken() =>
        Assert.Contains("12 (1 Sep) \u2192 16 mmol/L before food (10 Sep)", Section("2026-09-01 visit\n  glucose 12mmol/L\n2026-09-10 log\n  glucose 16mmol/L before-food\n", "problems"), StringComparison.Ordinal);

    [Fact]
    public void The_courses_of_a_medicine_are_listed_by_month() =>
        Assert.Contains("meloxicam Feb 2024, Apr to May 2025; ear drops Aug 2025.", Section(
            "med meloxicam 1mg every 24h from 2025-04-28 until 2025-05-03\n2024-02-12 log\n  gave meloxicam 1mg\n2025-08-02 log\n  gave ear drops\n2026-09-01 visit\n  weight 20kg\n2026-09-03 log\n  ate all\n", "courses"), StringComparison.Ordinal);

    [Fact]
    public void A_medicine_of_which_no_dose_is_logged_says_since_when() =>
        Assert.Contains("X: no dose logged since 2 Sep.", Section("med x 5mg every 24h from 2026-08-01\nmed y 5mg every 24h from 2026-08-01\n2026-09-02 log\n  gave x 5mg\n2026-09-03 visit\n  weight 20kg\n2026-09-20 log\n  gave y 5mg\n2026-09-21 log\n  gave y 5mg\n", "days"), StringComparison.Ordinal);

    [Fact]
    public void Results_of_the_last_year_stand_at_the_top()
    {
        string pet = Section("2025-02-01 visit by the vet\n  weight 20kg\n  > Old kidney values fine.\n2026-06-01 visit by the vet\n  weight 20kg\n  > Nails cut. Kidney values a little up.\n2026-07-01 log\n  done blood results by telephone\n  > Vet rang. Thyroid at the top of normal.\n2026-09-01 visit by the vet\n  weight 20kg\n  > Blood sent away.\n", "pet");
        Assert.Contains("Results 1 Jun: Kidney values a little up. 1 Jul: Thyroid at the top of normal.", pet, StringComparison.Ordinal);
        Assert.DoesNotContain("Old kidney", pet, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_known_of_a_lump_and_what_a_needle_showed_stand_with_it() =>
        Assert.Contains("sampled 1 Feb (\u201CNeedle sample: fat.\u201D), known: fatty lump left flank", Section("known fatty lump L-flank\n2026-02-01 visit by the vet\n  lump L-flank 10mm sampled\n  > Needle sample: fat.\n2026-09-01 visit by the vet\n  weight 20kg\n2026-09-03 check\n  lump L-flank 10mm\n", "body"), StringComparison.Ordinal);

    [Fact]
    public void A_quieter_pet_is_a_change_and_small_nodes_were_looked_at()
    {
        string note = string.Concat(Enumerable.Range(5, 4).Select(month => $"2026-{month:00}-01 check\n  alert bright\n")) + "2026-09-03 check\n  alert quiet\n  node both-jaw small soft\n  node both-knee-back not-felt\n";
        Assert.Contains("Changed: alertness bright \u2192 quiet (3 Sep; bright at each look since 1 May)", Section(note, "problems"), StringComparison.Ordinal);
        Assert.Contains("lymph node (both jaws small, soft, both knee backs not felt)", Section(note, "looked-at"), StringComparison.Ordinal);
    }

    [Fact]
    public void Readings_that_a_question_is_about_are_told_each_with_its_day() =>
        Assert.Contains("readings 34 (2 Sep), 35 and 36 (3 Sep), 33 (4 Sep)", Section("call-if rr asleep >30\n2026-09-01 visit\n  weight 20kg\n2026-09-02 log\n  rr 34 asleep\n2026-09-03 log\n  08:00 rr 35 asleep\n  20:00 rr 36 asleep\n2026-09-04 log\n  rr 33 asleep\n  ask are these counts too high?\n", "problems"), StringComparison.Ordinal);

    [Fact]
    public void A_day_of_the_table_names_the_problems_it_has_lines_of()
    {
        string[] rows = Pages.Document(Dog + "2026-09-01 visit\n  weight 20kg\n2026-09-02 log\n  ate all\n  wound LH-paw weeping\n2026-09-03 log\n  ate all\n2026-09-04 check\n  ate all\n  gait lame\n").Rows("days");
        Assert.Equal(["2 Sep | 1 meal: all | 2", "3 Sep | 1 meal: all | ", "4 Sep | 1 meal: all | check"], rows);
    }

    private static string Section(string note, string key) => Pages.With(Dog + note, PageOptions.Default).Section(key);
}
