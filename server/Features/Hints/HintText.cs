using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Hints;

/// <summary>A computed value that is shown behind what was written.</summary>
/// <param name="Place">Where it is shown.</param>
/// <param name="Label">What is shown: <c>= 72/min</c>.</param>
/// <param name="Tooltip">How it was worked out, as plain text.</param>
/// <param name="Kind">The name of its kind; see <see cref="HintKinds"/>.</param>
public sealed record HintText(Place Place, string Label, string Tooltip, string Kind);

/// <summary>The kinds of hint; each has a switch in <see cref="HintSettings"/>.</summary>
public static class HintKinds
{
    /// <summary>The per-minute value of a count.</summary>
    public const string Rate = "rate";

    /// <summary>The size of a comparison object.</summary>
    public const string Size = "size";

    /// <summary>A value in the reader's units.</summary>
    public const string Conversion = "conversion";

    /// <summary>A weighing with the person subtracted.</summary>
    public const string Difference = "difference";

    /// <summary>A dose against the weight of the day.</summary>
    public const string Dose = "dose";

    /// <summary>Days since the entry before, or the day that is meant.</summary>
    public const string Days = "days";

    /// <summary>How a line was read, where that is more than its letters.</summary>
    public const string Reading = "reading";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<string> All { get; } = [Rate, Size, Conversion, Difference, Dose, Days, Reading];
}
