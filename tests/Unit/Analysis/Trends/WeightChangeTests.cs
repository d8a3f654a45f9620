using CsCheck;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Trends;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Tests.Support;
using static HealthNotes.Tests.Analysis.Trends.Drawn;

namespace HealthNotes.Tests.Analysis.Trends;

public class WeightChangeTests
{
    private static string Kg(params double[] weights) => Every(30, [.. weights.Select(weight => FormattableString.Invariant($"weight {weight}kg"))]);

    private static string Kg(string weights) => Every(30, Lines(weights));

    private static string[] Lines(string weights) => [.. weights.Split(' ').Select(weight => $"weight {weight}kg")];

    private static string Young(string species, string born) => $"pet Hazel\nspecies {species}\nborn {born}\n";

    [Theory]
    [InlineData("watch", "20 20.1 19.0 18.9")] // 5% at two weighings
    [InlineData("call", "20 20.1 19.0 18.0")] // 10%, and 5% the time before
    [InlineData("watch", "20 20.1 20.0 18.0")] // 10% at one weighing: weigh again
    [InlineData("watch", "20 17.8")] // two weighings in all
    [InlineData("call", "20 20 20 19.9 19.8 19.7 19 18.8 18.6")] // a fall that goes on
    public void A_grown_dog_that_lost(string level, string weights) =>
        Assert.Equal([$"2026-11-20 {level}"], By("weight-loss", Dog + Kg(weights)));

    [Theory]
    [InlineData("one weighing 5% lower", "20 20.1 20.0 19.0")]
    [InlineData("ordinary wobble", "20 20.8 19.9 20.4 20.0")]
    [InlineData("one odd high weighing", "20 20.1 23 20.0 20.1")]
    [InlineData("it went up", "19 19.1 20 20.1")]
    [InlineData("one weighing", "19")]
    public void A_grown_dog_of_which_nothing_is_said(string why, string weights) => Assert.True(By("weight-loss", Dog + Kg(weights)).Length == 0, why);

    [Theory]
    [InlineData("watch", "5 5.05 4.75")]
    [InlineData("call", "5 5.05 4.75 4.7")]
    [InlineData("call", "5 5.05 5.0 4.5")]
    public void A_cat_that_lost(string level, string weights) => Assert.Equal([$"2026-11-20 {level}"], By("weight-loss", Cat + Kg(weights)));

    [Fact]
    public void Seniors_and_the_very_small_are_judged_like_cats()
    {
        Assert.Equal(["2026-11-20 watch"], By("weight-loss", OldDog + Kg(20, 20.1, 19.0)));
        Assert.Equal(["2026-11-20 watch"], By("weight-loss", Dog.Replace("15kg", "2.8kg", StringComparison.Ordinal) + Kg(2.8, 2.81, 2.65)));
    }

    [Fact]
    public void It_is_never_urgent_and_says_what_it_compares()
    {
        NoteFinding found = One("weight-loss", Cat + Kg(5, 5.05, 4.0, 3.5));
        Assert.Equal(FindingLevel.Call, found.Level);
        Assert.Contains("30 % less than about 5.03 kg", found.Message, StringComparison.Ordinal);
        Assert.Equal(3, found.Evidence.Length);
    }

    [Fact]
    public void Weighings_months_apart_count_as_well() =>
        Assert.Equal(["2026-11-20 call"], By("weight-loss", Dog + Every(180, "weight 22kg", "weight 22kg", "weight 20kg", "weight 20kg")));

    [Fact]
    public void A_loss_of_years_is_told_as_such_while_it_goes_on()
    {
        double[] slow = [.. Enumerable.Range(0, 25).Select(n => 5 - (0.02 * n))];
        Assert.Contains("9 % less than about 4.98 kg 23 months before", One("weight-loss", Cat + Kg(slow)).Message, StringComparison.Ordinal);
        Assert.Empty(By("weight-loss", Cat + Kg([.. slow, .. Enumerable.Repeat(4.5, 9)])));
    }

