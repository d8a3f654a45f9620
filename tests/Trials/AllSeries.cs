using System.Globalization;
using System.Text;

namespace HealthNotes.Trials;

/// <summary>
/// Every series. Spreads within one animal and errors of measuring are named in each; what is healthy comes from published
/// spreads where there are any, else it is a guess on the wide side.
/// </summary>
public static class AllSeries
{
    private const int Month = 30;
    private const int Months = 24;
    private static readonly DateOnly Start = new(2024, 1, 10);

    /// <summary>
    /// A sixth of what is possible: the rule knows neither the usual rate nor the day nor the slope, and takes seven counts together
    /// at most (with fourteen it found no more). Published lines use up most of the false calls that are allowed. Real breathing is
    /// more regular than chance: where counts are regular, the whole goal is asked.
    /// </summary>
    private const double PartOfDrift = 1 / 6.0;

    private static readonly QuietGoal Weights = new(1, 0.1, 2);
    private static readonly QuietGoal Lumps = new(2, 0.2);

    /// <summary>All of them, in the order in which they are printed.</summary>
    public static IReadOnlyList<Series> Table { get; } =
    [
        new("weight flat, 1.5 %: dog 20 kg, monthly", draw => Weight(draw, Dog(20), 20, Months, Month), Weights),
        new("weight flat, 1.5 %: dogs 4 to 45 kg, monthly", draw => draw.Between(4, 45) is var kg ? Weight(draw, Dog(kg), kg, Months, Month) : null!, Weights),
        new("weight flat, 1.5 %: cat 4.5 kg, monthly", draw => Weight(draw, Cat(), 4.5, Months, Month), Weights),
        new("weight flat, 1.5 %: cat 12 years, monthly", draw => Weight(draw, Cat(12), 4.5, Months, Month), Weights),
        new("weight flat, 1.5 %: cat on a bathroom scale, monthly", draw => Weight(draw, Cat(), 4.5, Months, Month, scale: true), Weights),
        new("weight flat, 1.5 %: cat, weekly", draw => Weight(draw, Cat(), 4.5, 104, 7), Weights),
        new("weight flat, 1.5 %: cat, every 3 months for 6 years", draw => Weight(draw, Cat(), 4.5, 24, 91), Weights),
        new("weight flat, 2.5 %: dog 20 kg, monthly", draw => Weight(draw, Dog(20), 20, Months, Month, noise: 0.025), Weights),
        new("weight -1 % a month after a year: cat, monthly", draw => Weight(draw, Cat(), 4.5, Months + 4, Month, month => Falls(month - 11), onset: 11), null, new FoundGoal(true, "months", Month, 5, 9)),
        new("weight -1 % a month after a year: dog, monthly", draw => Weight(draw, Dog(20), 20, Months + 4, Month, month => Falls(month - 11), onset: 11), null, new FoundGoal(true, "months", Month, 7, 9)),
        new("weight -1 % a month from the first: cat, monthly", draw => Weight(draw, Cat(), 4.5, 16, Month, Falls, onset: 0), null, new FoundGoal(true, "months", Month, 9, 12)),
        new("weight -1 % a month after a year: cat, weekly", draw => Weight(draw, Cat(), 4.5, 110, 7, month => Falls(month - 12), onset: 53), null, new FoundGoal(true, "months", Month, 5, 9)),
        new("weight -1 % a month after a year: cat, bathroom scale", draw => Weight(draw, Cat(), 4.5, Months + 4, Month, month => Falls(month - 11), onset: 11, scale: true), null, new FoundGoal(true, "months", Month, 8, 12)),
        new("weight -1 % a month after a year: cat, every 2 months", draw => Weight(draw, Cat(), 4.5, 16, 61, month => Falls(month - 12), onset: 7), null, new FoundGoal(true, "months", Month, 8, 12)),
        new("weight -1 % a month after a year: cat, every 3 months", draw => Weight(draw, Cat(), 4.5, 12, 91, month => Falls(month - 12), onset: 5), null, new FoundGoal(true, "months", Month, 9, 13)),
        new("weight -1 % a month after 2 years: cat, every 6 months", draw => Weight(draw, Cat(), 4.5, 10, 182, month => Falls(month - 24), onset: 5), null, new FoundGoal(true, "months", Month, 13, 19)),
        new("weight -0.4 % a month for 3 years: cat, monthly", draw => Weight(draw, Cat(), 4.5, 48, Month, month => Math.Pow(0.996, Math.Max(0, month - 12)), onset: 13), null, new FoundGoal(true, "months", Month, 18, 24)),
        new("weight -12 % between the only two weighings, 3 months", draw => Weight(draw, Cat(), 4.5, 2, 91, month => month > 1 ? 0.88 : 1, onset: 1), null, new FoundGoal(true, "weighings", 0, 1, null, 80)),
        new("puppies and kittens that grow, weekly, 8 to 30 weeks", draw => Growing(draw, 22, null), new QuietGoal(1, 0.2)),
        new("puppy that stops growing at 14 weeks, weekly", draw => Growing(draw, 12, 14), null, new FoundGoal(false, "weighings", 0, 3, null, 95)),
        new("newborn that grows 5 to 10 % a day, daily for 3 weeks", draw => Newborn(draw, null), new QuietGoal(1, 0.2)),
        new("newborn that stops gaining at 6 days, daily", draw => Newborn(draw, 6), null, new FoundGoal(false, "weighings", 0, 3, null, 90)),
        new("lump flat, hand error 10 %: 12 mm, monthly", draw => Lump(draw, 12, Months, 0, Months), Lumps),
        new("lump flat, hand error 10 %: 25 mm, monthly", draw => Lump(draw, 25, Months, 0, Months), Lumps),
        new("lump flat, hand error 6 %: 18 mm, monthly", draw => Lump(draw, 18, Months, 0, Months, error: 0.06), Lumps),
        new("lump whose diameter doubles in 6 months: 12 mm, monthly", draw => Lump(draw, 12, 10, 6, 1), null, new FoundGoal(true, "measurings", 0, 4)),
        new("lump whose diameter doubles in 6 months: 25 mm, monthly", draw => Lump(draw, 25, 10, 6, 1), null, new FoundGoal(true, "measurings", 0, 4)),
        new("lump whose volume doubles in 6 months: 12 mm, monthly", draw => Lump(draw, 12, 20, 18, 1), null, new FoundGoal(true, "measurings", 0, 12)),
        new("lump that grows after a year flat, diameter x2 in 6 months", draw => Lump(draw, 15, 22, 6, 12), null, new FoundGoal(true, "measurings", 0, 5)),
        new("cats awake at home, median 27, 16-60, monthly", draw => Between(draw, Cat(), "rr", 27, 0.2, 0.18, "awake", 30), new QuietGoal(3, 0.2)),
        new("cats awake at home, median 27, 16-60, weekly", draw => Between(draw, Cat(), "rr", 27, 0.2, 0.18, "awake", 30, 52, 7), new QuietGoal(3, 0.2)),
        new("dogs awake at home, median 20, 12-34, monthly", draw => Between(draw, Dog(20), "rr", 20, 0.18, 0.15, "awake", 30), new QuietGoal(3, 1.5)),
        new("breathing asleep 18, Poisson counts of 30 s, weekly: dog", draw => Breaths(draw, Dog(20), 104, 7, _ => 18), new QuietGoal(2, 0.1) { BestCall = Bound.LinesPer100(18, 30) }),
        new("breathing asleep 18, Poisson counts of 30 s, daily: cat", draw => Breaths(draw, Cat(), 120, 1, _ => 18), new QuietGoal(2, 0.1) { BestCall = Bound.LinesPer100(18, 30) }),
        new("breathing asleep 18, Poisson counts of 60 s, weekly: dog", draw => Breaths(draw, Dog(20), 104, 7, _ => 18, seconds: 60), new QuietGoal(2, 0.1) { BestCall = Bound.LinesPer100(18, 60) }),
        new("breathing asleep 14 to 24, regular counts of 30 s, weekly", draw => draw.Between(14, 24) is var rate ? Breaths(draw, Dog(20), 104, 7, _ => rate, regular: true) : null!, new QuietGoal(2, 0.1)),
        new("breathing asleep, step 18 to 34, Poisson, daily", draw => Breaths(draw, Dog(20), 40, 1, day => day < 30 ? 18 : 34, onset: 30), null, new FoundGoal(true, "counts", 0, 2) { Best = Best(2, _ => 18, _ => 34) }),
        new("breathing asleep, step 18 to 34, regular, daily", draw => Breaths(draw, Dog(20), 40, 1, day => day < 30 ? 18 : 34, onset: 30, regular: true), null, new FoundGoal(true, "counts", 0, 2)),
        new("breathing asleep, drift 16 to 32 in 60 days, Poisson", draw => Breaths(draw, Dog(20), 120, 1, day => Drift(day - 60), onset: 60), null, new FoundGoal(true, "days", 1, 21) { Best = Best(22, _ => 16, Drift), PartOfBest = PartOfDrift }),
        new("breathing asleep, drift 16 to 32 in 60 days, regular", draw => Breaths(draw, Cat(), 120, 1, day => Drift(day - 60), onset: 60, regular: true), null, new FoundGoal(true, "days", 1, 21)),
        new("heart rate asleep of 35 kg dogs, 58+-9, monthly", draw => Beats(draw, Dog(35), 58, 7, 5.7, "asleep"), new QuietGoal(1, 0.1)),
        new("heart rate at rest of 20 kg dogs, 90+-14, monthly", draw => Beats(draw, Dog(20), 90, 11, 9, "rest"), new QuietGoal(1, 0.1)),
        new("heart rate of cats at home, 132+-19, monthly", draw => Beats(draw, Cat(), 132, 15, 12, "rest"), new QuietGoal(1, 0.1)),
        new("puppies asleep, 12 to 30 weeks, weekly", draw => Breaths(draw, Young("dog", 20, 12 * 7), 18, 7, week => draw.Normal(26, 4), regular: true), new QuietGoal(2, 0.2)),
        new("whole monthly check of a healthy dog", draw => Check(draw, dog: true), new QuietGoal(1, 0.2)),
        new("whole monthly check of a healthy cat", draw => Check(draw, dog: false), new QuietGoal(1, 0.2)),
    ];

