using AngleSharp.Html.Parser;
using HealthNotes.Analysis;
using HealthNotes.Grammar.Notes;
using HealthNotes.Rendering;
using HealthNotes.Rendering.Sheet;

namespace HealthNotes.Tests.Rendering;

/// <summary>What a vet would take a line of the page to say is what the note says.</summary>
public class PageTruthTests
{
    private static readonly DateOnly Today = Pages.Today;

    private const string Dog = "pet A\nspecies dog\nborn 2018\nadult-weight 20kg\n";

    /// <summary>What the clinic asked to be phoned about is a reason to phone, whatever level the rules give it.</summary>
    [Theory]
    [InlineData("Any three counts in a row above his usual: ring, do not wait for 32.", "26 25 28 26", "call", "Breathing asleep above 24 three times in a row: 4 Sep. The clinic's words of 1 Sep. No call in the notes.", "phone at 13 or more in 30 s, 3 in a row")]
    [InlineData("Any three counts in a row above his usual: ring.", "26 25 20 26", "watch", null, "phone at 17 or more in 30 s; phone at 13 or more in 30 s, 3 in a row")]
    [InlineData("Breathing above 25 twice in a row: phone.", "26 19 27 28", "call", "Breathing asleep above 25 twice in a row: 5 Sep.", "phone at 17 or more in 30 s; phone at 13 or more in 30 s, 2 in a row")]
    [InlineData("Breathing above 20 twice in a row: phone.", "22 19 23 21", "call", "Breathing asleep above 20 twice in a row: 5 Sep.", "phone at 17 or more in 30 s; phone at 11 or more in 30 s, 2 in a row")]
    public void Counts_in_a_row_that_the_clinic_named_are_a_reason_to_phone(string said, string counts, string level, string? told, string limits)
    {
        string readings = string.Concat(counts.Split(' ').Select((count, at) => $"2026-09-{at + 2:00} log\n  rr {count} asleep\n"));
        string note = $"{Dog}usual rr 16-24 asleep per vet 2026-08-01\ncall-if rr asleep >32 per vet 2026-08-01\n2026-09-01 visit by the vet\n  weight 20kg\n  > {said}\n{readings}";
        var page = Pages.Document(note);
        var breathing = page.QuerySelectorAll("ol.findings > li").Single(item => item.TextContent.Contains("Breathing:", StringComparison.Ordinal));
        Assert.Contains(level, breathing.ClassList);
        Assert.Contains(told ?? "", page.Section("asked"), StringComparison.Ordinal);
        Assert.Equal(told is null, page.Section("asked").Length == 0);
        Assert.Equal(limits, string.Join("; ", page.QuerySelectorAll("section.charts text.limit").Select(limit => limit.TextContent)));
        Assert.Contains(limits.Split("; ")[^1], new HtmlParser().ParseDocument(CheckSheet.Html(NoteAnalysis.Of(Note.Read(note), Today), Paper.A4)).QuerySelector(".limits")!.TextContent, StringComparison.Ordinal);
    }

    /// <summary>A sign that the clinic named is a reason to phone until the notes say that somebody phoned.</summary>
    [Theory]
    [InlineData("", "call", "weeping: 10 Sep. The clinic's words of 1 Sep. No call in the notes.")]
    [InlineData("2026-09-12 log\n  wound LH-paw dry no weeping\n", "call", "weeping: 10 Sep. The clinic's words of 1 Sep. No call in the notes.")]
    [InlineData("2026-09-11 log\n  done rang the nurse\n2026-09-12 log\n  wound LH-paw dry no weeping\n", "watch", "weeping: 10 Sep. The clinic's words of 1 Sep. Phoned 11 Sep.")]
    [InlineData("2026-09-11 log\n  > We called the vet.\n2026-09-12 log\n  wound LH-paw dry no weeping\n2026-09-14 log\n  wound LH-paw weeping\n", "call", "weeping: 10 Sep, 14 Sep. The clinic's words of 1 Sep. Phoned 11 Sep, no call in the notes after that.")]
    public void What_the_clinic_asked_to_be_phoned_about_stands_at_the_top_with_its_day_and_the_call(string later, string level, string asked)
    {
        var page = Pages.Document(Dog + "2026-09-01 visit by the vet\n  wound LH-paw 30mm\n  > Ring if it weeps.\n2026-09-10 log\n  wound LH-paw weeping\n  pain 3/10\n2026-09-13 log\n  pain 1/10\n" + later);
        Assert.Contains(asked, page.Section("asked"), StringComparison.Ordinal);
        Assert.True(page.Body!.TextContent.IndexOf(asked, StringComparison.Ordinal) < page.Body.TextContent.IndexOf("Since the visit", StringComparison.Ordinal));
        var wound = page.QuerySelectorAll("ol.findings > li").Single(item => item.TextContent.Contains("weeping", StringComparison.Ordinal));
        Assert.Contains(level, wound.ClassList);
        Assert.True(level != "call" || wound == page.QuerySelector("ol.findings > li"));
    }

