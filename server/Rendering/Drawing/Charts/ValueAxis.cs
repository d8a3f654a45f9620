namespace HealthNotes.Rendering.Drawing.Charts;

/// <summary>The upright axis of a chart: from one round number to another, with round numbers between.</summary>
/// <param name="Low">Its lower end.</param>
/// <param name="High">Its upper end.</param>
/// <param name="Step">From one tick to the next.</param>
internal sealed record ValueAxis(double Low, double High, double Step)
{
    private const int MostSteps = 5;
    private static readonly int[] RoundSteps = [1, 2, 5, 10];

    /// <summary>A band is shown in full when it does not make the axis longer than so many times what the values span.</summary>
    private const double NearBand = 3;

    /// <summary>A limit of the clinic is worth more room (common practice, no source).</summary>
    private const double NearLimit = 6;

    /// <summary>The ticks.</summary>
    public IEnumerable<double> Ticks => Enumerable.Range(0, (int)Math.Round((High - Low) / Step) + 1).Select(tick => Low + (tick * Step));

    /// <summary>How many decimals the ticks need.</summary>
    public int Decimals => Math.Max(0, -(int)Math.Floor(Math.Log10(Step) + 1e-9));

    /// <summary>The axis of a chart.</summary>
    public static ValueAxis Of(Chart chart)
    {
        double low = chart.Marks.Min(mark => mark.Low ?? mark.Value);
        double high = chart.Marks.Max(mark => mark.High ?? mark.Value);
        double middle = (low + high) / 2;
        double half = Math.Max((high - low) / 2, chart.LeastSpan / 2);
        (low, high) = (Math.Min(low, middle - half), Math.Max(high, middle + half));
        double span = high - low;
        foreach ((double edge, double near) in chart.Limits.Select(limit => (limit.Value, NearLimit))
            .Concat(chart.Normal.Append(chart.Usual).OfType<Band>().SelectMany(band => new[] { band.Low, band.High }).OfType<double>().Select(edge => (edge, NearBand))))
        {
            if (Math.Max(high, edge) - Math.Min(low, edge) <= span * near)
            {
                (low, high) = (Math.Min(low, edge), Math.Max(high, edge));
            }
        }

        return Round(chart.FromZero ? 0 : Math.Max(0, low), Math.Max(high, chart.FromZero ? double.Epsilon : low));
    }

    private static ValueAxis Round(double low, double high)
    {
        double span = high - low > 1e-9 ? high - low : 1;
        double power = Math.Pow(10, Math.Floor(Math.Log10(span / MostSteps)));
        double step = power * RoundSteps.First(factor => span / (power * factor) <= MostSteps);
        return new ValueAxis(Math.Floor((low / step) + 1e-9) * step, Math.Ceiling((high / step) - 1e-9) * step is var top && top > low ? top : low + step, step);
    }
}