    private static string Dog(double kg) => Opening("dog", kg, Start.AddYears(-3).AddDays(-40));

    private static string Cat(int years = 4) => Opening("cat", 4.5, Start.AddYears(-years).AddDays(-40));

    private static string Young(string species, double adult, int days) => Opening(species, adult, Start.AddDays(-days));

    private static string Opening(string species, double kg, DateOnly born) =>
        Invariant($"# Invented demo data.\npet Sample\nspecies {species}\nsex female neutered\nborn {born:yyyy-MM-dd}\nadult-weight {kg:0.0}kg\nhome-check every 20y\n");

    /// <summary>From 16 to 32 breaths in 60 days.</summary>
    private static double Drift(int day) => 16 + (16 * Math.Max(0, day) / 60.0);

    /// <summary>Percent of counts of 30 seconds that the best possible test tells from flat ones by the last entry, at the false calls that are asked of flat counts.</summary>
    private static double Best(int entries, Func<int, double> flat, Func<int, double> changed) =>
        Bound.Percent([.. Enumerable.Range(0, entries).Select(entry => flat(entry) / 2)], [.. Enumerable.Range(0, entries).Select(entry => changed(entry) / 2)], 0.1);

    /// <summary>What is left after so many months of a fall of 1 % each.</summary>
    private static double Falls(double months) => Math.Pow(0.99, Math.Max(0, months));