    [Fact]
    public void A_young_animal_that_does_not_gain_is_reported()
    {
        const string Puppy = "pet Hazel\nspecies dog\nborn 2026-08-14\nadult-weight 20kg\n";
        Assert.Equal(["2026-11-20 watch"], By("weight-growth", Puppy + Every(7, "weight 6kg", "weight 6.05kg", "weight 6kg")));
        Assert.Equal(["2026-11-20 call"], By("weight-growth", Puppy + Every(7, "weight 6kg", "weight 6.05kg", "weight 6kg", "weight 6.05kg")));
        Assert.Empty(By("weight-growth", Puppy + Every(7, "weight 6kg", "weight 6.5kg", "weight 7kg")));
        Assert.Empty(By("weight-growth", Dog + Every(7, "weight 6kg", "weight 6kg", "weight 6kg")));
        Assert.Equal(["2026-11-20 call"], By("weight-growth", Young("cat", "2026-11-10") + Every(1, "weight 150g", "weight 151g", "weight 152g")));
        Assert.Empty(By("weight-growth", Young("cat", "2026-11-10") + Every(1, "weight 150g", "weight 158g", "weight 167g")));
    }

    [Fact]
    public void Several_weighings_of_a_day_are_one() =>
        Assert.Empty(By("weight-loss", Dog + Every(30, "weight 20kg", "weight 20kg", "weight 19kg|weight 18.9kg|weight 19kg")));

    [Fact]
    public void A_bound_is_no_weighing() => Assert.Empty(By("weight-loss", Cat + Every(30, "weight 5kg", "weight 5kg", "weight <4kg")));

    [Theory]
    [InlineData("known overweight, plan 1%/week")]
    [InlineData("known on a diet, 1-1.5 % a week per vet 2026-09-01")]
    [InlineData("known obese, plan 0.5% per week")]
    [InlineData("known 10% overweight, plan 1 to 2% weekly")]
    public void A_planned_loss_is_not_a_loss(string known) => Assert.Empty(By("weight-loss", Dog + known + "\n" + Kg(20, 20.1, 19.0, 18.8)));

    [Theory]
    [InlineData("known overweight")]
    [InlineData("known murmur, 1% a week of something")]
    [InlineData("known on a diet for the kidneys")]
    public void Without_a_rate_or_a_wish_nothing_is_planned(string known) => Assert.Single(By("weight-loss", Dog + known + "\n" + Kg(20, 20.1, 19.0, 18.8)));

    [Fact]
    public void The_young_grow_and_nothing_is_said()
    {
        string puppy = Young("dog", "2026-05-06") + Every(14, "weight 6kg", "weight 7.2kg", "weight 8.8kg", "weight 10.1kg", "weight 11.2kg", "weight 12.3kg");
        Assert.Empty(By("weight-loss", puppy));
        Assert.Empty(By("weight-gain", puppy));
        Assert.Empty(By("weight-trend", puppy));
    }

    [Fact]
    public void A_loss_in_the_young_is_a_reason_to_call()
    {
        Assert.Equal(["2026-11-20 call"], By("weight-loss", Young("dog", "2026-05-06") + Every(14, "weight 8kg", "weight 9kg", "weight 10kg", "weight 9.4kg")));
        Assert.Empty(By("weight-loss", Young("dog", "2026-05-06") + Every(14, "weight 8kg", "weight 9kg", "weight 10kg", "weight 9.8kg")));
        Assert.Equal(["2026-11-20 call"], By("weight-loss", Young("dog", "2026-05-06") + Every(14, "weight 8kg", "weight 10kg", "weight 9.4kg", "weight 9.3kg")));
    }

    [Fact]
    public void A_newborn_should_gain_every_day()
    {
        Assert.Equal(["2026-11-20 call"], By("weight-loss", Young("cat", "2026-11-12") + Every(1, "weight 120g", "weight 130g", "weight 127g")));
        Assert.Empty(By("weight-loss", Young("cat", "2026-11-19") + Every(1, "weight 100g", "weight 98g")));
        Assert.Empty(By("weight-loss", Young("cat", "2026-11-12") + Every(1, "weight 120g", "weight 130g", "weight 141g")));
    }

