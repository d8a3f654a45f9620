using AngleSharp.Html.Dom;
using HealthNotes.Rendering;
using HealthNotes.Rendering.Pages;

namespace HealthNotes.Tests.Rendering;

/// <summary>What a reader sees, section by section.</summary>
public class PageContentTests
{
    private readonly IHtmlDocument page = Pages.Document(Pages.Check);

    [Fact]
    public void What_was_done_is_in_the_log() =>
        Assert.Contains("Done: rang the clinic", VisitPage.Markdown(Pages.Analyse("pet Marlow\nspecies dog\n2026-09-20 check\n  hr 18/15s\n2026-09-21 log\n  done rang the clinic\n")), StringComparison.Ordinal);

    [Fact]
    public void The_pet_stands_first_with_sex_age_weight_and_household()
    {
        Assert.Equal("Dog, lurcher type, male neutered, about 9y 6mo · 27.3 kg (4 Oct) · the household at Larch Lane", page.QuerySelector(".intro p")!.TextContent);
        string pet = page.Section("pet");
        Assert.Contains("No visit before today: the last twelve months.", pet, StringComparison.Ordinal);
        Assert.Contains("Allergies: chicken", pet, StringComparison.Ordinal);
        Assert.Contains("benazepril 5 mg once a day", pet, StringComparison.Ordinal);
        Assert.Contains("breathing rate asleep above 32: phone per vet 2026-01-20", page.Section("background"), StringComparison.Ordinal);
    }

    [Fact]
    public void Sections_keep_their_order()
    {
        string[] keys = [.. page.QuerySelectorAll("header > section, main > section").Select(section => section.ClassName!)];
        Assert.Equal(["pet", "asked", "questions", "problems", "not-understood", "measured", "looked-at", "body", "due", "pictures", "appendix", "paste"], keys);
    }

    [Fact]
    public void Problems_are_strongest_first()
    {
        string[] levels = [.. page.QuerySelectorAll("ol.findings .level").Select(level => level.TextContent)];
        string[] order = ["Urgent", "Significant", "Out of range or changed", "Noted"];
        Assert.True(levels.Length > 3);
        Assert.Equal(levels.OrderBy(level => Array.IndexOf(order, level)), levels);
    }