    /// <summary>Weighings with a noise of the animal itself (gut, bladder, coat); a bathroom scale adds its own steps of 0.1 kg twice.</summary>
    private static TrialNote Weight(Draw draw, string opening, double kg, int count, int every, Func<double, double>? truth = null, int? onset = null, double noise = 0.015, bool scale = false) =>
        Of(opening, count, every, onset, index =>
        {
            double now = kg * (truth?.Invoke(index * every / (double)Month) ?? 1) * (1 + draw.Normal(0, noise));
            if (!scale)
            {
                return now < 10 ? Invariant($"weight {now:0.00}kg") : Invariant($"weight {now:0.0}kg");
            }

            double person = draw.Normal(70, 0.4);
            return Invariant($"weight {person + now + draw.Normal(0, 0.03):0.0}-{person + draw.Normal(0, 0.03):0.0}kg");
        });

    /// <summary>A Gompertz curve; small animals are grown early, large ones late.</summary>
    private static TrialNote Growing(Draw draw, int count, int? stopsAtWeek)
    {
        bool kitten = stopsAtWeek is null && draw.Between(0, 1) < 0.3;
        double adult = kitten ? draw.Between(3.2, 5.5) : draw.Between(3, 50);
        // weeks of steepest growth and its rate: half of the grown weight is there at about 12 (toy) to 20 weeks (giant)
        double steepest = kitten ? 11 : 9.5 + (adult / 50 * 5);
        double rate = kitten ? 0.105 : 0.145 - (adult / 50 * 0.04);
        double At(double week) => adult * Math.Exp(-Math.Exp(-rate * (week - steepest)));
        return Of(Young(kitten ? "cat" : "dog", adult, 8 * 7), count, 7, stopsAtWeek is { } stop ? stop - 8 + 1 : null, index =>
        {
            double kg = At(Math.Min(8 + index, stopsAtWeek ?? 99)) * (1 + draw.Normal(0, 0.015));
            return kg < 10 ? Invariant($"weight {kg:0.00}kg") : Invariant($"weight {kg:0.0}kg");
        });
    }

    private static TrialNote Newborn(Draw draw, int? stopsAtDay)
    {
        double birth = draw.Between(0.1, 0.5);
        double gain = draw.Between(1.05, 1.10);
        return Of(Young("dog", 20, 0), 21, 1, stopsAtDay is { } stop ? stop + 1 : null, day =>
            Invariant($"weight {birth * Math.Pow(gain, Math.Max(0, Math.Min(day, stopsAtDay ?? 99) - 1)) * 1000 * (1 + draw.Normal(0, 0.01)):0}g"));
    }