    /// <summary>A limit of the facts too, and only since the visit.</summary>
    [Theory]
    [InlineData("2026-08-02 log\n  glucose 3mmol/L\n2026-09-02 log\n  glucose 3.6mmol/L\n2026-09-03 log\n  glucose 9mmol/L\n", "Glucose below 4 mmol/L: 2 Sep. The clinic's limit (set 10 May). No call in the notes.")]
    [InlineData("2026-08-02 log\n  glucose 3mmol/L\n2026-09-03 log\n  glucose 9mmol/L\n", "")]
    [InlineData("2026-09-02 log\n  glucose 3.6mmol/L\n  > I have not phoned the vet yet.\n", "Glucose below 4 mmol/L: 2 Sep. The clinic's limit (set 10 May). No call in the notes.")]
    [InlineData("2026-09-02 log\n  glucose 3.6mmol/L\n  > We haven't called the clinic.\n", "Glucose below 4 mmol/L: 2 Sep. The clinic's limit (set 10 May). No call in the notes.")]
    [InlineData("2026-09-02 log\n  glucose 3.6mmol/L\n  > Rang the vet, no answer.\n", "Glucose below 4 mmol/L: 2 Sep. The clinic's limit (set 10 May). No call in the notes.")]
    [InlineData("2026-09-02 log\n  glucose 3.6mmol/L\n  > Rang the vet, who said not to worry.\n", "Glucose below 4 mmol/L: 2 Sep. The clinic's limit (set 10 May). Phoned 2 Sep.")]
    public void A_limit_that_was_passed_stands_at_the_top(string logs, string told) => Assert.Equal(told, Section($"call-if glucose <4mmol/L per vet 2026-05-10\n2026-09-01 visit\n  weight 20kg\n{logs}", "asked").Replace("The clinic asked to be phoned ", "", StringComparison.Ordinal));

    /// <summary>Nothing of one day stands with another day's sign: how long a walk was, over how many seconds it was counted, which words were written.</summary>
    [Theory]
    [InlineData("2026-08-04 log\n  walk tires 35min\n", "2026-09-14 log\n  walk tires 25min\n", "walk: tires (25 min on 14 Sep, earlier 35 min on 4 Aug)")]
    [InlineData("2026-08-04 log\n  walk tires 35min\n", "2026-09-14 log\n  walk tires 25min\n2026-09-15 log\n  walk tires 15min\n", "walk: tires (25 min on 14 Sep, 15 min on 15 Sep, earlier 35 min on 4 Aug)")]
    [InlineData("2026-07-04 check\n  ear L wax\n2026-08-04 check\n  ear L odour wax\n2026-08-05 check\n  ear L clean\n2026-08-06 check\n  ear R odour wax\n", "2026-09-14 check\n  ear L odour wax\n", "left ear: odour, wax (14 Sep, earlier together on 1 day, at least one on 2 days, 4 Jul to 4 Aug)")]
    [InlineData("2026-07-04 check\n  ear L wax\n2026-08-05 check\n  ear L clean\n", "2026-09-14 check\n  ear L odour wax\n", "left ear: odour, wax (14 Sep, earlier never together, at least one on 1 day, 4 Jul to 4 Jul)")]
    [InlineData("2026-08-04 log\n  cough 1x\n", "2026-09-14 log\n  cough dry 2x\n2026-09-15 log\n  cough night 1x\n", "cough (3\u00D7 on 2 days, last 15 Sep, in part ")]
    [InlineData("2026-08-04 check\n  rr 11/30s asleep\n", "2026-09-14 check\n  rr 12/15s asleep\n", "counted over 30 and 15 s")]
    [InlineData("2026-08-04 check\n  rr 22 asleep\n", "2026-09-14 check\n  rr 12/15s asleep\n", "the last counted over 15 s")]
    [InlineData("", "2026-09-14 check\n  gums pink tacky\n", "gums: tacky (14 Sep, otherwise pink)")]
    public void What_is_told_of_a_day_was_written_on_that_day(string before, string after, string told) =>
        Assert.Contains(told, Section($"{before}2026-09-01 visit\n  weight 20kg\n{after}", "problems"), StringComparison.Ordinal);

