namespace HealthNotes.Trials;

/// <summary>Seeded random numbers: the same seed gives the same notes on every machine.</summary>
public sealed class Draw(int seed)
{
    private readonly Random random = new(seed);

    /// <summary>Evenly between two numbers.</summary>
    public double Between(double low, double high) => low + (random.NextDouble() * (high - low));

    /// <summary>From a normal distribution (Box-Muller).</summary>
    public double Normal(double mean, double deviation) =>
        mean + (deviation * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble()));

    /// <summary>A count from a Poisson distribution (Knuth).</summary>
    public int Poisson(double mean)
    {
        double limit = Math.Exp(-mean);
        int count = -1;
        for (double product = 1; product > limit; product *= random.NextDouble())
        {
            count++;
        }

        return Math.Max(0, count);
    }
}
