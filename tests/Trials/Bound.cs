namespace HealthNotes.Trials;

/// <summary>
/// How often counts that scatter by chance alone (Poisson) can be told from flat ones: the likelihood-ratio test of Neyman and Pearson,
/// which knows the usual rate, the day of the onset and the rate on each day after it, made after every entry.
/// </summary>
public static class Bound
{
    /// <summary>The likelihood ratio is added up in steps of this, on a logarithmic scale.</summary>
    private const double Step = 0.002;

    /// <summary>What is less likely than this is left out.</summary>
    private const double Least = 1e-12;

    /// <summary>
    /// Percent of series in which the test has called by the last entry. On every entry it calls in as many flat series as a rule
    /// may, and on no entry can a rule with that rate call more often. (A rule that saved its false calls for one entry, and made
    /// none while they lasted, would have to know the onset in advance.)
    /// </summary>
    /// <param name="flat">The expected count of each entry while nothing changes.</param>
    /// <param name="changed">The expected count of each entry since the onset, none below that of <paramref name="flat"/>.</param>
    /// <param name="callsPer100">False calls per 100 entries.</param>
    public static double Percent(IReadOnlyList<double> flat, IReadOnlyList<double> changed, double callsPer100)
    {
        double[] still = [1];
        double[] notFound = [1];
        double found = 0;
        for (int entry = 0; entry < flat.Count; entry++)
        {
            int weight = (int)Math.Round(Math.Log(changed[entry] / flat[entry]) / Step);
            if (weight == 0)
            {
                continue;
            }

            still = Add(still, Counts(flat[entry]), weight);
            notFound = Add(notFound, Counts(changed[entry]), weight);

            // the highest ratios are called, and so much of the next that the rate is used up
            double left = callsPer100 / 100;
            for (int ratio = Math.Max(still.Length, notFound.Length) - 1; ratio >= 0 && left > 0; ratio--)
            {
                double chance = ratio < still.Length ? still[ratio] : 0;
                double part = chance <= left ? 1 : left / chance;
                left -= chance * part;
                if (ratio < notFound.Length)
                {
                    found += notFound[ratio] * part;
                    notFound[ratio] *= 1 - part;
                }
            }
        }

        return found * 100;
    }

    /// <summary>
    /// False calls per 100 flat counts by the published lines alone, which no rule may leave out: two counts in a row above 30 a
    /// minute, or one above 40 (<c>bounds.tsv</c>, breathing asleep).
    /// </summary>
    /// <param name="perMinute">The true rate.</param>
    /// <param name="seconds">How long is counted.</param>
    public static double LinesPer100(double perMinute, int seconds)
    {
        double[] counts = Counts(perMinute * seconds / 60);
        double twice = counts.Where((_, count) => count * 60 > 30 * seconds).Sum();
        double once = counts.Where((_, count) => count * 60 > 40 * seconds).Sum();
        return 100 * (once + ((twice - once) * twice));
    }

    /// <summary>The chance of each count from 0 on.</summary>
    public static double[] Counts(double expected)
    {
        var chances = new double[(int)(expected + (10 * Math.Sqrt(expected)) + 20)];
        chances[0] = Math.Exp(-expected);
        for (int count = 1; count < chances.Length; count++)
        {
            chances[count] = chances[count - 1] * expected / count;
        }

        return chances;
    }

    private static double[] Add(double[] sums, double[] counts, int weight)
    {
        var added = new double[sums.Length + (weight * (counts.Length - 1))];
        for (int sum = 0; sum < sums.Length; sum++)
        {
            for (int count = 0; sums[sum] > Least && count < counts.Length; count++)
            {
                added[sum + (weight * count)] += sums[sum] * counts[count];
            }
        }

        return added;
    }
}