    /// <summary>A place that did not react does not count as sore, and takes no number.</summary>
    [Theory]
    [InlineData("no-reaction", "no-reaction", "Lump 1, left flank")]
    [InlineData("flinches", "no-reaction", "Lump 2, left flank")]
    public void A_place_without_a_reaction_does_not_count_as_sore(string first, string then, string lump)
    {
        string body = Section($"2026-07-01 check\n  pain-site loin {first}\n2026-07-02 check\n  pain-site loin {then}\n2026-07-03 check\n  lump L-flank 10mm\n2026-09-01 visit\n  weight 20kg\n", "body");
        Assert.Contains(lump, body, StringComparison.Ordinal);
        Assert.Equal(first == "flinches", body.Contains("Sore place 1, loin (no reaction 2 Jul)", StringComparison.Ordinal));
    }

    [Fact]
    public void A_treatment_against_worms_is_a_dose() => Assert.Contains("praziquantel Jan 2026, Aug 2026.", Section("2026-01-12 log\n  gave praziquantel 1 tablet\n2026-08-02 log\n  worming praziquantel\n2026-09-01 visit\n  weight 20kg\n", "courses"), StringComparison.Ordinal);

    /// <summary>What does not fit into three lines stands in the appendix, all of it.</summary>
    [Fact]
    public void A_long_chain_is_cut_on_the_page_and_whole_in_the_appendix()
    {
        var page = Pages.Document(Dog + "2026-09-01 visit\n  weight 20kg\n" + string.Concat(Enumerable.Range(2, 9).Select(day => $"2026-09-{day:00} check\n  gums {(day % 2 == 0 ? "tacky" : "pale")}\n  mouth bad-breath\n  tooth 10{day % 4 + 1} tartar\n  > Words about the tooth of day {day}, as long as an owner writes them down.\n")));
        var item = page.QuerySelectorAll("ol.findings > li").Single(one => one.TextContent.Contains("Mouth", StringComparison.Ordinal));
        Assert.InRange(item.TextContent.Length, 150, 253);
        Assert.EndsWith("more: A1", item.TextContent, StringComparison.Ordinal);
        string whole = page.GetElementById("a1")!.ParentElement!.QuerySelector("p")!.TextContent;
        Assert.StartsWith("In full: ", whole, StringComparison.Ordinal);
        Assert.All((string[])["bad breath", "tooth 101", "tooth 102", "tooth 103", "tooth 104", "gums"], part => Assert.Contains(part, whole, StringComparison.Ordinal));
    }

    [Fact]
    public void A_score_is_told_from_the_first_entry_of_each_level() =>
        Assert.Contains("condition 5/9 (until 1 Mar) \u2192 4/9 (since 1 Apr)", Section(
            "2026-02-01 check\n  bcs 5/9\n  weight 22kg\n2026-03-01 check\n  bcs 5/9\n  weight 22kg\n2026-04-01 check\n  bcs 4/9\n  weight 21kg\n2026-05-01 visit\n  bcs 4/9\n  weight 20kg\n2026-09-01 check\n  bcs 4/9\n  weight 19kg\n", "problems"), StringComparison.Ordinal);

    /// <summary>A cough is a cough with whatever words, as far back as the note goes.</summary>
    [Fact]
    public void Days_with_a_cough_are_counted_whatever_words_stand_with_it() =>
        Assert.Contains("cough: night (4\u00D7 on 3 Sep, up to 4 in one day, before that at most 2, earlier any kind on 4 days, 1 Jan 2024 to 3 Aug)", Section(
            "2024-01-01 log\n  cough 1x\n2026-08-01 log\n  cough dry 1x\n2026-08-02 log\n  cough wet 1x\n2026-08-03 log\n  cough night 2x\n2026-09-01 visit\n  weight 20kg\n2026-09-03 log\n  cough night 4x\n", "problems"), StringComparison.Ordinal);

    [Fact]
    public void Eating_more_began_with_the_first_word_for_it() =>
        Assert.Contains("eating more (3 Sep, earlier ravenous 1 Jul)", Section("2026-07-01 log\n  ate ravenous\n2026-08-01 visit\n  weight 20kg\n2026-09-03 log\n  ate more\n", "problems"), StringComparison.Ordinal);