    /// <summary>Pairs that lie exactly on a line are left out: rounded pounds fall to one side of it.</summary>
    [Fact]
    public void Units_change_no_level() => Gen.Int[40, 60].Array[4, 8].Where(NoneExactlyOnALine).ForAll(tenths =>
    {
        string kg = Cat + Every(25, [.. tenths.Select(t => FormattableString.Invariant($"weight {t / 10m}kg"))]);
        string lb = Cat + Every(25, [.. tenths.Select(t => FormattableString.Invariant($"weight {Math.Round(t / 10m / 0.45359237m, 6)}lb"))]);
        Assert.Equal(By("weight-loss", kg).Concat(By("weight-gain", kg)), By("weight-loss", lb).Concat(By("weight-gain", lb)));
    });

    private static bool NoneExactlyOnALine(int[] tenths) =>
        tenths.All(a => tenths.All(b => !Array.Exists([90, 95, 97, 103, 105, 110], percent => a * 100 == b * percent)));

    [Fact]
    public void The_order_in_the_file_changes_nothing() => Gen.Shuffle(new[] { 0, 1, 2, 3, 4, 5 }).ForAll(order =>
    {
        string[] entries = [.. new[] { 5.0, 5.05, 4.9, 4.75, 4.7, 4.6 }.Select((kg, index) => Day(new DateOnly(2026, 6, 1).AddDays(index * 28), FormattableString.Invariant($"weight {kg}kg")))];
        Assert.Equal(["2026-10-19 call"], By("weight-loss", Cat + string.Concat(order.Select(index => entries[index]))));
    });

    [Theory]
    [InlineData("info", "4 4.02 4.25 4.3")]
    [InlineData("watch", "4 4.02 4.3 4.45")]
    public void A_grown_cat_that_gained(string level, string weights) => Assert.Equal([$"2026-11-20 {level}"], By("weight-gain", Cat + Kg(weights)));

    [Theory]
    [InlineData("one weighing", "4 4.02 4.05 4.4")]
    [InlineData("one odd low weighing", "4.2 4.2 3.5 4.2 4.25")]
    [InlineData("it had it before and it has come back", "4.5 4.5 4 4.05 4.4 4.5")]
    [InlineData("wobble", "4.2 4.1 4.2 4.25")]
    public void A_grown_cat_of_which_nothing_is_said(string why, string weights) => Assert.True(By("weight-gain", Cat + Kg(weights)).Length == 0, why);

    [Fact]
    public void A_large_dog_fills_out_until_two_and_without_a_birth_nobody_knows()
    {
        string weights = Kg(30, 30.2, 33, 34);
        Assert.Empty(By("weight-gain", "pet Bo\nspecies dog\nborn 2025-05-01\nadult-weight 40kg\n" + weights));
        Assert.Single(By("weight-gain", "pet Bo\nspecies dog\nborn 2022-05-01\nadult-weight 40kg\n" + weights));
        Assert.Empty(By("weight-gain", "pet Bo\nspecies dog\nadult-weight 40kg\n" + weights));
    }

