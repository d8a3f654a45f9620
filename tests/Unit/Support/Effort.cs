using System.Globalization;

namespace HealthNotes.Tests.Support;

/// <summary>How long the random tests try: set <c>HNOTE_EFFORT=50</c> to try fifty times as many cases.</summary>
public static class Effort
{
    private static readonly int Factor =
        int.TryParse(Environment.GetEnvironmentVariable("HNOTE_EFFORT"), NumberStyles.None, CultureInfo.InvariantCulture, out int factor) ? Math.Max(1, factor) : 1;

    public static int Times(int iterations) => iterations * Factor;
}
