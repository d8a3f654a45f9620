using HealthNotes.Analysis.Findings;

namespace HealthNotes.Tests.Analysis.HomeCare;

/// <summary>Meals, water, vomiting, stools, coughing, belly: when it is reported, how strongly, and when not.</summary>
public class CareTests
{
    private const string Dog = "pet Rowan\nspecies dog\nborn 2020-05-01\nadult-weight 20kg\n";
    private const string Cat = "pet Tansy\nspecies cat\nborn 2020-05-01\nsex female neutered\n";
    private const string Kitten = "pet Pip\nspecies cat\nborn 2026-07-01\n";
    private const string Diabetic = "pet Tansy\nspecies cat\nborn 2016-05-01\nknown diabetes\n";

    private static FindingLevel? LevelOf(string rule, string text) =>
        MarkedFindings.Read(text).Findings.Where(f => f.Rule == rule).Select(f => (FindingLevel?)f.Level).Max();

    // Dog 24 and 48 h, cat 12 h, the young and pets on insulin 12 h: common practice, no source. Cat 24 h: a house-call cat practice.
    // A puppy or kitten that does not eat: University of Missouri Veterinary Health Center, emergency list.
    [Theory]
    [InlineData(Dog, "19 08:00", "20 07:00", null)]
    [InlineData(Dog, "19 08:00", "20 08:00", FindingLevel.Watch)]
    [InlineData(Cat, "19 08:00", "19 19:00", null)]
    [InlineData(Cat, "19 08:00", "19 20:00", FindingLevel.Watch)]
    [InlineData(Cat, "19 08:00", "20 08:00", FindingLevel.Call)]
    [InlineData(Kitten, "19 08:00", "19 20:00", FindingLevel.Call)]
    [InlineData(Kitten, "19 08:00", "20 08:00", FindingLevel.Urgent)]
    [InlineData(Diabetic, "19 08:00", "19 20:00", FindingLevel.Call)]
    public void Nothing_eaten_since_a_meal(string pet, string eaten, string refused, FindingLevel? level) =>
        Assert.Equal(level, LevelOf("not-eating", $"{pet}2026-11-{eaten} log\n  ate all\n2026-11-{refused} log\n  ate none\n"));

    [Fact]
    public void From_the_first_refusal_where_the_last_meal_is_not_written()
    {
        Assert.Null(LevelOf("not-eating", Dog + "2026-11-01 08:00 log\n  ate all\n2026-11-20 08:00 log\n  ate refused\n"));
        Assert.Equal(FindingLevel.Call, LevelOf("not-eating", Dog + "2026-11-18 08:00 log\n  ate refused\n2026-11-20 08:00 log\n  ate sniffed\n"));
    }

    [Fact]
    public void Grass_is_no_meal() =>
        Assert.Equal(FindingLevel.Call, LevelOf("not-eating", Cat + "2026-11-18 20:00 log\n  ate all\n2026-11-19 08:00 log\n  ate none\n  12:00 ate grass\n  21:00 ate none\n"));

    [Fact]
    public void With_vomiting_a_dog_waits_no_longer_than_a_day() =>
        Assert.Equal(FindingLevel.Call, LevelOf("not-eating", Dog + "2026-11-19 08:00 log\n  ate all\n  22:00 vomit food\n2026-11-20 09:00 log\n  ate none\n"));

    [Fact]
    public void What_is_over_is_no_longer_a_reason_to_phone() =>
        Assert.Equal(FindingLevel.Watch, LevelOf("not-eating", Cat + "2026-11-18 08:00 log\n  ate none\n2026-11-19 12:00 log\n  ate none\n  18:00 ate half\n"));

    [Theory]
    [InlineData("ate 1/4")]
    [InlineData("ate a little")]
    [InlineData("ate slow")]
    [InlineData("food kibble 60g")]
    [InlineData("ate grass")]
    public void A_little_is_not_nothing(string line) => Assert.Null(LevelOf("not-eating", $"{Cat}2026-11-18 08:00 log\n  {line}\n2026-11-19 12:00 log\n  {line}\n"));

    // Refuses water for 24 hours or more: American Veterinary Medical Association, emergency list (adapted page).
    [Theory]
    [InlineData("refused", "20 08:00", FindingLevel.Call)]
    [InlineData("0ml", "20 08:00", FindingLevel.Call)]
    [InlineData("refused", "20 07:00", null)]
    [InlineData("100ml", "20 08:00", null)]
    public void Water_refused(string water, string until, FindingLevel? level) =>
        Assert.Equal(level, LevelOf("not-drinking", $"{Dog}2026-11-19 08:00 log\n  water {water}\n2026-11-{until} log\n  water {water}\n"));

    // More than two episodes of vomiting or diarrhoea in 24 hours: American Veterinary Medical Association, emergency list (adapted page).
    [Theory]
    [InlineData("vomit-often", "08:00 vomit 2x", "20:00 vomit", FindingLevel.Call)]
    [InlineData("vomit-often", "08:00 vomit", "20:00 vomit", null)]
    [InlineData("vomit-often", "08:00 vomit hair-ball 2x", "20:00 vomit hair-ball 2x", null)]
    [InlineData("vomit-often", "08:00 vomit >2x", "20:00 sneeze", FindingLevel.Call)]
    [InlineData("vomit-often", "08:00 vomit 0x", "20:00 vomit 2x", null)]
    [InlineData("stool-often", "08:00 stool watery 2x", "20:00 stool loose", FindingLevel.Call)]
    [InlineData("stool-often", "08:00 stool soft 2x", "20:00 stool firm 2x", null)]
    public void More_than_twice_in_a_day(string rule, string first, string second, FindingLevel? level) =>
        Assert.Equal(level, LevelOf(rule, $"{Dog}2026-11-20 log\n  {first}\n  {second}\n"));