    /// <summary>A lump measured with an error of the hand in percent of its size.</summary>
    private static TrialNote Lump(Draw draw, double mm, int count, int doublesInMonths, int onset, double error = 0.1) =>
        Of(Dog(20) + "known lump L-flank fatty lump, sampled by the vet\n", count, Month, doublesInMonths == 0 ? null : onset, index =>
        {
            double truth = mm * (doublesInMonths == 0 ? 1 : Math.Pow(2, Math.Max(0, index - onset + 1) / (double)doublesInMonths));
            return Invariant($"lump L-flank {Math.Max(1, truth * (1 + draw.Normal(0, error))):0}mm");
        });

    /// <summary>A rate that differs between animals and, less, from day to day, both on a logarithmic scale; counted over some seconds.</summary>
    private static TrialNote Between(Draw draw, string opening, string word, double median, double between, double within, string state, int seconds, int count = Months, int every = Month)
    {
        double own = median * Math.Exp(draw.Normal(0, between));
        return Of(opening, count, every, null, _ => Invariant($"{word} {Math.Max(1, own * Math.Exp(draw.Normal(0, within)) * seconds / 60):0}/{seconds}s {state}"));
    }

    /// <summary>Breaths counted asleep: by chance alone (Poisson), or as regular as breathing really is, one breath more or less.</summary>
    private static TrialNote Breaths(Draw draw, string opening, int count, int every, Func<int, double> rate, int? onset = null, bool regular = false, int seconds = 30) =>
        Of(opening, count, every, onset, index =>
        {
            double expected = rate(index) * seconds / 60;
            double breaths = regular ? Math.Max(2, expected * Math.Exp(draw.Normal(0, 0.1))) : Math.Max(2, draw.Poisson(expected));
            return Invariant($"rr {breaths:0}/{seconds}s asleep");
        });

    private static TrialNote Beats(Draw draw, string opening, double mean, double between, double within, string state)
    {
        double own = draw.Normal(mean, between);
        return Of(opening, Months, Month, null, _ => Invariant($"hr {Math.Max(5, draw.Normal(own, within) / 4):0}/15s {state}"));
    }

    /// <summary>A whole check as an owner takes it: no thermometer, since nobody takes the temperature of a well pet each month.</summary>
    private static TrialNote Check(Draw draw, bool dog)
    {
        double kg = dog ? draw.Between(5, 40) : draw.Between(3.5, 6);
        double heart = dog ? draw.Normal(95, 12) : draw.Normal(132, 15);
        double asleep = dog ? 15 * Math.Exp(draw.Normal(0, 0.18)) : 20 * Math.Exp(draw.Normal(0, 0.12));
        double awake = dog ? 20 * Math.Exp(draw.Normal(0, 0.18)) : 27 * Math.Exp(draw.Normal(0, 0.2));
        bool sleeps = draw.Between(0, 1) < 0.5;
        string opening = Opening(dog ? "dog" : "cat", kg, Start.AddYears(-3).AddDays(-40)).Replace("home-check every 20y\n", "", StringComparison.Ordinal);
        return Of(opening, Months, Month, null, _ => string.Join("\n  ",
            "gums pink moist",
            Invariant($"crt {Math.Clamp(draw.Normal(1.4, 0.2), 1, 2):0.0}s"),
            Invariant($"hr {draw.Normal(heart, dog ? 9 : 12) / 4:0}/15s rest"),
            sleeps ? Invariant($"rr {asleep * Math.Exp(draw.Normal(0, 0.12)) / 2:0}/30s asleep") : Invariant($"rr {awake * Math.Exp(draw.Normal(0, 0.16)) / 2:0}/30s awake"),
            kg < 10 ? Invariant($"weight {kg * (1 + draw.Normal(0, 0.015)):0.00}kg") : Invariant($"weight {kg * (1 + draw.Normal(0, 0.015)):0.0}kg"),
            Invariant($"bcs {(draw.Between(0, 1) < 0.1 ? 4 + (dog ? 0 : 1) : 5)}/9"),
            "else ok"), "check");
    }

    private static TrialNote Of(string opening, int count, int every, int? onset, Func<int, string> line, string kind = "log")
    {
        var entries = new List<(DateOnly, string)>();
        for (int index = 0; index < count; index++)
        {
            DateOnly day = Start.AddDays(index * every);
            entries.Add((day, new StringBuilder().Append(CultureInfo.InvariantCulture, $"\n{day:yyyy-MM-dd} {kind}\n  {line(index)}\n").ToString()));
        }

        return new TrialNote(opening, entries, onset);
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