    [Fact]
    public void Drinking_more_began_when_it_was_first_written() =>
        Assert.Contains("\u201Cmore\u201D first written 1 Jul", Section("2026-07-01 log\n  water more\n2026-07-10 check\n  weight 10kg\n  water 500ml\n2026-09-03 log\n  water 1200ml\n", "problems"), StringComparison.Ordinal);

    [Theory]
    [InlineData("08:00 glucose 9mmol/L\n  11:00 glucose 6mmol/L\n  13:00 glucose 7mmol/L", "Was due: glucose curve (only 3 values, 08:00 to 13:00) (10 Sep)")]
    [InlineData("08:00 glucose 9mmol/L\n  09:00 glucose 8mmol/L\n  11:00 glucose 6mmol/L\n  13:00 glucose 7mmol/L", "Was due: glucose curve (only 4 values, 08:00 to 13:00)")]
    [InlineData("08:00 glucose 9mmol/L\n  11:00 glucose 6mmol/L\n  13:00 glucose 7mmol/L\n  16:00 glucose 8mmol/L", "Ordered: glucose curve done 10 Sep")]
    public void A_glucose_curve_is_done_with_enough_values(string values, string told) =>
        Assert.Contains(told, Section($"known diabetes\n2026-09-01 visit\n  weight 20kg\n  due glucose curve 2026-09-10\n2026-09-10 log\n  {values}\n", "pet"), StringComparison.Ordinal);

    [Fact]
    public void Glucose_says_how_it_was_taken() =>
        Assert.Contains("12 (visit) \u2192 16 mmol/L before food (10 Sep)", Section("2026-09-01 visit\n  glucose 12mmol/L\n2026-09-10 log\n  glucose 16mmol/L before-food\n", "problems"), StringComparison.Ordinal);

    [Fact]
    public void The_courses_of_a_medicine_are_listed_by_month() =>
        Assert.Contains("meloxicam Feb 2024, Apr to May 2025; ear drops Aug 2025.", Section(
            "med meloxicam 1mg every 24h from 2025-04-28 until 2025-05-03\n2024-02-12 log\n  gave meloxicam 1mg\n2025-08-02 log\n  gave ear drops\n2026-09-01 visit\n  weight 20kg\n2026-09-03 log\n  ate all\n", "courses"), StringComparison.Ordinal);

    [Fact]
    public void A_medicine_of_which_no_dose_is_logged_says_since_when() =>
        Assert.Contains("X: no dose logged since 2 Sep; it may have been given.", Section("med x 5mg every 24h from 2026-08-01\nmed y 5mg every 24h from 2026-08-01\n2026-09-02 log\n  gave x 5mg\n2026-09-03 visit\n  weight 20kg\n2026-09-20 log\n  gave y 5mg\n2026-09-21 log\n  gave y 5mg\n", "days"), StringComparison.Ordinal);

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
        Assert.Contains("Changed: alertness bright \u2192 quiet (3 Sep; bright each time since 1 May)", Section(note, "problems"), StringComparison.Ordinal);
        Assert.Contains("lymph node (both jaws small, soft, both knee backs not felt)", Section(note, "looked-at"), StringComparison.Ordinal);
    }

    [Fact]
    public void Readings_that_a_question_is_about_are_told_up_to_the_last() =>
        Assert.Contains("asleep 34 (2 Sep) \u2192 35 \u2192 36 \u2192 33 a minute (4 Sep)", Section("call-if rr asleep >30\n2026-09-01 visit\n  weight 20kg\n2026-09-02 log\n  rr 34 asleep\n2026-09-03 log\n  08:00 rr 35 asleep\n  20:00 rr 36 asleep\n2026-09-04 log\n  rr 33 asleep\n  ask are these counts too high?\n", "problems"), StringComparison.Ordinal);

    [Fact]
    public void A_day_of_the_table_names_the_problems_it_has_lines_of()
    {
        string[] rows = Pages.Document(Dog + "2026-09-01 visit\n  weight 20kg\n2026-09-02 log\n  ate all\n  wound LH-paw weeping\n2026-09-03 log\n  ate all\n2026-09-04 check\n  ate all\n  gait lame\n").Rows("days");
        Assert.Equal(["2 Sep | 1 meal: all | 1", "3 Sep | 1 meal: all | ", "4 Sep | 1 meal: all | check"], rows);
    }

    private static string Section(string note, string key) => Pages.With(Dog + note, PageOptions.Default).Section(key);
}
