namespace HealthNotes.Record.Lumps;

/// <summary>How long a volume takes to double, if it goes on as between two measurements.</summary>
public static class DoublingTime
{
    /// <summary>
    /// ln 2 × days / ln(V2 / V1), the formula of oncology texts (from memory); null when nothing grew or no day passed.
    /// </summary>
    public static double? Days(double before, double after, double days) =>
        before > 0 && after > before && days > 0 ? Math.Log(2) * days / Math.Log(after / before) : null;

    /// <summary>The same from one diameter: a ball's volume goes with its cube.</summary>
    public static double? OfDiameters(decimal before, decimal after, double days) =>
        Days(Math.Pow((double)before, 3), Math.Pow((double)after, 3), days);
}
