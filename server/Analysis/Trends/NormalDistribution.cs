namespace HealthNotes.Analysis.Trends;

/// <summary>The standard normal distribution.</summary>
public static class NormalDistribution
{
    /// <summary>The part of the distribution below <paramref name="z"/>.</summary>
    /// <remarks>Rational approximation of Hart 1968 in the form of West, Wilmott magazine 2005, good to about 15 digits.</remarks>
    public static double Cumulative(double z)
    {
        double x = Math.Abs(z);
        double tail = x > 37 ? 0 : Math.Exp(-x * x / 2) * (x < 7.07106781186547 ? Near(x) : Far(x));
        return z > 0 ? 1 - tail : tail;
    }

    /// <summary>The value below which <paramref name="part"/> of the distribution lies (0 to 1, both left out).</summary>
    public static double Quantile(double part)
    {
        double low = -38;
        double high = 38;
        for (int step = 0; step < 64; step++)
        {
            double middle = (low + high) / 2;
            (low, high) = Cumulative(middle) < part ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    private static double Near(double x)
    {
        double above = 3.52624965998911E-02;
        above = (above * x) + 0.700383064443688;
        above = (above * x) + 6.37396220353165;
        above = (above * x) + 33.912866078383;
        above = (above * x) + 112.079291497871;
        above = (above * x) + 221.213596169931;
        above = (above * x) + 220.206867912376;
        double below = 8.83883476483184E-02;
        below = (below * x) + 1.75566716318264;
        below = (below * x) + 16.064177579207;
        below = (below * x) + 86.7807322029461;
        below = (below * x) + 296.564248779674;
        below = (below * x) + 637.333633378831;
        below = (below * x) + 793.826512519948;
        below = (below * x) + 440.413735824752;
        return above / below;
    }

    private static double Far(double x) => 1 / ((x + (1 / (x + (2 / (x + (3 / (x + (4 / (x + 0.65))))))))) * 2.506628274631);
}