    [Fact]
    public void A_problem_has_its_lines_and_sources_in_the_appendix()
    {
        Assert.Contains("asleep 36 a minute (4 Oct), counted over 15 s, above the clinic's limit of 32 in the only reading, set 20 Jan", page.Section("problems"), StringComparison.Ordinal);
        Assert.Contains("rr 9/15s asleep", page.Section("lines"), StringComparison.Ordinal);
        Assert.Contains("the line drawn for this pet", page.Section("sources"), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_value_stands_in_the_appendix_as_written_and_as_worked_out()
    {
        string[] rows = page.Rows("values");
        Assert.Contains("Pulse | 2026-10-04 08:15 | 18/15s | 72 a minute (68 to 76)", rows);
        Assert.Contains("Breathing rate, asleep | 2026-10-04 08:15 | 9/15s | 36 a minute (32 to 40)", rows);
        Assert.Contains("Temperature, rectal | 2026-10-04 08:15 | 101.5F | 38.6 °C", rows);
    }

    [Theory]
    [InlineData("bcs 11/9", "Not understood")]
    [InlineData("crt <2s", "below 2 s")]
    [InlineData("bcs 3/5", "3/5 (is 5/9)")]
    [InlineData("bp 150/90", "150/90 mmHg")]
    public void A_value_is_worked_out_where_it_can_be(string line, string value) =>
        Assert.EndsWith(" | " + value, Pages.Document($"pet A\nspecies dog\nborn 2020\n2026-10-01 check\n  {line}\n").Rows("values").Single(), StringComparison.Ordinal);

    [Fact]
    public void Lumps_show_all_diameters_objects_and_when_first_noted()
    {
        string body = page.Section("body") + page.Section("problems");
        Assert.Contains("10 mm (4 Sep) → 12 × 9 mm (4 Oct), no clear change in size, soft, moves, sampled 4 Sep", body, StringComparison.Ordinal);
        Assert.Contains("about 8.5 mm (7 to 10), like a pea (4 Oct), firm, first noted 4 Oct", body, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_looked_at_and_what_was_not_is_said()
    {
        string section = page.Section("looked-at");
        Assert.Contains("Check of 4 Oct, nothing abnormal noted: alertness (bright).", section, StringComparison.Ordinal);
        Assert.Contains("Not looked at in the check of 4 Oct: anus (“refused”); stance; gait;", section, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_entries_of_one_day_make_one_check() =>
        Assert.Contains("nothing abnormal noted: alertness (bright), ear (clean).", Pages.Document("pet A\n2026-10-01 08:00 check\n  ear L clean\n2026-10-01 18:00 check\n  alert bright\n").Section("looked-at"), StringComparison.Ordinal);

    [Fact]
    public void Else_ok_speaks_for_parts_but_not_for_measurements()
    {
        string section = Pages.Document("pet A\n2026-10-01 check\n  alert bright\n  weight 20kg\n  else ok\n").Section("looked-at");
        Assert.Contains("The owner noted all other parts as normal.", section, StringComparison.Ordinal);
        Assert.DoesNotContain("stance", section, StringComparison.Ordinal);
        Assert.Contains("temperature", section, StringComparison.Ordinal);
    }

    [Fact]
    public void Reminders_of_checks_are_the_owners()
    {
        Assert.Contains("recheck left ear", page.Section("due"), StringComparison.Ordinal);
        Assert.DoesNotContain("Next home check", page.Section("due"), StringComparison.Ordinal);
        Assert.Contains("Next home check (every 30 days)", Pages.With(Pages.Check, new PageOptions { For = Audience.Owner }).Section("due"), StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_looked_for_and_is_not_there_is_no_problem()
    {
        IHtmlDocument shown = Pages.Document("pet A\nspecies dog\n2026-10-01 check\n  eye L no discharge\n  joint L-knee swelling gone\n  vomit none\n");
        Assert.Contains("nothing abnormal noted: eye (no discharge), joint (swelling gone).", shown.Section("looked-at"), StringComparison.Ordinal);
        Assert.Contains("Vomit none", shown.Section("log"), StringComparison.Ordinal);
        Assert.Empty(shown.QuerySelectorAll("ol.findings li"));
    }

    [Fact]
    public void Laboratory_values_stand_beside_the_laboratorys_own_range()
    {
        string[] rows = Pages.Document("pet A\nspecies dog\n2026-09-01 visit\n  weight 20kg\n2026-10-01 log\n  lab creatinine 110umol/L ref 44-159\n  lab ALT 300U/L ref 10-100\n  lab glucose 5mmol/L\n").Rows("lab");
        Assert.Equal(["2026-10-01 | creatinine | 110umol/L | 44-159", "2026-10-01 | ALT | 300U/L, outside the laboratory's range | 10-100", "2026-10-01 | glucose | 5mmol/L | not given"], rows);
    }

    [Fact]
    public void What_is_done_is_no_longer_due() =>
        Assert.DoesNotContain("rabies", Pages.Document("pet A\ndue rabies vaccination 2026-09-01\n2026-09-02 log\n  done rabies vaccination at the clinic\n").Section("pet"), StringComparison.Ordinal);

    [Fact]
    public void What_the_clinic_said_and_ordered_stands_at_the_top()
    {
        string pet = Pages.Document("pet A\nspecies dog\n2026-09-01 visit by the vet\n  recheck ear L in 2w\n  due booster 2026-10-20\n  recheck weight in 1w\n  > Clean the **ear** daily.\n2026-09-10 log\n  weight 20kg\n").Section("pet");
        Assert.Contains("Last visit 1 Sep (vet)", pet, StringComparison.Ordinal);
        Assert.Contains("Clean the ear daily.", pet, StringComparison.Ordinal);
        Assert.Contains("Was due: recheck left ear (15 Sep)", pet, StringComparison.Ordinal);
        Assert.Contains("weight done 10 Sep (due 8 Sep); booster (20 Oct)", pet, StringComparison.Ordinal);
    }

    [Fact]
    public void Lines_not_understood_stand_as_written_with_their_number() =>
        Assert.Contains("line 42, 2026-10-05: blah blup at him", page.Section("not-understood"), StringComparison.Ordinal);

    [Theory]
    [InlineData(Audience.Vet)]
    [InlineData(Audience.Owner)]
    public void A_medicine_that_could_not_be_read_is_shown_among_the_medicines(Audience reader) =>
        Assert.Contains("line 3 could not be read: med thyroxine 1/2 every 12h", Pages.With("pet A\nspecies dog\nmed thyroxine 1/2 every 12h\n2026-10-01 check\n  gums pink\n", new PageOptions { For = reader }).Section("pet"), StringComparison.Ordinal);

    [Fact]
    public void A_value_that_cannot_be_right_stands_with_the_lines_not_understood() =>
        Assert.Contains("line 4, 2026-10-01: hr 1800", Pages.Document("pet A\nspecies dog\n2026-10-01 check\n  hr 1800\n").Section("not-understood"), StringComparison.Ordinal);

    [Fact]
    public void Nothing_found_is_not_called_healthy()
    {
        Assert.Contains("This does not mean that the pet is healthy", Pages.Document("pet A\nspecies dog\nborn 2020\n2026-10-01 check\n  alert bright\n").Section("problems"), StringComparison.Ordinal);
        Assert.Contains("nothing to compare yet", Pages.Document("").Section("problems"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("med ax 5mg every 24h until 2026-10-04", "5 mg once a day until 4 Oct")]
    [InlineData("med ax 5mg every 24h until 2026-10-05", "5 mg once a day until 5 Oct")]
    [InlineData("med ax 5mg every 24h from 2026-09-25 for 7d", "5 mg once a day 25 Sep to 1 Oct")]
    [InlineData("med ax 5mg every 24h from 2026-10-03 for 7d", "5 mg once a day 3 to 9 Oct")]
    [InlineData("med ax 5mg every 24h\n2026-10-01 log\n  stop ax", "5 mg once a day until 1 Oct")]
    [InlineData("med ax 5mg every 24h\n2026-10-01 log\n  stop axb", "5 mg once a day")]
    [InlineData("med ax 5mg every 24h\n2026-10-01 log\n  stop ax\n2026-10-03 visit\n  med ax 10mg every 24h", "10 mg once a day")]
    public void A_medicine_is_listed_with_its_last_day(string lines, string plan)
    {
        string pet = Pages.Document("pet A\n" + lines).Section("pet");
        Assert.Contains("Medicines: ax " + plan, pet, StringComparison.Ordinal);
        Assert.Equal(plan.Contains("until", StringComparison.Ordinal), pet.Contains(" until ", StringComparison.Ordinal));
    }

    /// <summary>A vet wants to know what was given last week, too.</summary>
    [Fact]
    public void A_medicine_that_ended_since_the_visit_is_listed_with_its_last_day() =>
        Assert.Contains("Medicines: ax 5 mg once a day until 4 Oct", Pages.Document("pet A\nmed ax 5mg every 24h until 2026-10-04\n2026-10-04 log\n  ate all\n").Section("pet"), StringComparison.Ordinal);

    /// <summary>A look at both sides takes in each; and what the clinic saw before is not what there is now.</summary>
    [Theory]
    [InlineData("", "left ear: wax (since 1 Aug, last 1 Oct)")]
    [InlineData("2026-09-01 check\n  ear both clean\n", "left ear: wax (1 Oct, earlier 1 Aug)")]
    [InlineData("2026-09-01 check\n  ear R clean\n", "left ear: wax (since 1 Aug, last 1 Oct)")]
    public void A_sign_is_there_since_the_last_look_without_it(string between, string told) =>
        Assert.Contains(told, Pages.With("pet A\nspecies dog\n2026-08-01 check\n  ear L wax\n" + between + "2026-10-01 check\n  ear L wax\n", PageOptions.Default).Section("problems"), StringComparison.Ordinal);

    [Theory]
    [InlineData("2026-09-01 log\n  tooth 208 tartar\n", true)]
    [InlineData("2026-09-01 log\n  tooth 208 clean\n", false)]
    public void The_clinic_knows_a_sign_that_it_saw_since_it_began(string between, bool known) =>
        Assert.Equal(known, Pages.With("pet A\nspecies dog\n2025-08-01 visit\n  tooth 208 tartar\n" + between + "2026-10-01 check\n  tooth 208 tartar\n  mouth bad-breath\n", PageOptions.Default).Section("problems").Contains("known to the clinic", StringComparison.Ordinal));

    [Fact]
    public void The_clinics_ring_if_and_the_known_condition_stand_at_the_problem_they_are_about()
    {
        IHtmlDocument shown = Pages.Document("pet A\nspecies dog\nknown heart murmur since 2025-11\n2026-09-01 visit by the vet\n  weight 20kg\n  expect wound LH-paw swollen until 2026-09-20 per vet\n  > Any cough at night: ring. Lead only.\n2026-09-10 log\n  cough night 2x\n  walk tires 20min\n  wound LH-paw red weeping\n");
        string[] problems = [.. shown.QuerySelectorAll("ol.findings > li").Select(item => item.TextContent)];
        string breathing = Assert.Single(problems, problem => problem.Contains("cough", StringComparison.Ordinal));
        Assert.Contains("Known: heart murmur since Nov 2025.", breathing, StringComparison.Ordinal);
        Assert.Equal("The clinic asked to be phoned Cough night: 10 Sep. The clinic's words of 1 Sep. No call in the notes.", shown.Section("asked"));
        Assert.Contains("Exercise: walk: tires (20 min on 10 Sep)", Assert.Single(problems, problem => problem.Contains("walk", StringComparison.Ordinal)), StringComparison.Ordinal);
        string wound = Assert.Single(problems, problem => problem.Contains("weeping", StringComparison.Ordinal));
        Assert.Contains("not yet seen by the clinic", wound, StringComparison.Ordinal);
        Assert.Contains("Swollen: expected by the clinic until 20 Sep.", wound, StringComparison.Ordinal);
        Assert.DoesNotContain("ring", wound, StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_vet_said_stands_beside_a_later_visit_to_somebody_else()
    {
        const string Start = "pet A\nspecies dog\n2026-08-01 visit by the vet\n  weight 20kg\n  > Heart as before.\n2026-09-01 visit by ";
        Assert.Contains("Last visit 1 Sep (technician) Nails cut. Vet's visit 1 Aug Heart as before.", Pages.Document(Start + "technician\n  weight 20kg\n  > Nails cut.\n").Section("pet"), StringComparison.Ordinal);
        Assert.DoesNotContain("Heart as before", Pages.Document(Start + "the vet\n  weight 20kg\n  > Nails cut.\n").Section("pet"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_vaccine_of_the_visit_was_given_and_is_no_order() =>
        Assert.Contains("At the visit: vaccine, rabies, valid until 1 Sep 2027", Pages.Document("pet A\nspecies dog\n2026-09-01 visit by the vet\n  vaccine rabies for 1y\n").Section("pet"), StringComparison.Ordinal);

    [Fact]
    public void A_lump_that_is_gone_keeps_its_number_in_sight() =>
        Assert.Contains("Earlier: Lump 1, left flank (gone 1 Mar).", Pages.Document("pet A\nspecies dog\n2026-02-01 check\n  lump L-flank 5mm\n  lump chest 6mm\n2026-03-01 check\n  lump L-flank gone\n2026-09-01 visit\n  weight 20kg\n2026-10-01 check\n  lump chest 6mm\n").Section("body"), StringComparison.Ordinal);

    [Fact]
    public void What_is_measured_and_was_not_in_the_check_has_its_last_day() =>
        Assert.Contains("Not measured in the check of 1 Oct: body condition; muscle condition; capillary refill time (CRT); pulse; breathing rate (last 29 Sep); temperature", Pages.Document("pet A\nspecies dog\n2026-09-29 log\n  rr 10/30s asleep\n2026-10-01 check\n  weight 20kg\n  else ok\n").Section("looked-at"), StringComparison.Ordinal);

    [Theory]
    [InlineData("all", "3/4", "1/2", "some food left on each of the last 2 days with meals logged (2 Oct to 3 Oct)")]
    [InlineData("3/4", "1/2", "all", null)]
    public void Food_left_day_after_day_is_told(string first, string second, string third, string? told)
    {
        string problems = Pages.Document($"pet A\nspecies dog\n2026-10-01 log\n  ate {first}\n2026-10-02 log\n  ate {second}\n2026-10-03 log\n  ate {third}\n  stool soft 1x\n").Section("problems");
        Assert.Equal(told is not null, problems.Contains(told ?? "some food left", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(Audience.Vet, true)]
    [InlineData(Audience.Share, false)]
    public void What_was_done_and_what_stands_under_no_line_are_told_with_their_day(Audience reader, bool told)
    {
        string problems = Pages.With("pet A\nspecies dog\n2026-09-01 visit\n  weight 20kg\n2026-10-01 check\n  alert bright\n\n  > Only slower.\n2026-10-02 log\n  done rang the clinic\n", new PageOptions { For = reader }).Section("problems");
        Assert.Contains("In the notes, 1 Oct: “Only slower.”", problems, StringComparison.Ordinal);
        Assert.Equal(told, problems.Contains("Done, 2 Oct: “rang the clinic”", StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_sign_on_several_days_is_one_problem()
    {
        IHtmlDocument log = Pages.Document("pet A\nspecies dog\nborn 2020\n2026-10-01 log\n  stool soft 1x\n2026-10-02 log\n  stool soft 1x\n2026-10-03 log\n  stool soft 2x\n");
        Assert.Contains("stool: soft (4× on 3 days, last 3 Oct)", Assert.Single(log.QuerySelectorAll("ol.findings > li")).TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_note_gives_the_same_page_to_the_byte()
    {
        Assert.Equal(Pages.Html(Pages.Check), Pages.Html(Pages.Check));
        Assert.Equal(Pages.Markdown(Pages.Check), Pages.Markdown(Pages.Check));
    }
}