    [Fact]
    public void A_gain_after_neutering_names_the_day()
    {
        string note = Cat + Day(new DateOnly(2026, 8, 1), "done spayed, all well") + Kg(4, 4.02, 4.25, 4.3);
        Assert.Contains("Neutered on 2026-08-01.", One("weight-gain", note).Message, StringComparison.Ordinal);
        Assert.DoesNotContain("Neutered", One("weight-gain", Cat + Kg(4, 4.02, 4.25, 4.3)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void After_neutering_the_months_back_to_it_count()
    {
        string slow = Kg(Enumerable.Range(0, 12).Select(n => 4 + (0.04 * n)).ToArray());
        Assert.Equal(["2026-11-20 watch"], By("weight-gain", Cat + Day(new DateOnly(2025, 12, 20), "done castrated") + slow));
        Assert.Empty(By("weight-gain", Cat + slow));
    }

    [Theory]
    [InlineData("cat", 1.0, "call", "6.0 5.85 5.7 5.55 5.4")] // 1.25% a week
    [InlineData("cat", 0.5, "", "6.0 5.96 5.92 5.88 5.84")] // as planned
    [InlineData("dog", 1.0, "", "30 29.2 28.4 27.6 26.8")] // 1.3% a week: safe in a dog
    [InlineData("dog", 1.0, "call", "30 28.5 27 25.5 24")] // 2.5% a week
    [InlineData("dog", 1.0, "watch", "30 28.5 27")] // three weighings only
    [InlineData("dog", 1.0, "info", "30 29.9 29.9 29.8")] // hardly anything
    [InlineData("dog", 1.0, "info", "30 30.2 30.3 30.4")] // nothing
    [InlineData("dog", 1.0, "", "30 27")] // two weighings are too few
    public void A_plan_is_held_against_its_rate(string species, double percent, string level, string weights)
    {
        string note = FormattableString.Invariant($"pet Bo\nspecies {species}\nborn 2020-05-01\nknown overweight, plan {percent}%/week\n")
            + Every(14, Lines(weights));
        Assert.Equal(level.Length == 0 ? [] : [$"2026-11-20 {level}"], By("weight-plan", note));
    }

    [Theory]
    [InlineData("overweight, plan 1%/week", 1.0, 1.0)]
    [InlineData("on a diet, 1-1.5 % a week", 1.0, 1.5)]
    [InlineData("20% overweight, plan .5% per wk", 0.5, 0.5)]
    [InlineData("diet 2%/w, vet", 2.0, 2.0)]
    [InlineData("overweight", null, null)]
    [InlineData("diet, 5% in all", null, null)]
    [InlineData("plan %/week", null, null)]
    [InlineData("plan 1% of water", null, null)]
    public void A_planned_rate_is_read_from_the_words(string words, double? slow, double? fast)
    {
        var plan = PlannedLoss.On(MarkedFindings.Today, Note.Read($"pet Bo\nknown {words}\n").Facts<TextFact>().Where(fact => fact.Fact.Word.Word == "known"));
        Assert.Equal(((decimal?)slow, (decimal?)fast), (plan?.SlowestAWeek, plan?.PercentAWeek));
    }

    [Fact]
    public void A_plan_of_a_visit_holds_from_that_day_on() => Assert.Single(By("weight-loss",
        Cat + Kg("5 5.05 4.75") + "2026-11-22 visit\n  known overweight, plan 0.5%/week\n"));

    [Fact]
    public void Without_a_plan_no_plan_is_judged() => Assert.Empty(By("weight-plan", Dog + Kg(30, 28.5, 27, 25.5)));

    /// <summary>Body condition 8/9 at 10% a point is 30% over (US animal hospital page); 40 kg at 8/9: 30-45% over (Vet Times 2015); divided, 40 / 1.3 = 30.8 kg.</summary>
    [Fact]
    public void The_ideal_weight_of_the_tables()
    {
        Assert.Equal(0.30m, IdealWeight.ExcessOf(8, 10));
        Assert.Equal(0.45m, IdealWeight.ExcessOf(8, 15));
        var ideal = IdealWeight.Of(40, 8, 10, 15);
        Assert.Equal(30.8m, Math.Round(ideal.HighKg, 1));
        Assert.Equal(27.6m, Math.Round(ideal.LowKg, 1));
    }

    [Theory]
    [InlineData("bcs 8/9|weight 40kg", 1)]
    [InlineData("bcs 4/5|weight 40kg", 1)] // 7/9
    [InlineData("bcs 5/9|weight 40kg", 0)]
    [InlineData("bcs >6/9|weight 40kg", 0)]
    [InlineData("weight 40kg", 0)]
    public void An_ideal_weight_is_said_from_six_of_nine_on(string day, int count) => Assert.Equal(count, By("ideal-weight", Dog + Every(1, day)).Length);

    [Fact]
    public void An_old_score_a_growing_pet_or_a_plan_give_no_ideal_weight()
    {
        Assert.Empty(By("ideal-weight", Dog + Every(32, "bcs 8/9", "weight 40kg")));
        Assert.Single(By("ideal-weight", Dog + Every(31, "bcs 8/9", "weight 40kg")));
        Assert.Empty(By("ideal-weight", Young("dog", "2026-03-01") + Every(1, "bcs 7/9|weight 12kg")));
        Assert.Empty(By("ideal-weight", Dog + "known overweight, plan 1%/week\n" + Every(1, "bcs 8/9|weight 40kg")));
        Assert.Empty(By("ideal-weight", Dog + Every(10, "bcs 8/9|weight 40kg", "bcs 5/9|weight 38kg")));
    }
}