    [Fact]
    public void The_day_is_twenty_four_hours_not_a_date()
    {
        Assert.Equal(FindingLevel.Call, LevelOf("vomit-often", Dog + "2026-11-19 log\n  22:00 vomit 2x\n2026-11-20 log\n  06:00 vomit\n"));
        Assert.Null(LevelOf("vomit-often", Dog + "2026-11-19 log\n  06:00 vomit 2x\n2026-11-20 log\n  07:00 vomit\n"));
    }

    [Theory]
    [InlineData("cough dry", "cough dry", "cough dry", FindingLevel.Watch)]
    [InlineData("cough dry", "pee", "cough dry", null)]
    [InlineData("vomit food", "vomit bile", "vomit food", FindingLevel.Watch)]
    [InlineData("vomit hair-ball", "vomit grass", "vomit hair-ball", null)]
    [InlineData("stool loose", "stool watery", "stool loose", FindingLevel.Watch)]
    [InlineData("stool soft", "stool soft", "stool soft", null)]
    public void Three_days_running(string one, string two, string three, FindingLevel? level) =>
        Assert.Equal(level, LevelOf("days-in-a-row", $"{Dog}2026-11-18 log\n  {one}\n2026-11-19 log\n  {two}\n2026-11-20 log\n  {three}\n"));

    // Unproductive retching or a sudden tight, large belly: University of Missouri Veterinary Health Center, emergency list.
    [Theory]
    [InlineData("20:00 belly hard", "20:30 vomit retching", true)]
    [InlineData("20:30 vomit retching", "21:00 belly tense", true)]
    [InlineData("belly hard", "vomit retching", true)]
    [InlineData("08:00 belly hard", "21:00 vomit retching", false)]
    [InlineData("20:00 belly soft", "20:30 vomit retching", false)]
    [InlineData("20:00 belly hard", "20:30 vomit food", false)]
    public void A_hard_belly_and_retching(string one, string two, bool together) =>
        Assert.Equal(together ? FindingLevel.Urgent : null, LevelOf("together", $"{Dog}2026-11-20 log\n  {one}\n  {two}\n"));

    // Ceilings 90 (dog) and 45 (cat) mL/kg/day: dvm360, urology column, April 2014. 100: a UK veterinary specialist centre. 50: veterinary glossary entry.
    [Theory]
    [InlineData("dog", "20kg", "1790ml", null)] // 89.5
    [InlineData("dog", "20kg", "1810ml", FindingLevel.Watch)]
    [InlineData("dog", "20kg", "2100ml", FindingLevel.Watch)] // one day
    [InlineData("dog", "44lb", "61floz", FindingLevel.Watch)] // 90.4
    [InlineData("dog", "4kg", "390ml", null)] // small: 97
    [InlineData("dog", "20kg", "<3l", null)] // less than says nothing
    [InlineData("dog", "20kg", "3l spilt", null)]
    [InlineData("dog", "20kg", ">1.9l", FindingLevel.Watch)]
    [InlineData("cat", "4kg", "175ml", null)]
    [InlineData("cat", "4kg", "185ml", FindingLevel.Watch)]
    public void Water_in_a_day(string species, string weight, string water, FindingLevel? level) =>
        Assert.Equal(level, LevelOf("water-range", $"pet X\nspecies {species}\nborn 2020-05-01\n2026-11-01 log\n  weight {weight}\n2026-11-20 log\n  water {water}\n"));

    [Theory]
    [InlineData("2026-11-19", FindingLevel.Call)] // two days running over 100
    [InlineData("2026-10-20", FindingLevel.Call)] // a month apart, and none under it between
    [InlineData("2026-10-19", FindingLevel.Watch)]
    public void Water_over_the_line_twice_running_is_stronger(string first, FindingLevel level) =>
        Assert.Equal(level, LevelOf("water-range", $"{Dog}2026-10-01 log\n  weight 20kg\n{first} log\n  08:00 water 1l\n  20:00 water 1.1l\n2026-11-20 log\n  water 2.2l\n"));

    [Theory]
    [InlineData("2026-11-10 log\n  water 1l\n", FindingLevel.Watch)] // an ordinary day between
    [InlineData("2026-10-01 log\n  known kidney disease\n", FindingLevel.Watch)] // a condition that makes thirsty
    [InlineData("2026-10-01 log\n  known arthritis\n", FindingLevel.Call)]
    public void What_else_the_note_says_of_drinking(string lines, FindingLevel level) =>
        Assert.Equal(level, LevelOf("water-range", $"{Dog}2026-10-01 log\n  weight 20kg\n2026-11-05 log\n  water 2.2l\n{lines}2026-11-20 log\n  water 2.2l\n"));

    [Theory]
    [InlineData("insulin 2units every 12h", "insulin", FindingLevel.Call)]
    [InlineData("carprofen 50mg every 12h", "carprofen", FindingLevel.Watch)]
    public void Two_missed_doses_of_insulin_are_a_reason_to_phone(string plan, string medicine, FindingLevel level) =>
        Assert.Equal(level, LevelOf("dose-missed", $"{Dog}med {plan}\n2026-11-01 log\n  missed {medicine}\n2026-11-02 log\n  missed {medicine}\n"));

    [Theory]
    [InlineData("")]
    [InlineData("2026-04-01 log\n  weight 20kg\n")]
    [InlineData("2026-11-01 log\n  weight <20kg\n")]
    public void Without_a_weight_of_the_last_half_year_nothing_is_said_of_water(string weight) =>
        Assert.Null(LevelOf("water-range", $"{Dog}{weight}2026-11-20 log\n  water 5l\n"));
}
